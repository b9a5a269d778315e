// Why a hazard is on the sheet or was left out, in the words of the content.
#include "safety/hazards.h"

#include "fixtures.h"

#include <catch2/catch.hpp>

namespace {

using model::Clause;
using model::Condition;

/// One hazard with one set of conditions, weighed for a small job.
struct Weighed {
  model::Content content = fixtures::sampleContent();
  model::JobInputs c = fixtures::sampleCase();
  model::Estimate estimate;
  model::Resources resources;
  model::CrewExposure exposure;
  model::Hazard hazard;

  Weighed() {
    estimate.coats.resize(1);
    content.conditionWords = {
        {Condition::DryingOil, {"it dries", "it does not dry", ""}},
        {Condition::Hardwood, {"{value} is hard", "nothing is hard", ""}},
        {Condition::Alone, {"one is alone", "nobody is alone", ""}},
        {Condition::BuiltBefore, {"{value} is before {limit}", "{value} is not before {limit}", "who knows"}},
        {Condition::EdgeAbove, {"{value} is above {limit}", "nothing is above {limit}", ""}},
        {Condition::NoiseAbove, {"{value} reaches {limit}", "nothing reaches {limit}", ""}},
        {Condition::VibrationAbove, {"{value} reaches {limit}", "nothing reaches {limit}", ""}},
        {Condition::InSun, {"the sun reaches {value}", "no sun", ""}},
        {Condition::Tool, {"with the {value}", "no {value}", ""}},
        {Condition::LiftingAbove, {"{value} is above {limit}", "nothing is above {limit}", ""}}};
  }

  std::string why() {
    content.hazards = {hazard};
    const auto choice = safety::hazardsOf(c, content, estimate, resources, exposure).at(0);
    return (choice.applies ? "yes: " : "no: ") + choice.why;
  }

  static Clause clause(Condition condition) {
    Clause c;
    c.condition = condition;
    return c;
  }
};

}  // namespace

TEST_CASE("a hazard tells every condition that holds, or the first that does not") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::DryingOil), w.clause(Condition::Hardwood)};
  CHECK(w.why() == "yes: it dries; old hardwood is hard");  // two decks of it, named once
  w.hazard.when.none = {w.clause(Condition::Alone)};
  CHECK(w.why() == "yes: it dries; old hardwood is hard");
  w.c.job.crew.people = 1;
  CHECK(w.why() == "no: one is alone");
  w.estimate.coats.clear();
  CHECK(w.why() == "no: it does not dry");
  w.hazard.when = {{}, {w.clause(Condition::DryingOil), w.clause(Condition::Hardwood)}, {}};
  CHECK(w.why() == "yes: old hardwood is hard");
  for (auto& deck : w.c.job.areas) deck.timber = "softwood";
  CHECK(w.why() == "no: it does not dry; nothing is hard");
}

TEST_CASE("a year that is not known counts as if it held") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::BuiltBefore)};
  CHECK(w.why() == "yes: who knows");
  w.c.job.site.yearBuilt = 1985;
  CHECK(w.why() == "yes: who knows");  // the region names no year
  w.hazard.when.all[0].number = 1980;
  CHECK(w.why() == "no: 1985 is not before 1980");
  w.c.job.site.yearBuilt = 1979;
  CHECK(w.why() == "yes: 1979 is before 1980");
}

TEST_CASE("heights and weights are told in the units of the region") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::EdgeAbove)};
  w.hazard.when.all[0].height = base::millimetres(500);
  w.c.job.areas[0].edgeHeight = base::millimetres(500);
  CHECK(w.why() == "no: nothing is above 0.5 m");
  w.c.job.areas[1].edgeHeight = base::millimetres(914);
  CHECK(w.why() == "yes: 0.9 m is above 0.5 m");
  model::Region us = fixtures::sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  w.c.region = &us;
  CHECK(w.why() == "yes: 3'-0\" is above 1'-7¾\"");
  w.hazard.when.all = {w.clause(Condition::LiftingAbove)};
  w.hazard.when.all[0].number = 15;
  w.exposure.lifting.heaviestTin = 18;
  CHECK(w.why() == "yes: 40 lb is above 33 lb");  // 18 / 0.45359237 is 39.7, 15 / 0.45359237 is 33.1
}

