// Colours of a product on the quote: to tick where the job leaves them open, one square where it does not.
#include "content_folder.h"
#include "safety_jobs.h"
#include "sheets/facts/facts_quote.h"

using namespace safety_jobs;

namespace {

std::string openJob() {
  return replaced(replaced(plainJob, "colour: natural\n", ""), "plover-wb", "tern-oil");
}

/// The line below the job's last.
std::string nextLine() {
  const std::string job = openJob();
  return "job.yaml:" + std::to_string(1 + std::count(job.begin(), job.end(), '\n'));
}

std::string warningsIn(const std::string& job) {
  base::Diagnostics messages;
  compute(app::JobText{"job.yaml", job}, {}, messages);
  std::string all;
  for (const auto& d : messages.all()) {
    if (d.path == "colour" || d.path == "accepted") all += base::format(d);
  }
  return all;
}

/// What those hear who cannot see a document's drawings.
std::string altsOf(const typeset::Document& document) {
  std::string all;
  for (const auto& tag : document.tags) {
    if (!tag.alt.empty()) all += tag.alt + "\n";
  }
  return all;
}

bool isFilledWith(const typeset::Document& document, model::Colour colour) {
  for (const auto& page : document.pages) {
    for (const auto& item : page.items) {
      const auto* path = std::get_if<typeset::Path>(&item.what);
      if (path && path->fill == colour) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("a quote without a colour has those of the product to tick, as a screen shows them") {
  const auto x = computed(openJob());
  const auto quote = documents(x, {"quote"}).at("quote");
  REQUIRE(x.c.product->colours.size() > 2);
  CHECK(holds(altsOf(quote),
              "Colours to tick, as a screen shows them: natural, light walnut, bog oak, silver grey.\n"));
  for (const auto& colour : x.c.product->colours) CHECK(isFilledWith(quote, colour.colour));
  CHECK(holds(together(quote), "Your colour"));
  CHECK(holds(together(quote), "Tick one. Screen colour: see the sample."));
  CHECK(holds(together(quote), "with the colour ticked."));
  CHECK(holds(sheets::acceptanceMail(x), "Colour%20and%20name%3A"));
}

TEST_CASE("a quote with a colour of the product shows that one alone") {
  const auto x = computed(replaced(openJob(), "product: tern-oil", "product: tern-oil\ncolour: bog oak"));
  const auto quote = documents(x, {"quote"}).at("quote");
  CHECK(holds(altsOf(quote), "bog oak, as a screen shows it\n"));
  CHECK_FALSE(holds(altsOf(quote), "Colours to tick"));
  CHECK(isFilledWith(quote, x.c.product->colours[2].colour));
  CHECK_FALSE(isFilledWith(quote, x.c.product->colours[0].colour));
  CHECK(holds(together(quote), "Screen colour: see the sample."));
  CHECK_FALSE(holds(together(quote), "ticked"));
}

TEST_CASE("nothing is said of colours where the product has none, or nothing is coated") {
  for (const auto& job : {replaced(openJob(), "tern-oil", "plover-wb"),
                          replaced(openJob(), "work: [wash, oil]", "work: [wash]")}) {
    const auto words = together(documents(computed(job), {"quote"}).at("quote"));
    CHECK_FALSE(holds(words, "Your colour"));
    CHECK_FALSE(holds(words, "sample"));
  }
}

TEST_CASE("an American quote has colors") {
  const auto x = computed(inRegion(openJob(), "us"));
  CHECK(holds(together(documents(x, {"quote"}).at("quote")), "Your color"));
}

TEST_CASE(
    "a colour that the product has not is told, and one that is still open when the customer said yes") {
  CHECK(warningsIn(openJob()).empty());
  CHECK(
      warningsIn(openJob() + "colour: lihgt walnut\n") ==
      nextLine() +
          ":9: warning: colour: 'lihgt walnut' is not a colour of 'tern-oil'; did you mean 'light walnut'?\n"
          "  hint: known: natural, light walnut, bog oak, silver grey; add others under 'colours:' of the "
          "product's file\n");
  CHECK(warningsIn(openJob() + "accepted: 2027-03-03\n") ==
        nextLine() +
            ":11: warning: accepted: the customer said yes, and the job has no colour yet\n"
            "  hint: write the one that was ticked, like colour: natural\n");
}
