// The crew's sheet and the care sheet as people get them: how long, in what order, how hard to read.
#include "example_jobs.h"
#include "near.h"
#include "reading_level.h"
#include "safety_jobs.h"
#include "typeset/pages/fit.h"

#include <map>
#include <optional>
#include <regex>
#include <sstream>

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

/// The safety leaf in each language.
std::map<std::string, typeset::Document> leavesOf(const model::JobResult& x, app::Choices choices) {
  choices.languages = {"en", "es", "pl"};
  return documents(x, {"safety"}, choices);
}

/// All jobs that a leaf is tried on.
std::map<std::string, std::string> jobs() {
  std::map<std::string, std::string> all = {
      {"plain", plainJob}, {"worst", worstJob}, {"crowded", crowdedJob}, {"us", inRegion(crowdedJob, "us")}};
  for (const auto& file : examples::jobs()) all[file] = "";
  return all;
}

std::optional<model::JobResult> computedFor(const std::string& name, const std::string& job,
                                            const app::Choices& choices) {
  if (!job.empty()) return computed(job, choices);
  base::Diagnostics messages;
  return firm_jobs::compute(name, choices, messages);
}

}  // namespace

TEST_CASE(
    "the safety leaf has two sides in every look, language and paper, with the rule for stopping in front") {
  for (const auto& [name, job] : jobs()) {
    for (const auto& print : prints) {
      app::Choices choices;
      choices.paper = print.paper;
      choices.theme = print.theme;
      const auto x = computedFor(name, job, choices);
      REQUIRE(x);
      const bool isA4 = print.paper == model::Paper::A4;
      for (const auto& [sheet, leaf] : leavesOf(*x, choices)) {
        INFO(name << ": " << sheet << (isA4 ? ", A4, " : ", Letter, ") << print.theme);
        CHECK(leaf.pages.size() == 2);
        // In front all that is read first, down to the rule for stopping; behind what is worn and done.
        int found = 0;
        for (const auto& mark : leaf.bookmarks) {
          const bool isStop = mark.title == "Stop" || mark.title == "Parar";
          const bool isWear = mark.title == "What to wear now" || mark.title == "Qué ponerse ahora" ||
                              mark.title == "Co teraz założyć";
          if (isStop) CHECK(mark.page == 0);
          if (isWear) CHECK(mark.page == 1);
          found += isStop || isWear;
        }
        CHECK(found == 2);
      }
    }
  }
}

TEST_CASE("a crowded leaf keeps what kills, and its large crew signs once") {
  app::Choices choices;
  choices.paper = model::Paper::Letter;
  const auto x = computed(inRegion(crowdedJob, "us"), choices);
  auto sheets = leavesOf(x, choices);
  const std::string words = together(sheets.at("safety"));
  for (const char* order : {"Jacket on, never alone.", "Generator outdoors", "Park off the way"}) {
    INFO(order);
    CHECK(holds(words, order));
  }
  CHECK(holds(together(sheets.at("safety-es")), "firma, fecha"));
  for (const char* name : {"Ada", "Ben", "Cyd", "Dee", "Eli", "Fay"}) {
    INFO(name);
    CHECK(holds(together(sheets.at("safety-es")), name));
  }
}

