// Fixings: all are checked, those that stand up are reset. Shares and rates are common practice, without a
// source.
#include "safety_jobs.h"

#include "estimate/estimate.h"
#include "model/lookup.h"

using namespace safety_jobs;

namespace {

model::JobResult example(const std::string& name) {
  base::Diagnostics messages;
  auto x = app::compute(SOURCE_DIR "/out_examples/" + name + "/job.yaml", shipped(), {}, messages);
  REQUIRE(x);
  return std::move(*x);
}

std::int64_t piecesOf(const std::vector<model::LabourLine>& labour, const std::string& task,
                      std::size_t deck) {
  for (const auto& line : labour) {
    if (line.task == task && line.deck == deck) return line.quantity.millionths / 1'000'000;
  }
  return 0;
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
  CHECK(x.estimate.decks[0].fixings == 2355);
  CHECK(piecesOf(x.estimate.labour, "check", 0) == 2355);
  CHECK(piecesOf(x.estimate.labour, "fix", 0) == 354);  // 15 % of 2355 is 353.25
  x.c.job.areas[0].fixings->raised = base::Share::whole(20);
  CHECK(piecesOf(estimate::makeEstimate(x.c, shipped().content).labour, "fix", 0) == 471);
  x.c.job.areas[0].fixings->raised = base::Share::whole(0);
  CHECK(piecesOf(estimate::makeEstimate(x.c, shipped().content).labour, "fix", 0) == 0);
}

TEST_CASE("nailed boards and boards on clips order no deck screws") {
  CHECK(screwsOf(example("landing").resources) == nullptr);
  auto x = example("porch");
  const auto* screws = screwsOf(x.resources);
  REQUIRE(screws != nullptr);
  const std::int64_t reset = piecesOf(x.estimate.labour, "fix", 0) + piecesOf(x.estimate.labour, "fix", 1);
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
