// What finished jobs tell: rates as laid, dates, whose visit falls due.
#include "schedule/crew/records.h"
#include "estimate/estimate.h"
#include "fixtures.h"
#include "model/names.h"
#include "records/actual.h"
#include "records/due.h"
#include "schedule/plan.h"

#include <catch2/catch.hpp>

namespace {

using namespace fixtures;

base::LocalTime at(const char* day, int hour, int minute = 0) {
  return {*base::parseDate(day), hour * 60 + minute};
}

model::DoneCoat laid(std::size_t deck, int coat, base::LocalTime from, base::LocalTime to,
                     std::optional<base::Volume> used = {}, std::size_t entry = 0) {
  model::DoneCoat d;
  d.deck = deck;
  d.coat = coat;
  d.start = from;
  d.end = to;
  d.used = used;
  d.entry = entry;
  return d;
}

/// 185 m2 at 8 and 12 m2/L, without loss: 23.125 L and 15.417 L, 38.5 L together. Common practice for old,
/// sanded, open-pored hardwood; the records are invented.
model::JobInputs thirstyDeck() {
  model::JobInputs c = sampleCase();
  model::Deck d = sampleDeck();
  d.shape = model::Measured{base::squareMetres(185), base::metres(60)};
  d.boards.reset();
  d.joists.reset();
  d.fixings.reset();
  d.rates = {spread(8), spread(12)};
  c.job.areas = {d};
  c.job.work = {model::Work::Wash, model::Work::Oil};
  c.job.sanding.clear();
  c.job.loss = {};
  c.job.crew.people = 8;
  return c;
}

model::Resources resourcesFor(const model::JobInputs& c) {
  return estimate::makeResources(c, sampleContent(), estimate::makeEstimate(c, sampleContent()), 0);
}

model::AsLaid asLaid(const model::JobInputs& c) {
  return records::asLaid(c, estimate::makeEstimate(c, sampleContent()), resourcesFor(c).product);
}

std::optional<records::Visit> visitOf(const model::JobInputs& c, const model::Plan& plan) {
  const auto e = estimate::makeEstimate(c, sampleContent());
  return records::visitAfter("a.yaml", c, e, records::actualCoats(c, e), plan);
}

model::Plan planned(const model::JobInputs& c, base::Diagnostics& messages) {
  model::Plan plan =
      schedule::makePlan(c, sampleContent(), estimate::makeEstimate(c, sampleContent()), messages);
  REQUIRE(messages.ok());
  schedule::applyRecords(plan, c, messages);
  return plan;
}

std::string when(const model::Plan& plan, const std::string& name) {
  for (const auto& e : plan.events) {
    if (model::nameOf(e) == name) return base::isoTime(e.at);
  }
  return "never";
}

std::string oneDecimal(const base::Spread& s) {
  const auto tenths = base::divide(base::Wide{s.area.millionths} * 10, base::Wide{s.volume.millionths} * 1000,
                                   base::Round::HalfUp);
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
}

}  // namespace

