// What lies around the decks, on their plans.
#include "input_fixture.h"
#include "plan_drawn.h"
#include "safety_jobs.h"

using namespace figures_test;

namespace {

const std::string around = R"(around:
  - {is: house, rectangle: [8 m, 5 m], at: [0 m, -5 m]}
  - {is: water, points: [[-9 m, 4.2 m], [15 m, 4.2 m], [15 m, 12 m], [-9 m, 12 m]], name: Mill Bay}
  - {is: tree, circle: 1 m, at: [7 m, 2 m]}
)";

model::JobResult withAround(const std::string& job) { return safety_jobs::computed(job + around); }

Drawing planOf(const model::JobResult& x) {
  return drawings::deckPlan(x.c, x.estimate, metric().pen(), fullWidth, false);
}

std::vector<const Path*> filledWith(const Drawing& d, model::Colour fill) {
  std::vector<const Path*> all;
  for (const auto* p : pathsIn(d))
    if (p->fill == fill) all.push_back(p);
  return all;
}

// The theme's wall and notice, so much of them and the rest white.
constexpr model::Colour house = {221, 218, 215}, water = {220, 231, 239};

std::string saidOf(const std::string& lines) {
  base::Diagnostics messages;
  input::readJob(fixture::goodJob + lines, "job.yaml", fixture::content(), messages);
  return base::format(messages);
}

}  // namespace

TEST_CASE("a plan shows house, water and trees in soft tones, and tells them") {
  const auto plan = planOf(withAround(safety_jobs::plainJob));
  CHECK_FALSE(filledWith(plan, house).empty());
  CHECK_FALSE(filledWith(plan, water).empty());
  checkInside(plan);
  CHECK(plan.alt.find("; around: house, Mill Bay, tree.") != std::string::npos);
  const auto alone = planOf(safety_jobs::computed(safety_jobs::plainJob));
  CHECK(filledWith(alone, house).empty());
  CHECK(alone.alt.find("around") == std::string::npos);
}

TEST_CASE("what lies around the decks is named in itself where it has room") {
  const auto x = safety_jobs::example("landing");
  const auto plan = drawings::deckPlan(x.c, x.estimate, metric().pen(), fullWidth, false);
  const auto* name = textIn(plan, "lodge");
  REQUIRE(name);
  bool isInside = false;  // of the box around one of the tones of a house
  for (const auto* path : filledWith(plan, house)) {
    typeset::Point low = path->steps.front().to, high = low;
    for (const auto& step : path->steps) {
      if (step.kind == Step::Kind::Close) continue;
      low = {std::min(low.x, step.to.x), std::min(low.y, step.to.y)};
      high = {std::max(high.x, step.to.x), std::max(high.y, step.to.y)};
    }
    isInside = isInside || (low.x <= name->baseline.x && name->baseline.x + name->width <= high.x &&
                            low.y <= name->baseline.y && name->baseline.y <= high.y);
  }
  CHECK(isInside);
}

TEST_CASE("surroundings neither shrink the decks on a plan nor reach beyond it") {
  const auto plan = planOf(withAround(safety_jobs::plainJob));
  const auto alone = planOf(safety_jobs::computed(safety_jobs::plainJob));
  const auto scaleOf = [](const Drawing& d) { return d.alt.substr(0, d.alt.find(':', 30)); };
  CHECK(scaleOf(plan) == scaleOf(alone));
  CHECK(plan.size.h - alone.size.h <= Dim::mm(12));
  CHECK(plan.size.w - alone.size.w <= Dim::mm(12));
}

TEST_CASE("decks lie over what is around them") {
  const auto x = withAround(safety_jobs::plainJob);
  const auto plan = planOf(x);
  const auto paths = pathsIn(plan);
  const auto placeOf = [&](model::Colour fill) {
    return std::find_if(paths.begin(), paths.end(), [&](const auto* p) { return p->fill == fill; });
  };
  CHECK(placeOf(house) < placeOf(theme().colours.at("tint")));
  CHECK(placeOf(water) < placeOf(theme().colours.at("tint")));
}

TEST_CASE("the plan of a coat shows the same") {
  const auto x = withAround(safety_jobs::plainJob);
  const auto pages = safety_jobs::documents(x, {"dayplan"}).at("dayplan");
  const auto colours = x.c.theme.colours;
  std::size_t soft = 0;
  for (const auto& page : pages.pages)
    for (const auto& item : page.items) {
      const auto* path = std::get_if<Path>(&item.what);
      if (path && path->fill == house) ++soft;
    }
  CHECK(soft >= 1);
}

TEST_CASE("surroundings that cannot be drawn are refused with the whole message") {
  const auto line = 1 + std::count(fixture::goodJob.begin(), fixture::goodJob.end(), '\n');
  const std::string at = "job.yaml:" + std::to_string(line + 1) + ":";
  CHECK(saidOf("around:\n  - {is: hause, rectangle: [8 m, 5 m], at: [0 m, -5 m]}\n") ==
        at + "10: error: around[1].is: 'hause' is not a known thing beside a deck; did you mean 'house'?\n"
             "  hint: known: house, wall, water, tree or path\n");
  CHECK(saidOf("around:\n  - {is: house, rectangle: [8 m, 5 m]}\n") ==
        at + "5: error: around[1]: 'at' is missing\n"
             "  hint: write where it lies on the plan, as 'at' of an area: at: [0 m, -3 m]\n");
  CHECK(saidOf("around:\n  - {is: tree, ring: [3 m, 1 m], at: [0 m, -5 m]}\n") ==
        at + "5: error: around[1]: this shape cannot lie beside a deck\n"
             "  hint: known: rectangle, points, circle\n");
  CHECK(saidOf("around:\n  - {rectangle: [8 m, 5 m], at: [0 m, -5 m]}\n") ==
        at + "5: error: around[1]: 'is' is missing\n"
             "  hint: write it like is: house\n");
}

TEST_CASE("water on the plan of a site that is not near water is told") {
  const std::string lines = "around:\n  - {is: water, rectangle: [8 m, 5 m], at: [0 m, 8 m]}\n";
  const auto line = 1 + std::count(fixture::goodJob.begin(), fixture::goodJob.end(), '\n');
  CHECK(saidOf(lines) ==
        "job.yaml:" + std::to_string(line + 1) +
            ":3: warning: around: there is water on the plan, and the site is not near water\n"
            "  hint: write 'near_water: true' under 'site:', so that the safety sheet says "
            "what to do beside it\n");
  base::Diagnostics messages;
  auto job = fixture::goodJob + lines;
  job.insert(job.find("timezone:"), "near_water: true, ");
  input::readJob(job, "job.yaml", fixture::content(), messages);
  CHECK(base::format(messages).empty());
}