TEST_CASE("water, lightning and the generator have the figures of their sources in each language") {
  struct {
    const char *sheet, *cup, *lightning, *generator;
  } const languages[] = {
      {"safety", R"(a cup each (\d+).{1,2}min)",
       R"(thunder within (\d+).{1,2}s\? Indoors for (\d+).{1,2}min)",
       R"(Generator outdoors, (\d+).{1,2}m from)"},
      {"safety-es", R"(un vaso cada (\d+).{1,2}min)", R"(trueno en (\d+).{1,2}s\? Adentro (\d+).{1,2}min)",
       R"(Generador afuera, a (\d+).{1,2}m de)"},
      {"safety-pl", R"(kubek co (\d+).{1,2}min)", R"(grzmot w (\d+).{1,2}s\? Do środka na (\d+).{1,2}min)",
       R"(Agregat na dworze, (\d+).{1,2}m od)"}};
  const auto hot = leavesOf(computed(worstJob), {});
  const auto plain =
      leavesOf(computed(replaced(replaced(plainJob, "site: {", "site: {hazards: [generator], "),
                                 "[wash, oil]", "[oil]")),
               {});
  for (const auto& language : languages) {
    INFO(language.sheet);
    const std::string words = together(plain.at(language.sheet)), hotWords = together(hot.at(language.sheet));
    std::smatch cup, lightning, generator;
    REQUIRE(std::regex_search(hotWords, cup, std::regex(language.cup)));
    REQUIRE(std::regex_search(words, lightning, std::regex(language.lightning)));
    REQUIRE(std::regex_search(words, generator, std::regex(language.generator)));
    // NIOSH, blog of 14 July 2014: about a cup (237 mL) each 15 to 20 min; 711 mL an hour.
    CHECK(237 * 60 / std::stod(cup[1]) == near(711).margin(1));
    // 30/30 rule (NOAA; extremeweather.unl.edu): sound takes 5 s a mile, so 30 s are 6 mi, 9.7 km; 30 min
    // after the last thunder.
    CHECK(std::stod(lightning[1]) / 5 * 1.609344 == near(9.7).margin(0.4));
    CHECK(lightning[2] == "30");
    // US Consumer Product Safety Commission: 20 ft, 6.1 m (secondary page).
    CHECK(std::stod(generator[1]) == near(20 * 0.3048).margin(0.5));
  }
}

