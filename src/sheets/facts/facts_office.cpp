// Facts for the order list and the office sheet: everything, costs included.
#include "sheets/facts/facts_office.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_price.h"
#include "sheets/facts/facts_quote.h"
#include "sheets/facts/facts_records.h"
#include "sheets/words/addresses.h"

#include <algorithm>

namespace sheets {
namespace {

std::string deckName(const model::JobResult& x, const std::optional<std::size_t>& deck) {
  return deck ? deckLetter(*deck) + " " + x.c.job.areas[*deck].name : "";
}

/// From arrival to home, breaks and waits included, where that is more than the work; and what is left of the
/// net price if all of it is paid.
void addPaidHours(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& cost = x.plan.cost;
  const std::int64_t hours = base::mulDiv(cost.personMinutes, 1'000'000, 60, base::Round::HalfUp);
  const base::Money left = x.price.net - x.price.cost - (cost.paidHours - x.price.labourCost);
  const std::int64_t perMille =
      x.price.net.minor > 0 ? base::mulDiv(left.minor, 1000, x.price.net.minor, base::Round::HalfUp) : 0;
  f.emplace_back("paid", Facts{{"is_more", Fact::yes(cost.paidHours > x.price.labourCost)},
                               {"hours", w.number({hours}, 1) + "\u00A0" + w("units.hour")},
                               {"margin", w.share({perMille * 100'000})}});
}

void addCosts(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& p = x.price;
  const base::Money direct = p.labourCost + p.productCost + p.consumableCost + p.otherCost;
  f.emplace_back(
      "costs",
      Facts{
          {"labour", w.money(p.labourCost)},
          {"labour_rate", w.money(x.c.rates.labourCostPerHour)},
          {"product", w.money(p.productCost)},
          {"consumables", w.money(p.consumableCost)},
          {"other", w.money(p.otherCost)},
          {"overhead", w.money(p.overheadCost)},
          {"overhead_share", w.share(x.c.rates.overhead)},
          {"contingency", w.money(p.contingencyCost)},
          {"contingency_share", w.share(x.c.rates.contingency)},
          {"direct", w.money(direct)},
          {"cost", w.money(p.cost)},
          {"left_sign", w.signedMoney(p.net - p.cost)},
          {"margin_wanted", w.share(x.c.job.price.margin.value_or(x.c.rates.margin))},
          {"margin_reached",
           w.share({base::mulDiv(p.marginReached.millionths, 1, 100'000, base::Round::HalfUp) * 100'000})}});
  addPaidHours(f, x, w);
}

/// '2 × 2.5 L'
std::string countedTins(std::int64_t count, base::Volume size, const Formatter& w) {
  return std::to_string(count) + "\u00A0×\u00A0" + w.tinSize(size);
}

/// What is bought whole is printed up to the next tenth, from ten on to the next whole one, so that nobody
/// reads 2 beside the three that 2.02 take.
std::string usedWords(const model::ConsumableLine& line, const model::Consumable& item, const Formatter& w) {
  if (!item.boughtWhole) return w.number(line.used, 1);
  const std::int64_t step = line.used < base::Count::whole(10) ? 100'000 : 1'000'000;
  return w.briefNumber({base::divide(line.used.millionths, step, base::Round::Up) * step});
}

/// All in capitals: nobody takes a tin of another colour in a hurry.
std::string capitals(const std::string& words) {
  std::string s;
  for (std::size_t i = 0; i < words.size();) {
    std::size_t end = i + 1;
    while (end < words.size() && (static_cast<unsigned char>(words[end]) & 0xC0) == 0x80) ++end;
    s += capitalised(words.substr(i, end - i));
    i = end;
  }
  return s;
}

/// Of suppliers: no weekend, no public holiday of the place, and nobody of ours is off to take what comes.
bool isWorkingDay(const model::JobResult& x, base::Date day) {
  const auto weekday = std::chrono::weekday{day};
  const auto& off = x.c.job.crew.off;
  if (weekday == std::chrono::Saturday || weekday == std::chrono::Sunday) return false;
  if (std::find(off.begin(), off.end(), day) != off.end()) return false;
  const int year = static_cast<int>(std::chrono::year_month_day{day}.year());
  const auto holidays =
      base::holidaysOf({x.c.region->holidays, x.c.region->states}, x.c.job.site.state, year);
  return std::none_of(holidays.begin(), holidays.end(), [&](const auto& h) { return h.date == day; });
}

base::Date workingDaysBefore(const model::JobResult& x, base::Date day, int count) {
  while (count > 0) {
    day -= std::chrono::days{1};
    if (isWorkingDay(x, day)) --count;
  }
  return day;
}

/// In the yard on the working day before the truck is loaded, which is the one before the work begins.
void addDelivery(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& d = x.c.firm.delivery;
  const auto& to = d.to.empty() ? x.c.firm.address : d.to;
  const base::Date start = x.plan.days.empty() ? x.c.job.start : x.plan.days.front().date;
  const base::Date loading = workingDaysBefore(x, start, 1), yard = workingDaysBefore(x, loading, 1),
                   order = workingDaysBefore(x, yard, d.workingDays);
  f.emplace_back("delivery", Facts{{"order_by", w.shortDate(order)},
                                   {"too_late", Fact::yes(order < x.c.job.quoted)},
                                   {"takes", w.counted("orders.takes", d.workingDays)},
                                   {"yard_by", w.shortDate(yard)},
                                   {"loading", w.shortDate(loading)},
                                   {"place", to.empty() ? x.c.firm.name : to.back()},
                                   {"to", oneLine(to, w)},
                                   {"hours", d.hours}});
}

void addOrders(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& need = x.resources.product;
  const auto& colour = x.c.job.colour;
  FactList tins, shed;
  for (const auto& t : need.bought.tins)
    tins.push_back({{"name", x.c.product->name},
                    {"colour", colour},
                    {"colour_capitals", capitals(colour)},
                    {"code", t.tin.code},
                    {"supplier", x.c.product->supplier},
                    {"size", w.tinSize(t.tin.size)},
                    {"count", std::to_string(t.count)},
                    {"each", w.money(t.tin.price)},
                    {"cost", w.money(t.tin.price * t.count)}});
  for (const auto& s : need.opened)
    shed.push_back({{"name", x.c.product->name},
                    {"colour", colour},
                    {"colour_capitals", capitals(colour)},
                    {"size", w.tinSize(s.size)},
                    {"count", std::to_string(s.count)}});
  std::vector<std::string> shut;
  for (const auto& s : need.shut) shut.push_back(countedTins(s.count, s.size, w));
  f.emplace_back("shed", std::move(shed));
  f.emplace_back("tins", std::move(tins));
  f.emplace_back("tins_count", std::to_string(need.bought.number()));
  f.emplace_back("tins_words", w.counted("orders.tins", need.bought.number()));
  f.emplace_back("tins_cost", w.money(need.bought.cost));
  f.emplace_back("order", Facts{{"to_buy", w.volume(need.toBuy)},
                                {"bought", w.volume(need.bought.volume)},
                                {"stock", w.volume(need.drawn)},
                                {"left_over", w.volume(need.leftOver)},
                                {"shut", shut.empty() ? "" : w.joined(shut)}});
  f.emplace_back("has_stock", Fact::yes(!need.fromStock.isZero()));
  f.emplace_back("loss", w.share(x.c.job.loss));
  f.emplace_back("has_allowance", Fact::yes(x.c.job.allowance.millionths > 0));
  f.emplace_back("allowance", w.share(x.c.job.allowance));
  FactList rows;
  base::Money cost;
  for (const auto& line : x.resources.consumables) {
    const auto& item = x.content.consumables.at(line.consumable);
    rows.push_back(
        {{"name", capitalised(line.grit > 0 ? w("orders.of_grit",
                                                {{"item", item.name}, {"grit", std::to_string(line.grit)}})
                                            : item.name)},
         {"used", usedWords(line, item, w)},
         {"unit", item.isLiquid && !w.isMetric() ? w("units.quart") : item.unit},
         {"each", w.money(item.price.at(x.c.job.site.region))},
         {"bought", std::to_string(line.bought)},
         {"cost", w.money(line.cost)}});
    cost += line.cost;
  }
  f.emplace_back("consumables", std::move(rows));
  f.emplace_back("consumables_cost", w.money(cost));
  f.emplace_back("orders_cost", w.money(need.bought.cost + cost));
  addDelivery(f, x, w);
}

}  // namespace

Facts officeFacts(const model::JobResult& x, const Formatter& w) {
  Facts f = commonFacts(x, w);
  addLitreTable(f, x, w);
  addPrice(f, x, w, true);
  addCosts(f, x, w);
  addOrders(f, x, w);
  addOfficeTables(f, x, w);
  f.emplace_back("choices", choiceFacts(x, w));
  addActual(f, x, w);
  addLastTime(f, x, w);
  const auto& customer = x.c.job.customer;
  f.emplace_back(
      "customer",
      Facts{{"name", customer.name},
            {"phone", customer.phone},
            {"phone_link", customer.phone.empty() ? "" : phoneAddress(customer.phone, x.c.region->dialling)},
            {"email", customer.email},
            {"email_link", customer.email.empty() ? "" : mailAddress(customer.email)}});
  f.emplace_back("office_note", x.c.job.officeNote);
  FactList notes;
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    if (!x.c.job.areas[i].officeNote.empty())
      notes.push_back({{"deck", deckName(x, i)}, {"words", x.c.job.areas[i].officeNote}});
  }
  const bool isRemarked = std::any_of(x.c.job.done.begin(), x.c.job.done.end(),
                                      [](const auto& done) { return !done.remark.empty(); });
  f.emplace_back("has_notes", Fact::yes(!notes.empty() || !x.c.job.officeNote.empty() || isRemarked));
  f.emplace_back("deck_notes", std::move(notes));
  f.emplace_back("tax_source", x.c.region->tax.source);
  f.emplace_back("deposit_source", x.price.depositCap ? x.price.depositCap->source : "");
  return f;
}

}  // namespace sheets