TEST_CASE("41 L used where 38.5 L were planned show what each coat really drank") {
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12), base::millilitres(24'600), 0),
                laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11), base::millilitres(16'400), 1)};
  const auto e = asLaid(c);
  REQUIRE(e.coats.size() == 2);
  CHECK(*e.coats[0].litres + *e.coats[1].litres == base::litres(41));
  CHECK(oneDecimal(*e.coats[0].rate) == "7.5");   // 185 / 24.6 = 7.52
  CHECK(oneDecimal(*e.coats[1].rate) == "11.3");  // 185 / 16.4 = 11.28
  CHECK(oneDecimal(e.coats[0].plannedRate) == "8.0");
  CHECK(e.coats[0].plannedLitres.millionths == 23'125'000'000);
}

TEST_CASE("litres recorded for several decks together are shared by the plan and add up") {
  model::JobInputs c = sampleCase();
  c.job.done = {laid(0, 1, at("2027-03-20", 8), at("2027-03-20", 9), base::litres(7)),
                laid(1, 1, at("2027-03-20", 8), at("2027-03-20", 9), base::litres(7))};
  const auto e = asLaid(c);
  REQUIRE(e.coats.size() == 2);
  CHECK(e.coats[0].isShared);
  CHECK(*e.coats[0].litres + *e.coats[1].litres == base::litres(7));
  // Landing 40 m2 / 8 = 5 L, Steps 2.16 m2 / 10 = 0.216 L: 7 x 5 / 5.216 = 6.710 L.
  CHECK(e.coats[0].litres->millionths / 1'000'000 == 6710);
  CHECK_FALSE(e.leftByTheBooks);  // second coats are not recorded
}

TEST_CASE("the loss is taken out of a rate that is to plan with") {
  // 10.5 L for 84 m2 are 8 m2/L out of the tin; with 5 % loss 10 L reach the boards: 8.4 m2/L.
  const auto rate = records::withoutLoss({base::squareMetres(84), base::millilitres(10'500)}, percent(5));
  CHECK(oneDecimal(rate) == "8.4");
  CHECK(increased(base::squareMetres(84) / rate, percent(5)) == base::millilitres(10'500));
}

TEST_CASE("what is left is bought and stock less the litres recorded") {
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12), base::litres(23), 0),
                laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11), base::litres(15), 1)};
  c.job.left = {{c.job.product, base::millilitres(2500), 2},
                {c.job.product, base::litres(20), 1, base::litres(1)},
                {"another-oil", base::litres(20), 1}};
  const auto e = asLaid(c);
  CHECK(resourcesFor(c).product.bought.volume == base::litres(40));
  CHECK(e.leftByTheBooks == base::litres(2));  // 40 - 38
  CHECK(e.leftAsCounted == base::litres(6));   // 2 x 2.5 + 1
  c.job.done[0].used = base::litres(26);
  CHECK_FALSE(asLaid(c).leftByTheBooks);  // more than there was
}

TEST_CASE("the real end of the last coat drives every date after it") {
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-03-22", 8), at("2027-03-22", 12)),
                laid(0, 2, at("2027-03-25", 8), at("2027-03-25", 11, 30))};
  base::Diagnostics messages;
  const auto plan = planned(c, messages);
  CHECK(messages.all().empty());
  CHECK(base::isoTime(plan.finished) == "2027-03-25T11:30");
  CHECK(when(plan, "coat_1_start") == "2027-03-22T08:00");
  CHECK(when(plan, "coat_2_end") == "2027-03-25T11:30");
  CHECK(when(plan, "walk") == "2027-03-26T11:30");         // + 24 h
  CHECK(when(plan, "furniture") == "2027-03-28T11:30");    // + 72 h
  CHECK(when(plan, "rugs") == "2027-04-08T11:30");         // + 14 d; summer time ended on 4 April
  CHECK(when(plan, "first_wash") == "2027-04-22T11:30");   // + 28 d
  CHECK(when(plan, "maintenance") == "2028-03-27T07:30");  // 25 March 2028 is a Saturday
  for (std::size_t i = 1; i < plan.events.size(); ++i) CHECK(plan.events[i - 1].at <= plan.events[i].at);
}

TEST_CASE("a wait of whole days ends at the same time of the day, but never sooner") {
  model::JobInputs c = thirstyDeck();
  const auto furnitureAfter = [&](const char* zone, const char* day) {
    c.job.site.timezone = zone;
    const auto date = *base::parseDate(day);
    c.job.start = date - std::chrono::days{7};
    c.job.done = {laid(0, 1, {date - std::chrono::days{1}, 480}, {date - std::chrono::days{1}, 720}),
                  laid(0, 2, {date, 480}, {date, 15 * 60 + 20})};
    base::Diagnostics messages;
    return when(planned(c, messages), "furniture");  // + 72 h
  };
  // New Zealand's clocks go back on 4 April 2027 and forward on 26 September (tz database).
  CHECK(furnitureAfter("Pacific/Auckland", "2027-04-02") == "2027-04-05T15:20");  // 73 true hours
  CHECK(furnitureAfter("Pacific/Auckland", "2027-09-24") == "2027-09-27T16:20");  // 72 true hours
}

