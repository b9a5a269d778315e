// Facts for the order list and the office sheet: everything, costs included.
#include "model/lookup.h"
#include "sheets/facts/explain.h"
#include "sheets/facts/facts_common.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_price.h"
#include "sheets/facts/facts_records.h"
#include "sheets/words/addresses.h"
#include "sheets/words/hours.h"

#include <algorithm>

namespace sheets {
namespace {

std::string deckName(const model::JobResult& x, const std::optional<std::size_t>& deck) {
  return deck ? deckLetter(*deck) + " " + x.c.job.areas[*deck].name : "";
}

/// 'sand 60', 'coat 2'.
std::string taskWords(const model::JobResult& x, const std::string& task, int pass) {
  return model::taskOf(x.content, task).name + (pass > 0 ? " " + std::to_string(pass) : "");
}

/// The first cell of a table row: filled only when it differs from the row before.
class Groups {
 public:
  std::string next(const std::string& group) {
    const bool isSame = group == last_;
    last_ = group;
    return isSame ? "" : group;
  }

 private:
  std::string last_;
};

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
          {"left", w.money(p.net - p.cost)},
          {"margin_wanted", w.share(x.c.job.price.margin.value_or(x.c.rates.margin))},
          {"margin_reached",
           w.share({base::mulDiv(p.marginReached.millionths, 1, 100'000, base::Round::HalfUp) * 100'000})}});
}

/// Labour by task and pass, the decks below each other.
std::vector<model::LabourLine> byTask(std::vector<model::LabourLine> lines) {
  std::vector<std::string> order;
  for (const auto& line : lines) {
    if (std::find(order.begin(), order.end(), line.task) == order.end()) order.push_back(line.task);
  }
  const auto place = [&](const model::LabourLine& line) {
    return std::pair{std::find(order.begin(), order.end(), line.task), line.pass};
  };
  std::stable_sort(lines.begin(), lines.end(),
                   [&](const auto& a, const auto& b) { return place(a) < place(b); });
  return lines;
}

void addLabour(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  Groups groups;
  const auto lines = byTask(x.resources.labour);
  // Printed hours add up to the printed sum.
  std::vector<std::int64_t> hours;
  for (const auto& line : lines) hours.push_back(line.hours.millionths);
  constexpr std::int64_t step = 10'000;  // a hundredth of an hour
  const auto steps = apportioned(hours, step);
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    rows.push_back({{"group", capitalised(groups.next(taskWords(x, lines[i].task, lines[i].pass)))},
                    {"deck", deckName(x, lines[i].deck)},
                    {"how", hoursFormula(lines[i], model::taskOf(x.content, lines[i].task), w)},
                    {"hours", w.number({steps[i] * step}, 2)}});
    sum += steps[i];
  }
  f.emplace_back("labour", std::move(rows));
  f.emplace_back("labour_sum", w.number({sum * step}, 2));
  f.emplace_back("labour_hours", w.number({sum * step}, 1) + "\u00A0" + w("units.hour"));
}

void addShifts(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  Groups groups;
  for (const auto& s : x.plan.shifts) {
    const auto deck = deckName(x, s.deck);
    rows.push_back({{"group", groups.next(w.shortDate(s.start.day))},
                    {"clock", w.clock(s.start.minutes) + "–" + w.clock(s.end.minutes)},
                    {"words", taskWords(x, s.task, s.pass) + (deck.empty() ? "" : ", " + deck)}});
  }
  f.emplace_back("shifts", std::move(rows));
}

std::string setWords(const model::TinSet& set, const Formatter& w) {
  if (set.tins.empty()) return w("orders.nothing");
  std::vector<std::string> words;
  for (const auto& t : set.tins)
    words.push_back(std::to_string(t.count) + "\u00A0×\u00A0" + w.tinSize(t.tin.size));
  return w("orders.set", {{"tins", w.joined(words)}, {"cost", w.signedMoney(set.cost)}});
}

/// What is bought whole is printed up to the next tenth, so that nobody reads 2.0 beside the three that 2.02
/// take.
base::Count usedInTenths(const model::ConsumableLine& line, const model::Consumable& item) {
  constexpr std::int64_t tenth = 100'000;
  return item.boughtWhole ? base::Count{base::divide(line.used.millionths, tenth, base::Round::Up) * tenth}
                          : line.used;
}

void addOrders(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& need = x.resources.product;
  const auto& colour = x.c.job.colour;
  const std::string name = x.c.product->name + (colour.empty() ? "" : ", " + colour);
  FactList tins;
  Groups groups;
  for (const auto& t : need.bought.tins) {
    int stock = 0;
    for (const auto& s : x.c.job.inStock)
      stock += s.product == x.c.product->id && s.size == t.tin.size ? s.count : 0;
    tins.push_back({{"name", groups.next(name)},
                    {"size", w.tinSize(t.tin.size)},
                    {"stock", stock == 0 ? "–" : std::to_string(stock)},
                    {"count", std::to_string(t.count)},
                    {"each", w.money(t.tin.price)},
                    {"cost", w.money(t.tin.price * t.count)}});
  }
  for (const auto& s : x.c.job.inStock) {
    const bool isListed = std::any_of(need.bought.tins.begin(), need.bought.tins.end(),
                                      [&](const auto& t) { return t.tin.size == s.size; });
    if (s.product != x.c.product->id || isListed) continue;
    tins.push_back({{"name", groups.next(name)},
                    {"size", w.tinSize(s.size)},
                    {"stock", std::to_string(s.count)},
                    {"count", "–"},
                    {"each", "–"},
                    {"cost", "–"}});
  }
  f.emplace_back("tins", std::move(tins));
  f.emplace_back("tins_count", std::to_string(need.bought.number()));
  f.emplace_back("tins_words", w.counted("orders.tins", need.bought.number()));
  f.emplace_back("tins_cost", w.money(need.bought.cost));
  f.emplace_back("order", Facts{{"to_buy", w.volume(need.toBuy)},
                                {"bought", w.volume(need.bought.volume)},
                                {"stock", w.volume(need.drawn)},
                                {"left_over", w.volume(need.leftOver)},
                                {"set_low", setWords(need.forLow, w)},
                                {"set_high", setWords(need.forHigh, w)}});
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
         {"used", w.number(usedInTenths(line, item), 1)},
         {"unit", item.unit},
         {"bought", std::to_string(line.bought)},
         {"cost", w.money(line.cost)}});
    cost += line.cost;
  }
  f.emplace_back("consumables", std::move(rows));
  f.emplace_back("consumables_cost", w.money(cost));
}

}  // namespace

Facts officeFacts(const model::JobResult& x, const Formatter& w) {
  Facts f = commonFacts(x, w);
  addLitreTable(f, x, w);
  addPrice(f, x, w, true);
  addCosts(f, x, w);
  addLabour(f, x, w);
  addShifts(f, x, w);
  addOrders(f, x, w);
  addActual(f, x, w);
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
  f.emplace_back("has_deck_notes", Fact::yes(!notes.empty()));
  f.emplace_back("deck_notes", std::move(notes));
  FactList explained;
  Groups groups;
  for (const auto& e : explain(x)) {
    if (e.isOfTask) continue;  // has a table of its own
    explained.push_back({{"group", capitalised(groups.next(e.about))},
                         {"name", e.name},
                         {"formula", e.formula},
                         {"value", e.value}});
  }
  f.emplace_back("explained", std::move(explained));
  f.emplace_back("tax_source", x.c.region->tax.source);
  f.emplace_back("deposit_source", x.price.depositCap ? x.price.depositCap->source : "");
  return f;
}

}  // namespace sheets
