#include "app/report/figures_json.h"

#include "app/report/exposure_json.h"
#include "app/report/price_rows.h"
#include "records/actual.h"

#include <nlohmann/json.hpp>

namespace app {
namespace {

using nlohmann::ordered_json;

// JSON knows one kind of number; the exact values become doubles only here, on their way out.
double millionths(std::int64_t n) { return static_cast<double>(n) / 1e6; }
double squareMetres(base::Area a) { return static_cast<double>(a.millionths) / 1e12; }
double metres(base::Length l) { return static_cast<double>(l.millionths) / 1e9; }
double litres(base::Volume v) { return static_cast<double>(v.millionths) / 1e9; }
double spread(const base::Spread& s) { return squareMetres(s.area) / litres(s.volume); }

std::string deckName(const model::JobResult& x, std::size_t deck) { return x.c.job.areas[deck].name; }

ordered_json tins(const model::TinSet& set, int digits) {
  auto list = ordered_json::array();
  for (const auto& t : set.tins)
    list.push_back(
        {{"size_l", litres(t.tin.size)}, {"count", t.count}, {"price", plainMoney(t.tin.price, digits)}});
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
                 {"margin_pct", millionths(p.marginReached.millionths)},
                 {"currency", x.c.region->currency}};
  auto lines = ordered_json::array();
  const auto tax = millionths(x.c.job.price.tax.value_or(x.c.region->tax.rate).millionths);
  for (const auto& row : priceRows(x)) {
    lines.push_back({{"kind", row.kind},
                     {"text", row.text},
                     {"area", row.area ? ordered_json(*row.area) : ordered_json(nullptr)},
                     {"quantity", millionths(row.quantity.millionths)},
                     {"unit", row.unit},
                     {"rate", plainMoney(row.rate, digits)},
                     {"amount", plainMoney(row.amount, digits)},
                     {"tax_pct", tax}});
  }
  j["lines"] = lines;
  auto stages = ordered_json::array();
  for (const auto& s : p.stages)
    stages.push_back({{"share_pct", millionths(s.share.millionths)},
                      {"when", s.when},
                      {"amount", plainMoney(s.amount, digits)}});
  j["stages"] = stages;
  auto options = ordered_json::array();
  for (std::size_t i = 0; i < p.options.size(); ++i)
    options.push_back({{"text", x.c.job.price.options[i].text}, {"price", plainMoney(p.options[i], digits)}});
  j["options"] = options;
  return j;
}

ordered_json actual(const model::JobResult& x) {
  auto list = ordered_json::array();
  for (const auto& coat : x.laid.coats) {
    const auto& first = x.c.job.done[coat.records.front()];
    const auto& last = x.c.job.done[coat.records.back()];
    std::vector<std::string> batches;
    for (const auto record : coat.records) records::addBatches(batches, x.c.job.done[record].batches);
    list.push_back({{"area", deckName(x, coat.deck)},
                    {"coat", coat.coat},
                    {"start", base::isoTime(first.start)},
                    {"end", base::isoTime(last.end)},
                    {"litres", coat.litres ? ordered_json(litres(*coat.litres)) : ordered_json(nullptr)},
                    {"rate", coat.rate ? ordered_json(spread(*coat.rate)) : ordered_json(nullptr)},
                    {"shared", coat.isShared},
                    {"planned_litres", litres(coat.plannedLitres)},
                    {"planned_rate", spread(coat.plannedRate)},
                    {"batches", batches}});
  }
  return list;
}

}  // namespace

std::string isoWithOffset(base::LocalTime t, int offset) {
  const std::string sign = offset < 0 ? "-" : "+";
  return base::isoTime(t) + ":00" + sign + base::isoClock(offset < 0 ? -offset : offset);
}

std::string figuresJson(const model::JobResult& x) {
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
                          {"area_m2", squareMetres(m.area)},
                          {"perimeter_m", metres(m.perimeter)},
                          {"wetted_m2", squareMetres(m.wetted)},
                          {"board_metres", metres(m.boardMetres)},
                          {"boards", m.boards},
                          {"fixings", m.fixings},
                          {"cut_in_m", metres(m.cutIn)}});
  }
  j["coats"] = ordered_json::array();
  for (const auto& c : e.coats) {
    j["coats"].push_back({{"area", deckName(x, c.deck)},
                          {"coat", c.coat},
                          {"rate_m2_per_l", spread(c.rate)},
                          {"litres", litres(c.litres)},
                          {"from", c.rateFrom}});
  }
  const auto& r = x.resources;
  const auto& n = r.product;
  j["litres"] = {{"low", litres(n.low)},       {"likely", litres(n.likely)},
                 {"high", litres(n.high)},     {"to_buy", litres(n.toBuy)},
                 {"wanted", litres(n.wanted)}, {"from_stock", litres(n.fromStock)}};
  j["tins"] = tins(n.bought, digits);
  j["tins_cost"] = plainMoney(n.bought.cost, digits);
  j["left_over_l"] = litres(n.leftOver);
  j["actual"] = actual(x);
  if (x.laid.leftByTheBooks) j["left_by_the_books_l"] = litres(*x.laid.leftByTheBooks);
  if (x.laid.leftAsCounted) j["left_as_counted_l"] = litres(*x.laid.leftAsCounted);
  j["labour"] = ordered_json::array();
  for (const auto& l : r.labour) {
    ordered_json line{{"task", l.task},
                      {"hours", millionths(l.hours.millionths)},
                      {"area", l.deck ? ordered_json(deckName(x, *l.deck)) : ordered_json(nullptr)}};
    if (l.pass > 0) line["pass"] = l.pass;
    j["labour"].push_back(line);
  }
  j["labour_hours"] = millionths(r.labourHours.millionths);
  j["crew_days"] = x.plan.days.size();
  j["price"] = price(x, digits);
  j["timing"] = ordered_json::array();
  for (const auto& event : x.plan.events) {
    ordered_json item{{"event", event.name}, {"at", isoWithOffset(event.at, event.utcOffsetMinutes)}};
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
  return j.dump(2) + "\n";
}

}  // namespace app