TEST_CASE("coats without a record stay as planned") {
  model::JobInputs c = sampleCase();
  base::Diagnostics messages;
  const auto before = planned(c, messages);
  const auto& end = *std::find_if(before.events.begin(), before.events.end(),
                                  [](const auto& e) { return model::nameOf(e) == "coat_1_end"; });
  c.job.done = {laid(0, 1, base::plusMinutes(end.at, -60), end.at)};
  const auto after = planned(c, messages);
  CHECK(messages.all().empty());
  CHECK(after.finished == before.finished);
  CHECK(when(after, "maintenance") == when(before, "maintenance"));
  std::size_t firsts = 0;  // of the deck with a record, and of the steps without
  for (const auto& e : after.events) firsts += model::nameOf(e) == "coat_1_end" ? e.decks.size() : 0;
  CHECK(firsts == 2);
}

TEST_CASE("a coat that is planned before the one below it was finished is told") {
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-05-03", 8), at("2027-05-03", 12))};
  base::Diagnostics messages;
  planned(c, messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all().front()) ==
        "warning: done: coat 2 of 'Landing' is planned before coat 1 was finished\n"
        "  hint: record it as well, or move 'start'\n");
}

TEST_CASE("a coat that is planned too soon after the one recorded below it is told") {
  // Planned for the day after its first coat, which has been laid later that day: 12 h are the least.
  model::JobInputs c = thirstyDeck();
  base::Diagnostics messages;
  const auto before = planned(c, messages);
  const auto start = std::find_if(before.events.begin(), before.events.end(),
                                  [](const auto& e) { return model::nameOf(e) == "coat_2_start"; });
  const auto said = [&](int minutesBefore) {
    const auto end = base::plusMinutes(start->at, -minutesBefore);
    c.job.done = {laid(0, 1, base::plusMinutes(end, -60), end)};
    base::Diagnostics told;
    planned(c, told);
    return told.all().empty() ? "" : base::format(told.all().front());
  };
  CHECK(said(12 * 60).empty());
  CHECK(said(12 * 60 - 1) ==
        "warning: done: coat 2 of 'Landing' is planned before coat 1 has waited the product's least, 12 h\n"
        "  hint: record it as well, or move 'start'\n");
}

