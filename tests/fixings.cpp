// Fixings: all are checked, those that stand up are reset. Shares and rates are common practice, without a
// source.
#include "safety_jobs.h"

#include "estimate/estimate.h"
#include "model/lookup.h"
#include "sheets/words/hours.h"

using namespace safety_jobs;

namespace {

/// Those that are reset, and the hours in which all are looked over, in hundredths.
std::pair<std::int64_t, std::int64_t> fixingsOf(const std::vector<model::LabourLine>& labour,
                                                std::size_t deck) {
  for (const auto& line : labour) {
    if (line.task == "fix" && line.deck == deck)
      return {line.quantity.millionths / 1'000'000, line.checking.millionths / 10'000};
  }
  return {};
}

const model::ConsumableLine* screwsOf(const model::Resources& e) {
  for (const auto& line : e.consumables) {
    if (line.consumable == "screws") return &line;
  }
  return nullptr;
}

}  // namespace

TEST_CASE("all fixings are checked, those that stand up are reset") {
  auto x = example("landing");
  const auto fixings = [&] { return fixingsOf(estimate::makeEstimate(x.c, shipped().content).labour, 0); };
  CHECK(x.estimate.decks[0].fixings == 2355);
  CHECK(fixings() ==
        std::pair<std::int64_t, std::int64_t>(354, 157));  // 15 % are 353.25; 2355 / 1500 = 1.57 h
  x.c.job.areas[0].fixings->raised = base::Share::whole(20);
  CHECK(fixings() == std::pair<std::int64_t, std::int64_t>(471, 157));
  x.c.job.areas[0].fixings->raised = base::Share::whole(0);
  CHECK(fixings() == std::pair<std::int64_t, std::int64_t>(0, 157));
  x.c.job.work = {model::Work::Wash};
  CHECK(fixings() == std::pair<std::int64_t, std::int64_t>(0, 0));
}

TEST_CASE("the office reads how the hours for fixings came about") {
  const auto x = example("landing");
  const auto line = std::find_if(x.estimate.labour.begin(), x.estimate.labour.end(),
                                 [](const auto& l) { return l.task == "fix"; });
  REQUIRE(line != x.estimate.labour.end());
  // 354 / 140 + 1.57 = 4.0986 h
  CHECK(line->hours.millionths / 100 == 40'985);
  CHECK(sheets::hoursFormula(*line, model::taskOf(x.content, "fix"),
                             sheets::Formatter(*x.c.region, x.language)) ==
        "354 pieces / 140 pieces/h + 1.57 h");
}

TEST_CASE("nailed boards and boards on clips order no deck screws") {
  CHECK(screwsOf(example("landing").resources) == nullptr);
  auto x = example("porch");
  const auto* screws = screwsOf(x.resources);
  REQUIRE(screws != nullptr);
  const std::int64_t reset = fixingsOf(x.estimate.labour, 0).first + fixingsOf(x.estimate.labour, 1).first;
  CHECK(screws->used.millionths == reset * 330'000);  // one in three of those reset
  for (auto& area : x.c.job.areas) {
    if (area.fixings) area.fixings->kind = "clips";
  }
  CHECK(screwsOf(estimate::makeResources(x.c, shipped().content,
                                         estimate::makeEstimate(x.c, shipped().content), 4)) == nullptr);
}

TEST_CASE("fixings are priced with the area they hold, never by the piece") {
  for (const auto& line : example("landing").price.lines) {
    if (line.work != model::Work::Fix) continue;
    CHECK(line.unit == model::LineUnit::Area);
  }
}
