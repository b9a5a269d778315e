// A small made-up trade for tests: round figures, so that every expected number can be worked out beside it.
#pragma once

#include "model/job.h"

namespace fixtures {

constexpr base::Money cents(std::int64_t n) { return {n}; }
constexpr base::Share percent(std::int64_t n) { return base::Share::whole(n); }
constexpr base::Count pieces(std::int64_t n) { return base::Count::whole(n); }
constexpr base::Hours minutes(std::int64_t n) { return {n * 1'000'000 / 60}; }
/// A spreading rate in square metres a litre.
constexpr base::Spread spread(std::int64_t squareMetres) {
  return {base::squareMetres(squareMetres), base::litres(1)};
}

inline model::Product sampleProduct() {
  model::Product p;
  p.id = "sample-oil";
  p.name = "sample oil";
  p.isDryingOil = true;
  p.tins["nz"] = {{base::millilitres(750), cents(46'00)},
                  {base::millilitres(2500), cents(118'00)},
                  {base::litres(20), cents(760'00)}};
  p.rates = {{model::Uptake::Thirsty, {spread(6), spread(9)}},
             {model::Uptake::Open, {spread(8), spread(12)}},
             {model::Uptake::Medium, {spread(10), spread(15)}},
             {model::Uptake::Tight, {spread(12), spread(18)}}};
  p.lowUse = percent(85);
  p.highUse = percent(120);
  const auto hours = [](std::int64_t n) { return base::Hours::whole(n); };
  p.times = {hours(6),  hours(12),      hours(12),      hours(24), hours(72), hours(24),
             hours(72), hours(14 * 24), hours(28 * 24), 12,        hours(1)};
  p.limits = {base::Temperature::whole(8), base::Temperature::whole(32), base::Temperature::whole(35),
              percent(85), percent(16)};
  p.openTime = minutes(20);
  p.vocGramsPerLitre = 420;
  p.remark = "invented";
  return p;
}

inline model::Task sampleTask(const char* id, std::optional<model::Work> work, model::Measure measure,
                              std::int64_t ratePerHour) {
  model::Task t;
  t.id = t.name = id;
  t.work = work;
  t.measure = measure;
  t.ratePerHour = pieces(ratePerHour);
  return t;
}

inline std::vector<model::Task> sampleTasks() {
  using model::Measure;
  using model::State;
  using model::Work;
  model::Task setUp = sampleTask("set-up", std::nullopt, Measure::Day, 0);
  setUp.hoursEach = minutes(30);
  model::Task clear = sampleTask("clear", std::nullopt, Measure::Job, 0);
  clear.hoursEach = minutes(60);
  clear.uses = {{"film", base::Count{500'000}}};  // half a roll a job
  model::Task mask = sampleTask("mask", std::nullopt, Measure::CutIn, 20);
  model::Task wash = sampleTask("wash", Work::Wash, Measure::Surface, 30);
  wash.timeByState = {{State::Weathered, percent(120)}};
  wash.dryAfter = base::Hours::whole(36);
  wash.uses = {{"cleaner", base::Count{50'000}}};  // 0.05 L/m2
  model::Task fix = sampleTask("fix", Work::Fix, Measure::Fixings, 100);
  model::Task sand = sampleTask("sand", Work::Sand, Measure::Surface, 10);
  sand.isPerPass = true;
  sand.rateByGrit = {{60, pieces(12)}};
  sand.timeByState = {{State::Weathered, percent(130)}};
  sand.uses = {{"sheet", base::Count{100'000}}};  // one for 10 m2 and pass
  model::Task cutIn = sampleTask("cut-in", Work::Oil, Measure::CutIn, 40);
  cutIn.isPerCoat = true;
  model::Task oil = sampleTask("oil", Work::Oil, Measure::Wetted, 20);
  oil.isPerCoat = true;
  model::Task packDown = sampleTask("pack-down", std::nullopt, Measure::Day, 0);
  packDown.hoursEach = minutes(30);
  return {setUp, clear, mask, wash, fix, sand, cutIn, oil, packDown};
}

inline model::Region sampleRegion() {
  model::Region r;
  r.id = "nz";
  r.name = "New Zealand";
  r.language = "en-NZ";
  r.currency = "NZD";
  r.currencyName = "New Zealand dollars";
  r.tax = {"GST", percent(15), base::Round::HalfDown, false, "from memory"};
  r.numbers.currencyBefore = "$";
  r.emergencyNumber = "111";
  r.powerCutout = "RCD";
  return r;
}

/// Lives as long as the program: cases point into it.
inline const model::Content& sampleContent() {
  static const model::Content content = [] {
    model::Content c;
    c.products["sample-oil"] = sampleProduct();
    using model::State;
    using model::Uptake;
    c.timbers["hardwood"] = {"hardwood",
                             "old hardwood",
                             true,
                             false,
                             830,
                             {{State::New, Uptake::Tight},
                              {State::Weathered, Uptake::Open},
                              {State::Sanded, Uptake::Medium},
                              {State::Oiled, Uptake::Tight},
                              {State::Film, Uptake::Tight}}};
    c.timbers["softwood"] = {"softwood",
                             "treated softwood",
                             false,
                             true,
                             500,
                             {{State::New, Uptake::Medium},
                              {State::Weathered, Uptake::Thirsty},
                              {State::Sanded, Uptake::Open},
                              {State::Oiled, Uptake::Medium},
                              {State::Film, Uptake::Tight}}};
    c.tasks = sampleTasks();
    c.consumables["film"] = {"film", "masking film", "roll", {{"nz", cents(18'00)}}, true};
    c.consumables["cleaner"] = {"cleaner", "deck cleaner", "L", {{"nz", cents(14'50)}}, false};
    c.consumables["sheet"] = {"sheet", "abrasive sheet", "sheet", {{"nz", cents(2'20)}}, true};
    c.regions["nz"] = sampleRegion();
    return c;
  }();
  return content;
}

/// 10 m x 4 m of weathered hardwood, boards 95 mm + 5 mm along the long side, joists every 400 mm.
inline model::Deck sampleDeck() {
  model::Deck d;
  d.name = "Landing";
  d.shape = model::Rectangle{base::metres(10), base::metres(4)};
  d.boards = model::Boards{base::millimetres(95), base::millimetres(5), base::millimetres(20)};
  d.joists = base::millimetres(400);
  d.fixings = model::Fixings{"nails", 2};
  d.timber = "hardwood";
  d.state = model::State::Weathered;
  d.coats = 2;
  return d;
}

/// Four steps of 1.2 m x (280 + 170) mm: 2.16 m2.
inline model::Deck sampleSteps() {
  model::Deck d;
  d.name = "Steps";
  d.shape = model::Stairs{4, base::millimetres(1200), base::millimetres(280), base::millimetres(170)};
  d.timber = "hardwood";
  d.state = model::State::Sanded;
  d.coats = 2;
  return d;
}

/// The deck and the steps washed, fixed, sanded and oiled by two people, starting on a Tuesday.
inline model::JobInputs sampleCase(const model::Content& content = sampleContent()) {
  model::JobInputs c;
  model::Job& j = c.job;
  j.ref = "T-1";
  j.quoted = *base::parseDate("2027-03-02");
  j.customer.name = "Inga Thorley";
  j.site.region = "nz";
  j.site.latitudeMicro = -44'700'000;
  j.site.longitudeMicro = 169'130'000;
  j.site.timezone = "Pacific/Auckland";
  j.start = *base::parseDate("2027-03-16");
  j.product = "sample-oil";
  j.colour = "light walnut";
  j.loss = percent(5);
  j.areas = {sampleDeck(), sampleSteps()};
  j.work = {model::Work::Wash, model::Work::Fix, model::Work::Sand, model::Work::Oil};
  j.sanding = {60, 80};
  j.crew.people = 2;
  j.price.deposit = percent(10);
  c.product = &content.products.at(j.product);
  c.region = &content.regions.at(j.site.region);
  c.firm.name = "Tideboard Timber Care";
  c.rates = {cents(40'00), cents(95'00), cents(60'00), percent(12), percent(4), cents(78'00), percent(25)};
  return c;
}

}  // namespace fixtures
