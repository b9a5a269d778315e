#include "english.h"
#include "estimate/estimate.h"
#include "estimate/labour.h"
#include "estimate/measure.h"
#include "fixtures.h"
#include "model/lookup.h"
#include "sheets/words/hours.h"

#include <catch2/catch.hpp>

using namespace base;
using namespace fixtures;

namespace {

std::string how(const model::LabourLine& line,
                const model::Region& region = sampleContent().regions.at("nz")) {
  return sheets::hoursFormula(line, model::taskOf(sampleContent(), line.task),
                              sheets::Formatter(region, english()));
}

/// 'task deck pass: quantity h hours | how', a line each.
std::string listing(const std::vector<model::LabourLine>& lines) {
  std::string text;
  for (const auto& l : lines) {
    text +=
        l.task + (l.deck ? " " + std::to_string(*l.deck) : "") + (l.pass ? " " + std::to_string(l.pass) : "");
    text += ": " + std::to_string(l.quantity.millionths) + " " + std::to_string(l.hours.millionths) + " | " +
            how(l) + "\n";
  }
  return text;
}

model::Resources resourcesFor(const model::JobInputs& c, int days,
                              const model::Content& content = sampleContent()) {
  return estimate::makeResources(c, content, estimate::makeEstimate(c, content), days);
}

std::vector<model::LabourLine> labourFor(const model::JobInputs& c, int days) {
  return resourcesFor(c, days).labour;
}

}  // namespace

TEST_CASE("every task makes a line for each deck and pass it is done on", "[estimate]") {
  // Landing: 40 m2, 28 m to cut in, 2000 nails, weathered. Steps: 2.16 m2, 6 m, sanded. Grits 60 and 80.
  CHECK(listing(labourFor(sampleCase(), 3)) ==
        "set-up: 3000000 1500000 | 0.5 h × 3 days\n"
        "clear: 1000000 1000000 | 1 h\n"
        "mask 0: 28000000 1400000 | 28 m / 20 m/h\n"
        "mask 1: 6000000 300000 | 6 m / 20 m/h\n"
        "wash 0: 40000000 1600000 | 40 m² / 30 m²/h × 120 %\n"
        "wash 1: 2160000 72000 | 2.16 m² / 30 m²/h\n"
        "fix 0: 2000000000 20000000 | 2,000 pieces / 100 pieces/h\n"
        "sand 0 60: 40000000 4333333 | 40 m² / 12 m²/h × 130 %\n"
        "sand 0 80: 40000000 5200000 | 40 m² / 10 m²/h × 130 %\n"
        "sand 1 60: 2160000 180000 | 2.16 m² / 12 m²/h\n"
        "sand 1 80: 2160000 216000 | 2.16 m² / 10 m²/h\n"
        "cut-in 0 1: 28000000 700000 | 28 m / 40 m/h\n"
        "cut-in 0 2: 28000000 700000 | 28 m / 40 m/h\n"
        "cut-in 1 1: 6000000 150000 | 6 m / 40 m/h\n"
        "cut-in 1 2: 6000000 150000 | 6 m / 40 m/h\n"
        "oil 0 1: 40000000 2000000 | 40 m² / 20 m²/h\n"
        "oil 0 2: 40000000 2000000 | 40 m² / 20 m²/h\n"
        "oil 1 1: 2160000 108000 | 2.16 m² / 20 m²/h\n"
        "oil 1 2: 2160000 108000 | 2.16 m² / 20 m²/h\n"
        "pack-down: 3000000 1500000 | 0.5 h × 3 days\n");
}

TEST_CASE("only the work that is asked for is done", "[estimate]") {
  auto c = sampleCase();
  c.job.areas.pop_back();
  c.job.work = {model::Work::Wash};
  CHECK(listing(labourFor(c, 1)) ==
        "set-up: 1000000 500000 | 0.5 h × 1 day\n"
        "clear: 1000000 1000000 | 1 h\n"
        "mask 0: 28000000 1400000 | 28 m / 20 m/h\n"
        "wash 0: 40000000 1600000 | 40 m² / 30 m²/h × 120 %\n"
        "pack-down: 1000000 500000 | 0.5 h × 1 day\n");
}

TEST_CASE("before there is a plan no daily task is counted", "[estimate]") {
  for (const auto& line : labourFor(sampleCase(), 0)) {
    CHECK(line.task != "set-up");
    CHECK(line.task != "pack-down");
  }
}

TEST_CASE("the job's own rate beats the task's, whatever the grit", "[estimate]") {
  auto c = sampleCase();
  c.job.areas.pop_back();
  c.job.work = {model::Work::Sand};
  c.job.taskRates["sand"] = {6'500'000};
  const auto lines = labourFor(c, 0);
  REQUIRE(lines.size() == 4);
  CHECK(how(lines[2]) == "40 m² / 6.5 m²/h × 130 %");
  CHECK(lines[2].hours == Hours::whole(8));  // 40 / 6.5 x 1.3
  CHECK(lines[3].hours == Hours::whole(8));
}

