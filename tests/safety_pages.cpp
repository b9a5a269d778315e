// The crew's sheet and the care sheet as people get them: how long, in what order, how hard to read.
#include "example_jobs.h"
#include "near.h"
#include "reading_level.h"
#include "safety_jobs.h"

#include <regex>

using namespace safety_jobs;

namespace {

struct Print {
  model::Paper paper;
  const char* theme;
};
const Print prints[] = {{model::Paper::A4, "generous"},
                        {model::Paper::Letter, "generous"},
                        {model::Paper::A4, "compact"},
                        {model::Paper::Letter, "compact"}};

/// Pages of the safety sheet in English and in Spanish.
std::pair<std::size_t, std::size_t> pagesOf(const std::string& job, const Print& print) {
  app::Choices choices;
  choices.paper = print.paper;
  choices.theme = print.theme;
  choices.languages = {"en", "es"};
  const auto sheets = documents(computed(job, choices), {"safety"}, choices);
  return {sheets.at("safety").pages.size(), sheets.at("safety-es").pages.size()};
}

}  // namespace

TEST_CASE("the safety sheet has two pages for a plain job and three for the worst, on every paper") {
  for (const auto& print : prints) {
    CAPTURE(print.paper == model::Paper::A4, print.theme);
    const auto plain = pagesOf(plainJob, print), worst = pagesOf(worstJob, print);
    CHECK(plain.first <= 2);
    CHECK(plain.second <= 2);
    CHECK(worst.first <= 3);
    // Spanish is a sixth longer; on the shortest paper in the widest look it takes a sheet more.
    const bool isTight = print.paper == model::Paper::Letter && print.theme == std::string("generous");
    CHECK(worst.second <= (isTight ? 4u : 3u));
  }
}

TEST_CASE("a plain job speaks neither of fire nor of heat") {
  const auto plain = documents(computed(plainJob), {"safety"});
  const std::string words = together(plain.at("safety"));
  for (const char* word : {"alight", "DANGER", "WARNING", "heat stroke", "The product burns"}) {
    INFO(word);
    CHECK_FALSE(holds(words, word));
  }
}

TEST_CASE(
    "oily rags are the first panel of the first page, with their number and the size of the container") {
  const auto worst = documents(computed(worstJob), {"safety", "aftercare"});
  const auto& sheet = worst.at("safety");
  std::string page;
  for (const typeset::Item& item : sheet.pages[0].items) {
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) page += run->text + " ";
  }
  const std::size_t rags = page.find("alight");
  REQUIRE(rags != std::string::npos);
  CHECK(page.find("DANGER") < rags);
  CHECK(rags < page.find("WARNING"));
  CHECK(std::regex_search(page, std::regex(R"(\d+ rags, pads and brushes)")));
  // Both published ways, whichever comes first: NFPA, Safety with Oily Rags (2017), and USDA Wood Handbook,
  // FPL-GTR-282 (2021), ch. 16.
  const std::string words = together(sheet);
  for (const char* part : {"under water", "lid", "flat outdoors", "in one layer"}) {
    INFO(part);
    CHECK(holds(words, part));
    CHECK(holds(together(worst.at("aftercare")), part));
  }
}

TEST_CASE("the care sheet warns of rags where a tin may stay with the customer") {
  const auto careAfter = [](const std::string& left) {
    return together(
        documents(computed(replaced(worstJob, "price:", left + "price:")), {"aftercare"}).at("aftercare"));
  };
  const std::string unknown = careAfter(""), none = careAfter("left: [{size: 2.5 L}]\n"),
                    stays = careAfter(
                        "left: [{size: 2.5 L}, {size: 0.75 L, holds: 0.4 L, with_customer: true}]\n");
  for (const auto& words : {unknown, stays}) {
    CHECK(holds(words, "can set themselves alight"));
    CHECK(holds(words, "a spoonful of the same product"));
  }
  CHECK_FALSE(holds(none, "alight"));
  CHECK_FALSE(holds(none, "product; wipe dry"));
  CHECK(holds(none, "Keep off it and call us."));
}

TEST_CASE("the sheet has a line for each of the crew on each day, and the dates of its reviews") {
  const auto x = computed(worstJob);
  const auto sheets = documents(x, {"safety"});
  const std::string words = together(sheets.at("safety"));
  for (const char* name :
       {"Ada", "Ben", "Cyd", "Read and understood", "initial below before the first tool"}) {
    INFO(name);
    CHECK(holds(words, name));
  }
  // Mon 15 to Wed 24 February 2027 touch two weeks.
  CHECK(holds(words, "Mon\u00A015\u00A0Feb and Mon\u00A022\u00A0Feb; sooner when anything changes"));
}

TEST_CASE("the hardest day stands as a bar against its limit") {
  const auto sheets = documents(computed(worstJob), {"safety"});
  std::string alts;
  for (const auto& tag : sheets.at("safety").tags) alts += tag.alt + "\n";
  CHECK(holds(alts, "Bar: 1 of 1 marks passed."));  // noise, 85 dB(A)
  CHECK(holds(alts, "Bar: 1 of 2 marks passed."));  // vibration, past the action value
  CHECK(holds(alts, "Bar: 3 of 3 marks passed."));  // 39 C and more in the sun
}

TEST_CASE("safety and care sheets read at grade 8 or below") {
  // Flesch-Kincaid grade: Kincaid et al., Navy Research Branch Report 8-75 (1975), formula from memory.
  const auto check = [](const app::Computation& x, const std::string& job) {
    for (const auto& [name, pages] : documents(x, {"safety", "aftercare"})) {
      if (holds(name, "-")) continue;  // a translation
      const auto level = reading::gradeOf(blocksOf(pages));
      INFO(job << ": " << name << ", " << level.words << " words");
      CHECK(level.words > 200);
      CHECK(level.grade <= 8);
    }
  };
  check(computed(worstJob), "the worst job");
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = app::compute(file, shipped(), {}, messages);
    REQUIRE(x);
    check(*x, file);
  }
}

TEST_CASE("syllables and grades are counted as by hand") {
  for (const auto& [word, count] : std::map<std::string, int>{
           {"rag", 1},     {"water", 2},    {"outdoors", 2},  {"paper", 2},   {"bucket", 2},
           {"vehicle", 3}, {"handle", 2},   {"table", 2},     {"noise", 1},   {"closed", 1},
           {"sanded", 2},  {"eyes", 1},     {"safety", 3},    {"coating", 2}, {"danger", 2},
           {"people", 2},  {"machines", 2}, {"vibration", 3}, {"the", 1},     {"edges", 2}}) {
    INFO(word);
    CHECK(reading::syllables(word) == count);
  }
  // 6 words, 6 syllables, 1 sentence: 0.39 x 6 + 11.8 x 1 - 15.59 = -1.45
  CHECK(reading::gradeOf({"The cat sat on the mat."}).grade == near(-1.45));
}

TEST_CASE("the safety sheet says what the heaviest tin weighs") {
  const auto x = computed(worstJob);
  const int kilograms = static_cast<int>(std::ceil(x.exposure.lifting.heaviestTin));
  REQUIRE(kilograms > 15);
  CHECK(holds(together(documents(x, {"safety"}).at("safety")),
              "The heaviest weighs " + std::to_string(kilograms) + "\u00A0kg"));
}