TEST_CASE("noise is weighed in the form of the region") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::NoiseAbove)};
  w.hazard.when.all[0].threshold = model::Threshold::Lower;
  // 4 h at 88 dB(A): NIOSH 98-126 (1998) gives a dose of 100 %, 29 CFR 1910.95 App. A 4/10.56 = 37.9 %, and
  // L_EX,8h (Directive 2003/10/EC) is 88 - 10 log10 2 = 84.99 dB(A).
  w.exposure.noise = {{{}, 100, 37.9, 84.99, 84.99, 0, 0, 0}};
  CHECK(w.why() == "yes: 85 dB(A) reaches 80 dB(A)");  // Directive 2003/10/EC, art. 3
  w.hazard.when.all[0].threshold = model::Threshold::Upper;
  CHECK(w.why() == "no: nothing reaches 85 dB(A)");  // 84.99
  // OSHA's average of that day is 90 + 16.61 log10 0.379 = 83.0 dB(A); its levels are 85 and 90 (29 CFR
  // 1910.95 (c) and (b)). That NIOSH's dose is full does not count.
  w.exposure.limits.noise.rule = model::NoiseRule::Osha;
  w.exposure.noise[0].level = 83.0;
  CHECK(w.why() == "no: nothing reaches 90 dB(A)");
  w.hazard.when.all[0].threshold = model::Threshold::Lower;
  CHECK(w.why() == "no: nothing reaches 85 dB(A)");
  w.exposure.noise[0].level = 85;
  CHECK(w.why() == "yes: 85 dB(A) reaches 85 dB(A)");
}

TEST_CASE("vibration is weighed by the directive's values where the region names none") {
  // Directive 2002/44/EC, art. 3: action and limit value 2.5 and 5 m/s2. ANSI/ASA S2.70-2006, the guidance of
  // the United States, has the same: 5.0 as its limit value (seen on a secondary page), 2.5 as its action
  // value (from memory).
  Weighed w;
  REQUIRE_FALSE(w.exposure.limits.vibration.action);
  w.hazard.when.all = {w.clause(Condition::VibrationAbove)};
  w.hazard.when.all[0].threshold = model::Threshold::Action;
  w.exposure.vibration = {{{}, 2.4, 0, 0, 0, {}}};
  CHECK(w.why() == "no: nothing reaches 2.5 m/s²");
  w.exposure.vibration[0].a8 = 2.5;
  CHECK(w.why() == "yes: 2.5 m/s² reaches 2.5 m/s²");
  w.hazard.when.all[0].threshold = model::Threshold::Limit;
  w.exposure.vibration[0].a8 = 4.9;
  CHECK(w.why() == "no: nothing reaches 5.0 m/s²");
  w.exposure.vibration[0].a8 = 5;
  CHECK(w.why() == "yes: 5.0 m/s² reaches 5.0 m/s²");
}

TEST_CASE("the sun counts where it reaches boards while the crew works, in wind or shelter") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::InSun)};
  w.c.job.crew.startMinutes = 8 * 60;
  w.c.job.crew.endMinutes = 16 * 60;
  const auto sun = [&](std::optional<model::ClockSpan> span) {
    for (auto& deck : w.c.job.areas) deck.sun = span;
    return w.why();
  };
  w.c.job.areas[0].name = w.c.job.areas[1].name = "Deck";
  for (const auto exposure : {model::Exposure::Sheltered, model::Exposure::Open}) {
    w.c.job.site.exposure = exposure;
    CHECK(sun({}) == "yes: the sun reaches Deck");
    CHECK(sun(model::ClockSpan{15 * 60, 20 * 60}) == "yes: the sun reaches Deck");
    CHECK(sun(model::ClockSpan{16 * 60, 20 * 60}) == "no: no sun");
    CHECK(sun(model::ClockSpan{0, 0}) == "no: no sun");
  }
  w.c.job.areas[1].sun.reset();
  CHECK(w.why() == "yes: the sun reaches Deck");
  w.c.job.areas[1].isCovered = true;
  CHECK(w.why() == "no: no sun");
}

TEST_CASE("a tool that is not for treated boards counts for the others only") {
  Weighed w;
  w.hazard.when.all = {w.clause(Condition::Tool)};
  w.hazard.when.all[0].id = "blower";
  w.content.tools = {{"blower", "leaf blower", {"blow"}, 95, {}, fixtures::percent(100), true, true, false}};
  w.resources.labour.resize(2);
  for (std::size_t deck = 0; deck < 2; ++deck) {
    w.resources.labour[deck].task = "blow";
    w.resources.labour[deck].deck = deck;
    w.c.job.areas[deck].isTreated = true;
  }
  CHECK(w.why() == "no: no leaf blower");
  w.c.job.areas[1].isTreated = false;
  CHECK(w.why() == "yes: with the leaf blower");
}
