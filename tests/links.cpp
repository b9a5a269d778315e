// Telephone numbers, e-mail and web addresses that can be pressed.
#include "app/pack/documents.h"
#include "firm_jobs.h"
#include "sheets/words/addresses.h"

#include <catch2/catch.hpp>

#include <map>
#include <set>

namespace {

/// The documents of an example by name.
std::map<std::string, typeset::Document> documentsOf(const std::string& job) {
  const app::Choices choices;
  const app::Shipped shipped = app::readShipped();
  base::Diagnostics messages;
  const auto x = firm_jobs::compute(job, choices, messages);
  REQUIRE(x);
  std::map<std::string, typeset::Document> documents;
  for (auto& [name, pages] : app::setDocuments(*x, shipped, choices, {}, messages))
    documents[name] = std::move(pages);
  REQUIRE(messages.all().empty());
  return documents;
}

const std::map<std::string, model::Region>& shippedRegions() {
  static const app::Shipped shipped = app::readShipped();
  return shipped.content.regions;
}

std::set<std::string> addressesOn(const typeset::Page& page) {
  std::set<std::string> found;
  for (const typeset::Item& item : page.items)
    if (const auto* link = std::get_if<typeset::Link>(&item.what)) found.insert(link->uri);
  return found;
}

}  // namespace

TEST_CASE("a telephone number becomes an address that can be dialled from anywhere") {
  const auto& regions = shippedRegions();
  const auto addressIn = [&](const char* region, const char* words) {
    return sheets::phoneAddress(words, regions.at(region).dialling);
  };
  // Country codes and prefixes of ITU-T E.164 (2010), from memory.
  CHECK(addressIn("nz", "(03) 555 0117") == "tel:+6435550117");
  CHECK(addressIn("au", "02 5550 0123") == "tel:+61255500123");
  CHECK(addressIn("gb", "01632 960142") == "tel:+441632960142");
  CHECK(addressIn("ie", "(01) 555 0142") == "tel:+35315550142");
  CHECK(addressIn("us", "(828) 555-0117") == "tel:+18285550117");
  CHECK(addressIn("us", "1-828-555-0117") == "tel:+18285550117");
  CHECK(addressIn("nz", "0800 555 0117") == "tel:+648005550117");
  CHECK(addressIn("nz", "+64 3 555-0117") == "tel:+6435550117");
  CHECK(addressIn("gb", "+44 (0)1632 960142") == "tel:+441632960142");
  CHECK(addressIn("gb", "00 64 3 555 0117") == "tel:+6435550117");
  CHECK(addressIn("au", "0011 64 3 555 0117") == "tel:+6435550117");
  CHECK(addressIn("us", "011 64 3 555 0117") == "tel:+6435550117");
  // Services are dialled as they stand, and so is what the country's plan does not tell.
  for (const auto& [id, region] : regions)
    CHECK(addressIn(id.c_str(), region.emergencyNumber.c_str()) == "tel:" + region.emergencyNumber);
  CHECK(addressIn("au", "13 11 26") == "tel:131126");
  CHECK(addressIn("us", "555-0117") == "tel:5550117");
  CHECK(sheets::phoneAddress("(03) 555 0117", {}) == "tel:035550117");
  CHECK(addressIn("gb", "020 7946 0123 / 07700 900123") == "tel:+442079460123");  // the first of two
  CHECK(addressIn("ie", "01/555 0142") == "tel:+35315550142");
  CHECK(addressIn("us", "828.555.0173 ext. 12") == "tel:+18285550173");
  CHECK(sheets::isPhone("01632 960142"));
  CHECK(sheets::isPhone("111"));
  CHECK_FALSE(sheets::isPhone("22 min by road"));
  CHECK_FALSE(sheets::isPhone("7"));
  CHECK_FALSE(sheets::isPhone(""));
}

TEST_CASE("a web page is printed without its scheme and opened with it") {
  CHECK(sheets::webAddress("tideboard.example") == "https://tideboard.example");
  CHECK(sheets::webAddress("http://tideboard.example/") == "http://tideboard.example/");
  CHECK(sheets::webWords("https://tideboard.example/") == "tideboard.example");
}

TEST_CASE("the firm can be reached from its documents by pressing its numbers and addresses", "[pages]") {
  const auto documents = documentsOf(SOURCE_DIR "/out_examples/landing/job.yaml");
  CHECK(addressesOn(documents.at("quote").pages[0]) ==
        std::set<std::string>{"tel:+6435550117", "mailto:office@tideboard.example",
                              "https://tideboard.example"});
  for (const auto& [name, document] : documents)
    for (const typeset::Page& page : document.pages) {
      INFO(name);
      CHECK(addressesOn(page).contains("tel:+6435550117"));  // in its foot
    }
  CHECK(addressesOn(documents.at("safety").pages[0]) == std::set<std::string>{"tel:111", "tel:+6435550117"});
}

TEST_CASE("links stand on their words and a reader of tags meets each address once", "[pages]") {
  for (const auto& [name, document] : documentsOf(SOURCE_DIR "/out_examples/landing/job.yaml")) {
    std::map<int, std::string> words;  // by tag
    for (const typeset::Page& page : document.pages)
      for (const typeset::Item& item : page.items)
        if (const auto* run = std::get_if<typeset::TextRun>(&item.what); run && item.tag > 0)
          words[item.tag] += run->text;
    for (const typeset::Page& page : document.pages)
      for (const typeset::Item& item : page.items) {
        const auto* link = std::get_if<typeset::Link>(&item.what);
        if (!link) continue;
        INFO(name << ": " << link->uri);
        REQUIRE(item.tag > 0);
        CHECK(document.tags[static_cast<std::size_t>(item.tag)].role == typeset::Role::Link);
        CHECK(words[item.tag] == link->words);
        CHECK(link->box.size.w > typeset::Dim::mm(3));
      }
  }
}

TEST_CASE("a number to ring beside the hospital can be pressed, too", "[pages]") {
  const app::Choices choices;
  const app::Shipped shipped = app::readShipped();
  base::Diagnostics messages;
  auto x = firm_jobs::compute(SOURCE_DIR "/out_examples/landing/job.yaml", choices, messages);
  REQUIRE(x);
  x->c.job.site.hospital = "Ferncombe Hospital, 22 min by road, 03 555 0100";
  const auto documents = app::setDocuments(*x, shipped, choices, {"safety"}, messages);
  REQUIRE(documents.size() == 1);
  CHECK(addressesOn(documents[0].pages.pages[0]).contains("tel:+6435550100"));
}
