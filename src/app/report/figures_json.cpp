#include "app/report/figures_json.h"

#include "app/report/exposure_json.h"
#include "app/report/price_rows.h"
#include "base/units.h"
#include "model/names.h"
#include "records/actual.h"

#include <nlohmann/json.hpp>

namespace app {
namespace {

using nlohmann::ordered_json;

// JSON knows one kind of number; the exact values become doubles only here, on their way out.
double spread(const base::Spread& s) { return base::asSquareMetres(s.area) / base::asLitres(s.volume); }

std::string deckName(const model::JobResult& x, std::size_t deck) { return x.c.job.areas[deck].name; }

ordered_json tins(const model::TinSet& set, int digits) {
  auto list = ordered_json::array();
  for (const auto& t : set.tins)
    list.push_back({{"size_l", base::asLitres(t.tin.size)},
                    {"count", t.count},
                    {"price", plainMoney(t.tin.price, digits)}});
  return list;
}

ordered_json shifts(const model::JobResult& x) {
  auto list = ordered_json::array();
  for (const auto& s : x.plan.shifts) {
    ordered_json shift{{"task", s.task},
                       {"area", s.deck ? ordered_json(deckName(x, *s.deck)) : ordered_json(nullptr)}};
    if (s.pass > 0) shift["pass"] = s.pass;
    shift["start"] = base::isoTime(s.start);
    shift["end"] = base::isoTime(s.end);
    list.push_back(shift);
  }
  return list;
}

ordered_json price(const model::JobResult& x, int digits) {
  const auto& p = x.price;
  ordered_json j{{"net", plainMoney(p.net, digits)},
                 {"tax", plainMoney(p.tax, digits)},
                 {"total", plainMoney(p.total, digits)},
                 {"deposit", plainMoney(p.deposit, digits)},
                 {"subtotal", plainMoney(p.subtotal, digits)},
                 {"discount", plainMoney(p.discount, digits)},
                 {"cost", plainMoney(p.cost, digits)},
                 {"margin_pct", base::floating(p.marginReached)},
                 {"currency", x.c.region->currency}};
  auto lines = ordered_json::array();
  const auto tax = base::floating(x.c.job.price.tax.value_or(x.c.region->tax.rate));
  for (const auto& row : priceRows(x)) {
    lines.push_back({{"kind", row.kind},
                     {"text", row.text},
                     {"area", row.area ? ordered_json(*row.area) : ordered_json(nullptr)},
                     {"quantity", base::floating(row.quantity)},
                     {"unit", row.unit},
                     {"rate", rateOf(row, digits)},
                     {"amount", plainMoney(row.amount, digits)},
                     {"tax_pct", tax}});
  }
  j["lines"] = lines;
  auto stages = ordered_json::array();
  for (const auto& s : p.stages)
    stages.push_back(
        {{"share_pct", base::floating(s.share)}, {"when", s.when}, {"amount", plainMoney(s.amount, digits)}});
  j["stages"] = stages;
  auto options = ordered_json::array();
  for (std::size_t i = 0; i < p.options.size(); ++i)
    options.push_back({{"text", x.c.job.price.options[i].text}, {"price", plainMoney(p.options[i], digits)}});
  j["options"] = options;
  return j;
}

const char* nameOf(model::TenYears::Kind kind) {
  switch (kind) {
    case model::TenYears::Kind::Today:
      return "today";
    case model::TenYears::Kind::Visit:
      return "visit";
    case model::TenYears::Kind::Sanding:
      return "sanding";
  }
  return "";
}

ordered_json tenYears(const model::JobResult& x, int digits) {
  const auto& t = *x.tenYears;
  const auto& basis = *x.c.firm.tenYears;
  auto outlays = ordered_json::array();
  for (const auto& o : t.outlays)
    outlays.push_back({{"kind", nameOf(o.kind)}, {"year", o.year}, {"amount", plainMoney(o.amount, digits)}});
  return {{"outlays", outlays},
          {"sum", plainMoney(t.sum, digits)},
          {"present_value", plainMoney(t.presentValue, digits)},
          {"per_year", plainMoney(t.perYear, digits)},
          {"discount_rate_pct", base::floating(basis.discountRate)},
          {"price_rise_pct", base::floating(basis.priceRise)}};
}

ordered_json actual(const model::JobResult& x) {
  auto list = ordered_json::array();
  for (const auto& coat : x.laid.coats) {
    const auto& first = x.c.job.done[coat.records.front()];
    const auto& last = x.c.job.done[coat.records.back()];
    std::vector<std::string> batches;
    for (const auto record : coat.records) records::addBatches(batches, x.c.job.done[record].batches);
    list.push_back(
        {{"area", deckName(x, coat.deck)},
         {"coat", coat.coat},
         {"start", base::isoTime(first.start)},
         {"end", base::isoTime(last.end)},
         {"litres", coat.litres ? ordered_json(base::asLitres(*coat.litres)) : ordered_json(nullptr)},
         {"rate", coat.rate ? ordered_json(spread(*coat.rate)) : ordered_json(nullptr)},
         {"shared", coat.isShared},
         {"planned_litres", base::asLitres(coat.plannedLitres)},
         {"planned_rate", spread(coat.plannedRate)},
         {"batches", batches}});
  }
  return list;
}

ordered_json enough(const model::JobResult& x, int digits) {
  const auto& n = x.resources.product;
  const auto& more = x.enough.oneMore;
  return {{"have_l", base::asLitres(n.bought.volume + n.fromStock)},
          {"more_pct", base::floating(x.enough.chanceOfMore)},
          {"one_more",
           {{"size_l", base::asLitres(more.size)},
            {"price", plainMoney(more.price, digits)},
            {"in_shed", x.enough.isInShed}}},
          {"more_with_one_more_pct", base::floating(x.enough.chanceWithOneMore)}};
}

ordered_json figures(const model::JobResult& x) {
  const auto& e = x.estimate;
  const int digits = x.c.region->currencyDigits;
  ordered_json j;
  j["ref"] = x.c.job.ref;
  const auto& customer = x.c.job.customer;
  j["customer"] = {{"name", customer.name},
                   {"address", customer.address},
                   {"phone", customer.phone},
                   {"email", customer.email}};
  j["areas"] = ordered_json::array();
  for (std::size_t i = 0; i < e.decks.size(); ++i) {
    const auto& m = e.decks[i];
    j["areas"].push_back({{"name", deckName(x, i)},
                          {"area_m2", base::asSquareMetres(m.area)},
                          {"perimeter_m", base::asMetres(m.perimeter)},
                          {"wetted_m2", base::asSquareMetres(m.wetted)},
                          {"board_metres", base::asMetres(m.boardMetres)},
                          {"boards", m.boards},
                          {"fixings", m.fixings},
                          {"cut_in_m", base::asMetres(m.cutIn)}});
  }
  j["coats"] = ordered_json::array();
  for (const auto& c : e.coats) {
    j["coats"].push_back({{"area", deckName(x, c.deck)},
                          {"coat", c.coat},
                          {"rate_m2_per_l", spread(c.rate)},
                          {"litres", base::asLitres(c.litres)},
                          {"from", c.rateFrom}});
  }
  const auto& r = x.resources;
  const auto& n = r.product;
  j["litres"] = {{"low", base::asLitres(n.low)},       {"likely", base::asLitres(n.likely)},
                 {"high", base::asLitres(n.high)},     {"to_buy", base::asLitres(n.toBuy)},
                 {"wanted", base::asLitres(n.wanted)}, {"from_stock", base::asLitres(n.fromStock)}};
  if (!e.coats.empty()) j["enough"] = enough(x, digits);
  j["tins"] = tins(n.bought, digits);
  j["tins_cost"] = plainMoney(n.bought.cost, digits);
  j["left_over_l"] = base::asLitres(n.leftOver);
  j["actual"] = actual(x);
  if (x.laid.leftByTheBooks) j["left_by_the_books_l"] = base::asLitres(*x.laid.leftByTheBooks);
  if (x.laid.leftAsCounted) j["left_as_counted_l"] = base::asLitres(*x.laid.leftAsCounted);
  j["labour"] = ordered_json::array();
  for (const auto& l : r.labour) {
    ordered_json line{{"task", l.task},
                      {"hours", base::floating(l.hours)},
                      {"area", l.deck ? ordered_json(deckName(x, *l.deck)) : ordered_json(nullptr)}};
    if (l.pass > 0) line["pass"] = l.pass;
    j["labour"].push_back(line);
  }
  j["labour_hours"] = base::floating(r.labourHours);
  j["crew_days"] = x.plan.days.size();
  j["price"] = price(x, digits);
  if (x.tenYears) j["ten_years"] = tenYears(x, digits);
  j["timing"] = ordered_json::array();
  for (const auto& event : x.plan.events) {
    ordered_json item{{"event", model::nameOf(event)},
                      {"at", isoWithOffset(event.at, event.utcOffsetMinutes)}};
    if (!event.decks.empty()) {
      item["areas"] = ordered_json::array();
      for (const auto d : event.decks) item["areas"].push_back(deckName(x, d));
    }
    j["timing"].push_back(item);
  }
  j["calendar"] = shifts(x);
  j["exposure"] = exposureJson(x);
  j["hazards"] = ordered_json::array();
  for (const auto& h : x.hazards)
    j["hazards"].push_back({{"id", h.id}, {"applies", h.applies}, {"why", h.why}});
  return j;
}

}  // namespace

std::string isoWithOffset(base::LocalTime t, int offset) {
  const std::string sign = offset < 0 ? "-" : "+";
  return base::isoTime(t) + ":00" + sign + base::isoClock(offset < 0 ? -offset : offset);
}

std::string figuresJson(const model::JobResult& x) {
  ordered_json j = figures(x);
  const auto& job = x.c.job;
  for (std::size_t i = 0; i < job.choices.size(); ++i)
    j["choices"].push_back({{"name", job.choices[i].name},
                            {"looks", job.choices[i].looks},
                            {"left_out", job.choices[i].leftOut},
                            {"counts", i == job.choice},
                            {"chosen", job.isChosen && i == job.choice},
                            {"figures", figures(model::choiceOf(x, i))}});
  return j.dump(2) + "\n";
}

}  // namespace app