TEST_CASE("reading on the leaf is never below 10.5 pt on 14 pt, notes and labels never below 9 pt") {
  for (const auto& print : prints) {
    app::Choices choices;
    choices.paper = print.paper;
    choices.theme = print.theme;
    const auto x = computed(worstJob, choices);
    const auto sheets = documents(x, {"safety"}, choices);
    int reading = 0;
    for (const auto& page : sheets.at("safety").pages) {
      for (const auto& item : page.items) {
        const auto* run = std::get_if<typeset::TextRun>(&item.what);
        if (!run || item.tag <= 0) continue;
        CHECK(run->size >= typeset::Dim::pt(9));
        reading += run->size >= typeset::Dim::milli(10'500);
      }
    }
    CHECK(reading > 100);
    const auto look = typeset::legible(x.c.theme);
    for (const char* name : {"body", "table"}) CHECK(look.styles.at(name).leading >= 14'000);
  }
}

TEST_CASE("the poison line is blank until somebody has rung it") {
  auto x = computed(plainJob);
  auto region = *x.c.region;
  x.c.region = &region;
  const auto leaf = [&] { return together(documents(x, {"safety"}).at("safety")); };
  region.poisonLine = "0800 000 000";
  region.poisonSource = "from memory";
  CHECK(holds(leaf(), "Poison line: \u2026"));
  region.poisonSource = "rung on 3 March 2027";
  CHECK(holds(leaf(), "Poison line: 0800 000 000"));
}

TEST_CASE("a plain job is no DANGER and speaks of no heat stroke") {
  const auto plain = documents(computed(plainJob), {"safety"});
  const std::string words = together(plain.at("safety"));
  for (const char* word : {"DANGER", "fainting", "Oil that catches fire"}) {
    INFO(word);
    CHECK_FALSE(holds(words, word));
  }
  // Some water-borne oils hold drying oil: common practice is to treat every rag alike.
  CHECK(holds(words, "Rags and pads may set themselves alight."));
}

TEST_CASE("oily rags are the first panel of the first page, with their number and their pails") {
  const auto worst = documents(computed(worstJob), {"safety", "aftercare"});
  const auto& sheet = worst.at("safety");
  std::string page;
  for (const typeset::Item& item : sheet.pages[0].items) {
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) page += run->text + " ";
  }
  const std::size_t rags = page.find("alight");
  REQUIRE(rags != std::string::npos);
  CHECK(page.find("DANGER") < rags);
  CHECK(rags < page.find("You are at"));
  // Both published ways, whichever comes first: NFPA, Safety with Oily Rags (2017), and USDA Wood Handbook,
  // FPL-GTR-282 (2021), ch. 16.
  const std::string words = together(sheet);
  for (const char* part : {"under water", "lid", "lat outdoors", "in one layer"}) {
    INFO(part);
    CHECK(holds(words, part));
    CHECK(holds(together(worst.at("aftercare")), part));
  }
  CHECK(
      std::regex_search(words, std::regex(R"(Two 20.{1,2}L metal pails, half full of water, in the open)")));
  CHECK(std::regex_search(words, std::regex(R"(About \d+ rags a day)")));
  CHECK(holds(words, "Water or foam, plenty, outdoors."));
  CHECK(holds(together(documents(computed(replaced(worstJob, "year_built: 1962",
                                                   "year_built: 1962, pails: by the tap")),
                                 {"safety"})
                           .at("safety")),
              "half full of water, by the tap,"));
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

TEST_CASE(
    "the leaf has a line for each of the crew on each day, and the assessment the dates of its reviews") {
  const auto x = computed(worstJob);
  const auto sheets = documents(x, {"safety", "risk"});
  const std::string words = together(sheets.at("safety"));
  for (const char* name : {"Ada", "Ben", "Cyd", "Talked through: sign on each day", "Ada, leader"}) {
    INFO(name);
    CHECK(holds(words, name));
  }
  // Mon 15 February to Mon 1 March 2027 touch three weeks.
  CHECK(holds(
      together(sheets.at("risk")),
      "Mon\u00A015\u00A0Feb, Mon\u00A022\u00A0Feb and Mon\u00A01\u00A0Mar, sooner when anything changes"));
}

TEST_CASE("a crew of more than fourteen days signs each week") {
  auto x = computed(worstJob);
  auto day = x.plan.days.front();
  x.plan.days.clear();
  for (int i = 0; i < 30; ++i, day.date += std::chrono::days{1}) x.plan.days.push_back(day);
  const std::string words = together(documents(x, {"safety"}).at("safety"));
  CHECK(holds(words, "sign on each week"));
  CHECK_FALSE(holds(words, "sign on each day"));
}

TEST_CASE("the hardest day stands as a bar against its limit in the assessment") {
  const auto sheets = documents(computed(worstJob), {"risk"});
  std::string alts;
  for (const auto& tag : sheets.at("risk").tags) alts += tag.alt + "\n";
  CHECK(holds(alts, "Bar: 1 of 1 marks passed."));  // noise, 85 dB(A)
  CHECK(holds(alts, "Bar: 1 of 2 marks passed."));  // vibration, past the action value
  CHECK(holds(alts, "Bar: 3 of 3 marks passed."));  // 39 C and more in the sun
}

TEST_CASE("the leaf has at most 700 words at grade 7, the care sheet reads at grade 8 or below") {
  // Flesch-Kincaid grade: Kincaid et al., Navy Research Branch Report 8-75 (1975), formula from memory.
  const auto check = [](const model::JobResult& x, const std::string& job) {
    for (const auto& [name, pages] : documents(x, {"safety", "aftercare"})) {
      if (holds(name, "-")) continue;  // a translation
      const bool isLeaf = name == "safety";
      const auto level = reading::gradeOf(blocksOf(pages));
      INFO(job << ": " << name << ", " << level.words << " words of sentences");
      CHECK(level.words > 150);
      CHECK(level.grade <= (isLeaf ? 7 : 8));
      if (!isLeaf) continue;
      std::istringstream all(together(pages));
      int words = 0;
      for (std::string word; all >> word;)
        words += word.find_first_not_of("0123456789.,;:-") != std::string::npos;
      CHECK(words <= 700);
    }
  };
  check(computed(worstJob), "the worst job");
  check(computed(crowdedJob), "the crowded job");
  check(computed(plainJob), "the plain job");
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = firm_jobs::compute(file, {}, messages);
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

TEST_CASE("what the heaviest tin weighs is told on the leaf where there is room, always in the assessment") {
  const auto tells = [](const std::string& job, const char* document) {
    const auto x = computed(job);
    const int kilograms = static_cast<int>(std::ceil(x.exposure.lifting.heaviestTin));
    REQUIRE(kilograms > 15);
    return holds(together(documents(x, {document}).at(document)),
                 "A full tin is " + std::to_string(kilograms) + "\u00A0kg");
  };
  const std::string large =
      replaced(replaced(plainJob, "plover-wb", "tern-oil"), "[6 m, 4 m]", "[12 m, 8 m]");
  CHECK(tells(large, "safety"));
  CHECK(tells(large, "risk"));
  CHECK(tells(worstJob, "risk"));
}