TEST_CASE("the sum of hours is that of the lines", "[estimate]") {
  const auto e = resourcesFor(sampleCase(), 3);
  Hours sum;
  for (const auto& line : e.labour) sum += line.hours;
  CHECK(e.labourHours == sum);
  CHECK(e.labourHours == Hours{43'217'333});  // the listing above, added up
  CHECK(e.crewDays == 3);
}

TEST_CASE("the office of a US region reads feet", "[estimate]") {
  model::Region us = sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  auto c = sampleCase();
  c.region = &us;
  c.job.areas.pop_back();
  c.job.areas[0].shape = model::Rectangle{{10 * 304'800'000LL}, {10 * 304'800'000LL}};  // 10 ft x 10 ft
  c.job.work = {model::Work::Wash};
  const auto lines = labourFor(c, 0);
  CHECK(how(lines[1], us) == "40 ft / 65.62 ft/h");              // 20 m/h / 0.3048
  CHECK(how(lines[2], us) == "100 ft² / 322.92 ft²/h × 120 %");  // 30 m2/h / 0.09290304
  CHECK(lines[2].quantity == Count{9'290'304});
}

TEST_CASE("a liquid is used by the quart in US customary units", "[estimate]") {
  auto content = sampleContent();
  content.consumables.at("cleaner").isLiquid = content.consumables.at("cleaner").boughtWhole = true;
  auto us = sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  auto c = sampleCase();
  const auto cleaner = [&] {
    const auto lines = estimate::makeResources(c, content, estimate::makeEstimate(c, content), 3).consumables;
    return *std::find_if(lines.begin(), lines.end(), [](const auto& l) { return l.consumable == "cleaner"; });
  };
  CHECK(cleaner().used == Count{2'108'000});
  CHECK(cleaner().bought == 3);
  c.region = &us;
  CHECK(cleaner().used == Count{2'227'499});  // 2.108 L / 0.946352946
  CHECK(cleaner().cost == cents(43'50));      // 3 x 14.50
}

TEST_CASE("what is used up follows the lines and is bought whole where it must be", "[estimate]") {
  const auto used = resourcesFor(sampleCase(), 3).consumables;
  REQUIRE(used.size() == 4);
  CHECK(used[0].consumable == "film");
  CHECK(used[0].used == Count{500'000});
  CHECK(used[0].bought == 1);
  CHECK(used[0].cost == cents(18'00));
  CHECK(used[1].consumable == "cleaner");
  CHECK(used[1].used == Count{2'108'000});  // (40 + 2.16) x 0.05 L
  CHECK(used[1].cost == cents(30'57));      // 2.108 x 14.50 = 30.566
  CHECK(used[2].consumable == "sheet");
  CHECK(used[2].used == Count{4'216'000});  // 42.16 m2 / 10 in each of two grits
  CHECK(used[2].bought == 5);
  CHECK(used[2].cost == cents(11'00));
  CHECK(used[3].consumable == "sheet");
  CHECK(used[2].grit < used[3].grit);
  CHECK(used[3].bought == 5);
}

TEST_CASE("what a day uses up is counted for each person and each day") {
  auto content = sampleContent();
  content.consumables["gloves"] = {"gloves", "work gloves", "pairs", {{"nz", cents(2'80)}}, true};
  for (auto& task : content.tasks) {
    if (task.id == "set-up") task.uses = {{"gloves", Count::whole(1)}};
  }
  auto c = sampleCase(content);
  c.job.crew.people = 3;
  const auto used = resourcesFor(c, 12, content).consumables;
  CHECK(used[0].consumable == "gloves");
  CHECK(used[0].bought == 36);           // 3 people, 12 days
  CHECK(used[0].cost == cents(100'80));  // 36 x 2.80
}

TEST_CASE("every coat may come too late, a first one only after sanding", "[estimate]") {
  model::Content content = sampleContent();
  content.tasks.push_back(sampleTask("between", model::Work::Oil, model::Measure::Surface, 20));
  content.tasks.back().isForLateCoat = true;
  auto c = sampleCase(content);
  c.job.areas[0].coats = 3;
  std::vector<model::Measures> decks;
  for (const auto& deck : c.job.areas) decks.push_back(estimate::measureDeck(deck));
  CHECK(estimate::lateCoatLabour(c, content, decks).size() == 5);
  c.job.work = {model::Work::Oil};
  const auto lines = estimate::lateCoatLabour(c, content, decks);
  REQUIRE(lines.size() == 3);
  CHECK((lines[0].deck == 0U && lines[0].pass == 2));
  CHECK((lines[1].deck == 0U && lines[1].pass == 3));
  CHECK((lines[2].deck == 1U && lines[2].pass == 2));
}