TEST_CASE("a coat recorded on boards near the dew point is told, from the air and humidity measured") {
  // WMO-No. 8 (2024), Magnus form: 15 C and 80 % have their dew point at 11.6 C.
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12)),
                laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11))};
  auto& first = c.job.done.front();
  first.air = base::Temperature::whole(15);
  first.humidity = base::Share::whole(80);
  const auto said = [&](int surfaceTenths) {
    first.surface = base::Temperature{surfaceTenths * std::int64_t{100'000}};
    base::Diagnostics messages;
    planned(c, messages);
    std::string all;
    for (const auto& m : messages.all()) all += base::format(m);
    return all;
  };
  CHECK(said(140) ==
        "warning: done: coat 1 of 'Landing' was laid on boards 2.4 K above the dew point, less than 3 K\n"
        "  hint: check what was measured; if it is right, look for dull spots on the next visit\n");
  CHECK(said(145).find(" 2.9 K ") != std::string::npos);
  CHECK(said(146).empty());  // 3.03 K
  first.humidity = {};
  CHECK(said(100).empty());
}

TEST_CASE("a visit knows its date, its batches and the litres of the last coats") {
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12), base::millilitres(24'600), 0),
                laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11), base::millilitres(16'400), 1)};
  c.job.done[0].batches = {"A-1", "A-2"};
  c.job.done[1].batches = {"A-2"};
  base::Diagnostics messages;
  const auto visit = visitOf(c, planned(c, messages));
  REQUIRE(visit);
  CHECK(base::isoDate(visit->due) == "2028-03-20");  // 19 March 2028 is a Sunday
  CHECK(visit->litres == base::millilitres(16'400));
  CHECK(visit->isRecorded);
  CHECK(visit->batches == std::vector<std::string>{"A-1", "A-2"});
  c.job.done.pop_back();
  const auto half = visitOf(c, planned(c, messages));
  CHECK_FALSE(half->isRecorded);
  CHECK(half->litres.millionths == 15'416'666'667);  // 185 / 12, as planned
}

TEST_CASE(
    "of a job without records the day it was done tells the next visit; one that is not done has its start") {
  model::JobInputs c = thirstyDeck();
  base::Diagnostics messages;
  model::Plan plan = planned(c, messages);
  c.job.doneOn = *base::parseDate("2027-04-22");
  schedule::applyDayDone(plan, c);
  const auto visit = visitOf(c, plan);
  REQUIRE(visit);
  CHECK(visit->progress == model::Progress::Done);
  CHECK(base::isoDate(visit->lastCoat) == "2027-04-22");
  CHECK(base::isoDate(visit->due) == "2028-04-24");  // 22 April 2028 is a Saturday
  CHECK_FALSE(visit->isRecorded);
  c.job.doneOn.reset();
  c.job.accepted = c.job.quoted;
  const auto booked = visitOf(c, {});
  CHECK(booked->progress == model::Progress::Accepted);
  CHECK(booked->due == c.job.start);
  CHECK(booked->litres.millionths == 23'125'000'000 + 15'416'666'667);  // 185 / 8 + 185 / 12, both coats
  // A wash alone is booked all the same, but nothing falls due after it.
  c.job.work = {model::Work::Wash};
  CHECK(visitOf(c, {})->litres.isZero());
  c.job.doneOn = c.job.start;
  CHECK_FALSE(visitOf(c, {}));
}

TEST_CASE("a date that falls into the hour that comes twice is told as the end of that hour") {
  // New Zealand puts its clocks back at 03:00 on 5 April 2026 (tz database): 02:00 comes twice. 327.75 h
  // after 11:15 on 22 March it is 02:00 for the second time.
  model::Product product = fixtures::sampleProduct();
  product.times.firstWash = base::Hours{327'750'000};
  model::JobInputs c = thirstyDeck();
  c.product = &product;
  c.job.site.timezone = "Pacific/Auckland";
  c.job.start = *base::parseDate("2026-03-16");
  c.job.done = {laid(0, 1, at("2026-03-20", 8), at("2026-03-20", 12)),
                laid(0, 2, at("2026-03-22", 8), base::plusMinutes(at("2026-03-22", 11), 15))};
  base::Diagnostics messages;
  CHECK(when(planned(c, messages), "first_wash") == "2026-04-05T03:00");
  product.times.firstWash = base::Hours{326'750'000};
  CHECK(when(planned(c, messages), "first_wash") == "2026-04-05T02:00");
}

TEST_CASE("a coat begun on one day and finished on another is one coat") {
  model::JobInputs c = thirstyDeck();  // 23.125 L planned for the first coat
  c.job.done = {laid(0, 1, at("2027-03-18", 13), at("2027-03-18", 16), base::litres(15), 0),
                laid(0, 1, at("2027-03-19", 8), at("2027-03-19", 10), base::litres(9), 1),
                laid(0, 2, at("2027-03-22", 8), at("2027-03-22", 11), base::litres(16), 2)};
  auto e = asLaid(c);
  REQUIRE(e.coats.size() == 2);  // as many as there are coats: all is recorded
  CHECK(e.coats[0].litres == base::litres(24));
  CHECK(e.coats[0].records == std::vector<std::size_t>{0, 1});
  CHECK_FALSE(e.coats[0].isShared);
  base::Diagnostics messages;
  const auto plan = planned(c, messages);
  CHECK(messages.all().empty());
  CHECK(when(plan, "coat_1_start") == "2027-03-18T13:00");
  CHECK(when(plan, "coat_1_end") == "2027-03-19T10:00");
  CHECK(std::count_if(plan.events.begin(), plan.events.end(),
                      [](const auto& event) { return model::nameOf(event).starts_with("coat_1"); }) == 2);
  c.job.done[1].used = {};  // of one part nobody knows the litres: of the coat neither
  e = asLaid(c);
  CHECK_FALSE(e.coats[0].litres);
  CHECK(e.coats[1].litres == base::litres(16));
}

TEST_CASE("litres far from the plan, and more than there was, are told") {
  model::JobInputs c = thirstyDeck();  // 23.125 L and 15.417 L; 40 L bought
  const auto said = [&](int first, int second) {
    c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12), base::litres(first), 0),
                  laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11), base::litres(second), 1)};
    base::Diagnostics messages;
    records::warnOfUse(c, asLaid(c), resourcesFor(c).product, messages);
    std::string all;
    for (const auto& m : messages.all()) all += base::format(m);
    return all;
  };
  CHECK(said(24, 16).empty());
  CHECK(said(12, 8).empty());
  const std::string check =
      "  hint: check the figure: what came out of the tins for this coat, no other coat and no tin left "
      "over\n";
  CHECK(said(11, 16) == "warning: done[1].used: 11 L is less than half of the 23.13 L planned\n" + check);
  CHECK(said(24, 7) == "warning: done[2].used: 7 L is less than half of the 15.42 L planned\n" + check);
  const std::string tins =
      "  hint: check the figures under 'used'; the tins bought are those of the order list\n";
  CHECK(said(9, 32) == "warning: done[1].used: 9 L is less than half of the 23.13 L planned\n" + check +
                           "warning: done[2].used: 32 L is more than twice the 15.42 L planned\n" + check +
                           "warning: done: 41 L used is more than the 40 L bought and in stock\n" + tins);
  c.job.inStock = {{c.job.product, base::millilitres(2500), 1}};
  CHECK(said(22, 19).empty());  // 41 L, and one tin in the shed
}

