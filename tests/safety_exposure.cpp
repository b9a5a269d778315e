// What a small job does to its crew, worked out by hand beside each check. All figures invented.
#include "safety/exposure.h"
#include "safety/noise.h"

#include "fixtures.h"
#include "near.h"

#include <catch2/catch.hpp>

namespace {

using base::LocalTime;

const base::Date monday = base::parseDate("2027-03-15").value();

/// Two people sand a deck for four hours and lay a coat under a roof in two.
struct SmallJob {
  model::Product product = fixtures::sampleProduct();
  model::Region region;
  model::Content content;
  model::JobInputs c;
  model::Estimate estimate;
  model::Resources resources;
  model::Plan plan;

  SmallJob() {
    product.gramsPerLitre = 850;
    product.sds = model::SafetyData{};
    product.sds->vapours = {{"white spirit", 350, {600'000}, 144}};
    c.product = &product;
    c.region = &region;
    c.job.crew.breakMinutes = 0;
    model::Deck deck;
    deck.name = "Porch";
    deck.isCovered = true;
    c.job.areas = {deck};
    content.tasks = fixtures::sampleTasks();
    content.tools = {
        {"sander", "sander", {"sand"}, 92, base::Count::whole(5), fixtures::percent(75), true, true},
        {"vacuum", "vacuum", {"sand"}, 74, {}, fixtures::percent(100), true, false}};
    content.consumables["rag"] = {"rag", "rags", "piece", {}, true, true};
    content.consumables["film"] = {"film", "film", "roll", {}, true, false};
    plan.shifts = {{"sand", 0, 80, {monday, 8 * 60}, {monday, 12 * 60}, 2},
                   {"oil", 0, 1, {monday, 13 * 60}, {monday, 15 * 60}, 2}};
    plan.coats = {{0, 1, 0, {monday, 13 * 60}, {monday, 15 * 60}, {}, {}, {}, {}}};
    estimate.coats = {{0, 1, fixtures::spread(8), "", base::litres(4), {}, {}, {}}};
    resources.consumables = {{"rag", 0, fixtures::pieces(11), 11, {}},
                             {"film", 0, fixtures::pieces(2), 2, {}}};
    resources.product.bought.tins = {{{base::litres(20), {}}, 1}};
  }

  model::CrewExposure exposure() const { return safety::exposureOf(c, content, estimate, resources, plan); }
};

}  // namespace

TEST_CASE("a person's noise is the tools of his shift") {
  // 3 h of the sander at 92 dB(A) and 4 h of the vacuum at 74: (3 10^9.2 + 4 10^7.4) / 8 is 87.83 dB(A).
  const auto noise = SmallJob().exposure().noise;
  REQUIRE(noise.size() == 1);
  CHECK(noise[0].date == monday);
  CHECK(noise[0].lex8h == near(87.83).margin(0.01));
  CHECK(noise[0].nioshDose == near(192.93).margin(0.01));  // 3 / 1.5874 + 4 / 101.59
  CHECK(noise[0].oshaDose == near(54.92).margin(0.01));    // 3 / 6.0629 + 4 / 73.52
  CHECK(noise[0].protection == near(7.83).margin(0.01));   // down to 80 dB(A)
  CHECK(noise[0].shareAmong == 2);                         // 10^0.278 = 1.9
}

TEST_CASE("a break inside the work is no time with a tool") {
  // Sanding from 08:00 to 13:00 with an hour off from 11:00 on is four hours: 3 h of the sander, 4 of the
  // vacuum.
  SmallJob job;
  job.plan.shifts[0].end = {monday, 11 * 60};
  job.plan.shifts.push_back({"sand", 0, 80, {monday, 12 * 60}, {monday, 13 * 60}, 2});
  CHECK(job.exposure().noise.at(0).lex8h == near(87.83).margin(0.01));
  CHECK(job.exposure().vibration.at(0).points == near(150));
}

TEST_CASE("a coat in two parts airs for as long as each is laid") {
  // 4 L laid from 11:00 to 12:00 and from 13:00 to 14:00: 840 g/h.
  SmallJob job;
  job.plan.coats = {{0, 1, 1, {monday, 11 * 60}, {monday, 12 * 60}, {}, {}, {}, {}},
                    {0, 1, 2, {monday, 13 * 60}, {monday, 14 * 60}, {}, {}, {}, {}}};
  CHECK(job.exposure().vapour.at(0).solventGramsPerHour == near(840));
}

TEST_CASE("where OSHA's form holds, its own average counts") {
  // 29 CFR 1910.95, App. A: a dose of 54.92 % is 90 + 16.61 log10 0.5492 = 85.68 dB(A); (NRR - 7) / 2 of 9
  // takes the 0.68 above its action level off.
  SmallJob job;
  job.region.limits.noise.rule = model::NoiseRule::Osha;
  const auto day = job.exposure().noise.at(0);
  CHECK(day.level == near(85.68).margin(0.01));
  CHECK(day.protection == near(0.68).margin(0.01));
  CHECK(safety::ratingFor(day.protection) == 9);
  CHECK(day.shareAmong == 1);
}

TEST_CASE("the limits are those of the last day of the work") {
  SmallJob job;
  job.region.limits.dust.source = "old";
  job.region.laterLimits[monday + std::chrono::days{1}].dust.source = "new";
  job.plan.days = {{monday, 1, {}, {}, {}, {}, {}}};
  CHECK(job.exposure().limits.dust.source == "old");
  job.plan.days.push_back({monday + std::chrono::days{1}, 1, {}, {}, {}, {}, {}});
  CHECK(job.exposure().limits.dust.source == "new");
}

TEST_CASE("a tool that is not for treated boards makes no noise on them") {
  SmallJob job;
  job.content.tools[0].isForTreated = false;
  job.content.timbers["larch"] = {};
  job.c.job.areas[0].timber = "larch";
  CHECK(job.exposure().noise.at(0).lex8h == near(87.83).margin(0.01));
  job.c.job.areas[0].isTreated = true;
  CHECK(job.exposure().noise.at(0).lex8h == near(70.99).margin(0.01));  // 4 h of the vacuum, 74 - 3.01
  CHECK(job.exposure().vibration.empty());
}

TEST_CASE("a sander of 5 m/s2 for three hours is 150 points") {
  // HSE, hand-arm vibration ready-reckoner.
  const auto vibration = SmallJob().exposure().vibration;
  REQUIRE(vibration.size() == 1);
  CHECK(vibration[0].points == near(150));
  CHECK(vibration[0].a8 == near(3.062).margin(0.001));
  CHECK(vibration[0].shareAmong == 2);
  REQUIRE(vibration[0].tools.size() == 1);
  CHECK(vibration[0].tools[0].minutes == near(180));
  CHECK(vibration[0].tools[0].minutesToAction == near(120));
  CHECK(vibration[0].tools[0].minutesToLimit == near(480));
}

TEST_CASE("vapour is counted under a roof and not in the open") {
  // 4 L in 2 h at 420 g/L are 840 g/h: 5 x 840 000 / 350 = 12 000 m3/h.
  SmallJob job;
  const auto vapour = job.exposure().vapour;
  REQUIRE(vapour.size() == 1);
  CHECK(vapour[0].solventGramsPerHour == near(840));
  CHECK(vapour[0].airForLimit == near(12000));
  CHECK(vapour[0].airForExplosion == near(93.5).margin(0.1));  // 840 / 144 x 24.055 / 1000 x 400 / 0.6
  CHECK(vapour[0].limit == near(350));
  job.c.job.areas[0].isCovered = false;
  CHECK(job.exposure().vapour.empty());
}

TEST_CASE("a limit in ppm keeps its unit, in the form of the place") {
  // 840 g/h of 144 g/mol are 0.14032 m3/h of vapour; 5 x 0.14032 x 10^6 / 100 = 7016 m3/h. ACGIH's form in US
  // units belongs to 70 F and asks for 0.4 % more.
  SmallJob job;
  job.product.sds->vapours[0].exposureLimit = 100;
  job.product.sds->vapours[0].isInPpm = true;
  CHECK(job.exposure().vapour.at(0).airForLimit == near(7016).margin(1));
  CHECK(job.exposure().vapour.at(0).limit == near(588.96).margin(0.01));  // 100 x 144 / 24.45
  job.region.units = model::UnitSystem::UsCustomary;
  CHECK(job.exposure().vapour.at(0).airForLimit == near(7016 * 1.004).epsilon(0.002));
}

TEST_CASE("solvents of one product share the limit") {
  // Half of each: 5 x (420 000 / 350 + 420 000 / 200) = 16 500 m3/h; the limit of both together is
  // 1 / (0.5 / 350 + 0.5 / 200) = 254.5 mg/m3 by the additive rule (ACGIH, threshold limit values, appendix
  // on mixtures; from memory).
  SmallJob job;
  auto& vapours = job.product.sds->vapours;
  vapours[0].share = fixtures::percent(50);
  vapours.push_back({"xylene", 200, {1'000'000}, 106, false, fixtures::percent(50)});
  const auto area = job.exposure().vapour.at(0);
  CHECK(area.airForLimit == near(16500));
  CHECK(area.limit == near(254.5).margin(0.1));
  // Le Chatelier: volumes 420 / 144 and 420 / 106 of 24.055 L; 400 (0.07016 / 0.6 + 0.09531 / 1.0) = 84.9
  // m3/h.
  CHECK(area.airForExplosion == near(84.9).margin(0.1));
}

TEST_CASE("a gallon of product needs its air against fire") {
  // 29 CFR 1910.94(c)(6)(ii): 4 (100 - LEL) V / LEL. A gallon holds 1589.9 g of solvent, 9.379 ft3 of vapour
  // at 20 C: 4 x 99.4 x 9.379 / 0.6 = 6215 ft3.
  CHECK(SmallJob().exposure().vapour.at(0).airPerGallon == near(6215).margin(10));
}

TEST_CASE("rags are counted for the day that lays most, and never go into fewer than two pails") {
  SmallJob job;
  CHECK(job.exposure().rags.count == 11);
  CHECK(job.exposure().rags.perDay == 11);
  CHECK(job.exposure().rags.pails == 2);
  job.product.isDryingOil = false;  // some water-borne oils hold drying oil
  CHECK(job.exposure().rags.count == 11);
}

TEST_CASE("the heaviest tin is weighed full") {
  SmallJob job;
  CHECK(job.exposure().lifting.heaviestTin == near(18.36));  // 20 L x 0.85 kg/L x 1.08
  job.product.gramsPerLitre = 0;                             // not told: as heavy as water
  CHECK(job.exposure().lifting.heaviestTin == near(21.6));
}

TEST_CASE("work is shared among eight at most") {
  SmallJob job;
  job.content.tools[0].vibration = base::Count::whole(11);  // A(8)^2 = 121 x 3 / 8, over 6.25: 7.26
  CHECK(job.exposure().vibration.at(0).shareAmong == 8);
  job.content.tools[0].vibration = base::Count::whole(12);  // 8.64
  CHECK(job.exposure().vibration.at(0).shareAmong == 0);
}

TEST_CASE("the hottest hour of the work counts, not of the night or of the pause") {
  SmallJob job;
  CHECK(job.exposure().heat.empty());
  for (const int hour : {7, 11, 12, 16}) {
    model::Hour h;
    h.at = {monday, hour * 60};
    h.source = model::WeatherSource::Forecast;
    h.air = {20.0 + hour, 60, 0, 2, 0};
    job.plan.hours.push_back(h);
  }
  const auto heat = job.exposure().heat;
  REQUIRE(heat.size() == 1);
  CHECK(heat[0].at == LocalTime{monday, 11 * 60});
  CHECK(heat[0].celsius ==
        near(34.46).margin(0.01));  // 31 C, 60 %, 2 m/s in the Bureau of Meteorology's form
  CHECK(heat[0].band == model::HeatBand::ExtremeCaution);
  CHECK_FALSE(heat[0].isUsual);
  CHECK_FALSE(heat[0].isInSun);  // under its roof

  // In the open the sun adds 165 W/m2: 31 + 0.348 x 26.86 - 1.4 + 0.7 x 165 / 12 - 4.25 = 44.32 C (Steadman
  // 1994).
  for (auto& hour : job.plan.hours) hour.sunlight = 900, hour.skylight = 120, hour.sunElevation = 77.16;
  CHECK_FALSE(job.exposure().heat.at(0).isInSun);
  job.c.job.areas[0].isCovered = false;
  const auto open = job.exposure().heat.at(0);
  CHECK(open.isInSun);
  CHECK(open.celsius == near(44.32).margin(0.01));
  CHECK(open.band == model::HeatBand::Danger);
  job.c.job.areas[0].sun = model::ClockSpan{12 * 60, 15 * 60};  // the shift ends at noon
  CHECK(job.exposure().heat.at(0).celsius == near(34.46).margin(0.01));
  // Of the next deck, in the sun, nobody is told while all work on this one.
  job.c.job.areas.push_back(job.c.job.areas[0]);
  job.c.job.areas[1].sun.reset();
  CHECK_FALSE(job.exposure().heat.at(0).isInSun);
  job.plan.shifts[0].deck.reset();
  CHECK(job.exposure().heat.at(0).isInSun);
  // The heat index is one of the shade.
  job.region.limits.heat.usesHeatIndex = true;
  const auto index = job.exposure().heat.at(0);
  CHECK(index.isInSun);
  CHECK(index.celsius == near(35.0).margin(0.6));  // 88 F and 60 % in the weather service's chart: 95 F
  // The National Weather Service: full sun adds up to 15 F, so 95 F are weighed as 110 F.
  CHECK(index.band == model::HeatBand::Danger);
}

TEST_CASE("values that are not the maker's are told") {
  SmallJob job;
  CHECK(job.exposure().hasExampleTools);
  job.content.tools[0].isExample = false;
  CHECK_FALSE(job.exposure().hasExampleTools);
}