TEST_CASE("what was measured outside the product's limits is told") {
  model::JobInputs c = thirstyDeck();  // 8 to 32 C, boards to 35 C, 85 % humidity, 16 % moisture
  c.job.done = {laid(0, 1, at("2027-03-18", 8), at("2027-03-18", 12)),
                laid(0, 2, at("2027-03-19", 8), at("2027-03-19", 11))};
  auto& first = c.job.done.front();
  const auto said = [&] {
    base::Diagnostics messages;
    planned(c, messages);
    std::string all;
    for (const auto& m : messages.all()) all += base::format(m);
    return all;
  };
  const std::string hint =
      "  hint: check what was measured; if it is right, look at the coat on the next visit\n";
  first.air = base::Temperature::whole(-5);
  first.surface = base::Temperature::whole(70);
  first.humidity = base::Share::whole(86);
  first.moisture = base::Share::whole(60);
  CHECK(said() ==
        "warning: done[1].air: air of -5 C, and the product is not laid below 8 C\n" + hint +
            "warning: done[1].surface: boards of 70 C, and the product is not laid above 35 C\n" + hint +
            "warning: done[1].humidity: humidity of 86 %, and the product is not laid above 85 %\n" + hint +
            "warning: done[1].moisture: wood of 60 % moisture, and the product is not laid above 16 %\n" +
            hint);
  first.air = base::Temperature::whole(33);
  first.surface = base::Temperature::whole(35);
  first.humidity = base::Share::whole(85);
  first.moisture = base::Share::whole(16);
  CHECK(said() == "warning: done[1].air: air of 33 C, and the product is not laid above 32 C\n" + hint);
  first.air = base::Temperature::whole(32);
  CHECK(said().empty());
}

TEST_CASE("a recorded time that the clocks skip is refused") {
  // New Zealand puts its clocks forward at 02:00 on 26 September 2027 (tz database).
  model::JobInputs c = thirstyDeck();
  c.job.done = {laid(0, 1, at("2027-09-26", 1, 59), at("2027-09-26", 2, 30))};
  c.job.done[0].toPos = {"a.yaml", 30, 40};
  base::Diagnostics messages;
  schedule::checkRecordedTimes(c.job, messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all().front()) ==
        "a.yaml:30:40: error: done[1].to: the clocks at the site skip 02:30 on 2027-09-26\n"
        "  hint: they go forward that night; write the time as the clock showed it\n");
  c.job.done[0].end = at("2027-09-26", 3);
  base::Diagnostics none;
  schedule::checkRecordedTimes(c.job, none);
  CHECK(none.all().empty());
}
