#include "sheets/facts/facts_office.h"

#include "model/lookup.h"
#include "sheets/facts/facts_invoice.h"
#include "sheets/facts/facts_quote.h"
#include "sheets/words/controlled_rounding.h"

#include <algorithm>
#include <set>

namespace sheets {
namespace {

using base::Money;
using base::Round;
using base::Wide;

constexpr std::int64_t hourStep = 100'000;  // a tenth of an hour, in millionths
constexpr base::Share hundredth = base::Share::whole(1);

std::string hourWords(std::int64_t tenths, const Formatter& w) {
  return tenths == 0 ? "–" : w.number({tenths * hourStep}, 1);
}

/// What is done for the whole job, once or each day, stands in one row.
bool isForAll(const model::Task& task) {
  return task.measure == model::Measure::Day || task.measure == model::Measure::Job;
}

/// Hours of each task in a row, of each area in a column, and of the whole job in the last, in tenths that
/// add up both ways.
struct Hours {
  std::vector<std::string> tasks;  // ids; empty: what is done for the whole job
  Amounts table;

  std::int64_t ofRow(std::size_t row) const {
    std::int64_t sum = 0;
    for (const auto tenths : table[row]) sum += tenths;
    return sum;
  }
  std::int64_t ofColumn(std::size_t column) const {
    std::int64_t sum = 0;
    for (const auto& row : table) sum += row[column];
    return sum;
  }
  std::int64_t all() const {
    std::int64_t sum = 0;
    for (std::size_t row = 0; row < table.size(); ++row) sum += ofRow(row);
    return sum;
  }
};

Hours hoursOf(const model::JobResult& x) {
  Hours h;
  const std::size_t areas = x.c.job.areas.size();
  for (const auto& line : x.resources.labour) {
    const std::string task = isForAll(model::taskOf(x.content, line.task)) ? "" : line.task;
    auto row = std::find(h.tasks.begin(), h.tasks.end(), task);
    if (row == h.tasks.end()) {
      h.table.emplace_back(areas + 1);
      row = h.tasks.insert(h.tasks.end(), task);
    }
    h.table[static_cast<std::size_t>(row - h.tasks.begin())][line.deck.value_or(areas)] +=
        line.hours.millionths;
  }
  h.table = controlledRounding(h.table, hourStep);
  return h;
}

/// 'Sand, three passes', 'Oil, two coats'.
std::string taskWords(const model::JobResult& x, const std::string& id, const Formatter& w) {
  if (id.empty()) return w("office.set_up");
  const auto& task = model::taskOf(x.content, id);
  std::set<int> passes;
  for (const auto& line : x.resources.labour) {
    if (line.task == id && line.pass > 0) passes.insert(line.pass);
  }
  const auto n = static_cast<std::int64_t>(passes.size());
  if (n < 2) return capitalised(task.name);
  return capitalised(task.name) + ", " + w.counted(task.isPerPass ? "office.passes" : "coats.count", n);
}

void addHours(Facts& f, const model::JobResult& x, const Hours& hours, const Formatter& w) {
  FactList heads, rows;
  const std::size_t areas = x.c.job.areas.size();
  for (std::size_t i = 0; i < areas; ++i) heads.push_back({{"words", deckLetter(i)}});
  heads.push_back({{"words", w("office.whole_job")}});
  const auto cells = [&](auto tenthsOf) {
    FactList list;
    for (std::size_t i = 0; i <= areas; ++i) list.push_back({{"words", hourWords(tenthsOf(i), w)}});
    return list;
  };
  for (std::size_t r = 0; r < hours.tasks.size(); ++r)
    rows.push_back({{"task", taskWords(x, hours.tasks[r], w)},
                    {"cells", cells([&](std::size_t i) { return hours.table[r][i]; })},
                    {"sum", hourWords(hours.ofRow(r), w)}});
  f.emplace_back("hours_heads", std::move(heads));
  f.emplace_back("hours", std::move(rows));
  f.emplace_back("hours_all", Facts{{"cells", cells([&](std::size_t i) { return hours.ofColumn(i); })},
                                    {"sum", hourWords(hours.all(), w)}});
  f.emplace_back("labour_hours", w.number({hours.all() * hourStep}, 1) + "\u00A0" + w("units.hour"));
}

struct MoneyRow {
  std::string name;
  Money price, cost;
  std::int64_t tenths = 0;  // hours
};

Facts moneyFacts(const MoneyRow& row, const Formatter& w) {
  const Money left = row.price - row.cost;
  const bool hasPrice = row.price > Money{};
  const base::Share share =
      hasPrice ? base::Share{base::mulDiv(left.minor, 1000, row.price.minor, Round::HalfUp) * 100'000}
               : base::Share{};
  return {{"name", row.name},
          {"price", w.money(row.price)},
          {"cost", w.money(row.cost)},
          {"left", w.money(left)},
          {"share", hasPrice ? w.share(share) : "–"},
          {"hours", hourWords(row.tenths, w)},
          {"per_hour",
           row.tenths == 0 ? "–" : w.money({base::mulDiv(left.minor, 10, row.tenths, Round::HalfUp)})}};
}

/// Each part with its share of overhead and contingency; the largest takes the coins that rounding leaves.
void addMoney(Facts& f, const model::JobResult& x, const Hours& hours, const Formatter& w) {
  const PriceParts parts = priceParts(x);
  const std::size_t areas = parts.areas.size();
  std::vector<MoneyRow> rows;
  const base::Share loaded = base::Share::whole(100) + x.c.rates.overhead + x.c.rates.contingency;
  const auto add = [&](const std::string& name, const PriceParts::Part& part, std::int64_t tenths) {
    if (part.amount == Money{} && tenths == 0) return;
    rows.push_back({name,
                    part.amount,
                    {base::mulDiv(part.cost.minor, loaded.millionths, 100'000'000, Round::HalfUp)},
                    tenths});
  };
  for (std::size_t i = 0; i < areas; ++i)
    add(deckLetter(i) + "\u00A0" + x.c.job.areas[i].name, parts.areas[i], hours.ofColumn(i));
  add(w("office.materials"), parts.materials, 0);
  add(w("office.site"), parts.site, hours.ofColumn(areas));
  MoneyRow all{w("office.total"), x.price.net, x.price.cost, hours.all()};
  Money rest = x.price.cost;
  for (const auto& row : rows) rest = rest - row.cost;
  if (!rows.empty())
    std::max_element(rows.begin(), rows.end(), [](const auto& a, const auto& b) {
      return a.cost < b.cost;
    })->cost += rest;
  if (x.price.discount > Money{})
    rows.push_back({w("office.discount"), Money{} - x.price.discount, Money{}, 0});
  FactList list;
  for (const auto& row : rows) list.push_back(moneyFacts(row, w));
  f.emplace_back("money", std::move(list));
  Facts sum = moneyFacts(all, w);
  f.emplace_back("money_all", std::move(sum));
}

/// What is done on a day: kinds of work with the letters of their areas, 'wash A and B'.
std::string dayWords(const model::JobResult& x, base::Date day, const Formatter& w) {
  std::vector<std::pair<std::string, std::vector<std::string>>> done;
  for (const auto& s : x.plan.shifts) {
    const auto& task = model::taskOf(x.content, s.task);
    if (s.start.day != day || !s.deck || !task.work) continue;
    if (task.work == model::Work::Oil && !task.isPerCoat) continue;
    const std::string name =
        task.work == model::Work::Oil ? w("coats.names." + std::to_string(s.pass)) : task.name;
    auto known = std::find_if(done.begin(), done.end(), [&](const auto& d) { return d.first == name; });
    if (known == done.end()) known = done.insert(done.end(), {name, {}});
    const std::string letter = deckLetter(*s.deck);
    if (std::find(known->second.begin(), known->second.end(), letter) == known->second.end())
      known->second.push_back(letter);
  }
  std::string words;
  for (auto& [name, letters] : done) {
    std::sort(letters.begin(), letters.end());
    words += (words.empty() ? "" : "; ") + name + " " + w.joined(letters);
  }
  return capitalised(words);
}

void addWorkDays(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  std::int64_t all = 0;
  for (const auto& site : x.plan.days) {
    const base::Date day = site.date;
    std::int64_t minutes = 0;
    for (const auto& s : x.plan.shifts) {
      if (s.start.day == day) minutes += std::int64_t{s.end.minutes - s.start.minutes} * s.people;
    }
    rows.push_back({{"day", w.shortDate(day)},
                    {"words", dayWords(x, day, w)},
                    {"hours", w.number({base::divide(Wide{minutes} * 1'000'000, 60, Round::HalfUp)}, 2)}});
    all += minutes;
  }
  f.emplace_back("work_days", std::move(rows));
  f.emplace_back("work_days_all", w.number({base::divide(Wide{all} * 1'000'000, 60, Round::HalfUp)}, 2));
}

void addInvoices(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList rows;
  const auto& p = x.price;
  for (std::size_t i = 0; i < p.stages.size(); ++i) {
    const bool isDeposit = i == 0 && p.deposit > Money{}, isLast = !isDeposit && p.stages[i].when.empty();
    std::optional<base::Date> sent;
    if (isDeposit) sent = model::validUntil(x.c.job);
    if (isLast) sent = x.plan.finished.day;
    if (i < x.c.job.invoices.size()) sent = x.c.job.invoices[i];
    const auto days = x.c.firm.paymentDays;
    rows.push_back({{"number", std::to_string(i + 1)},
                    {"is_deposit", Fact::yes(isDeposit)},
                    {"is_last", Fact::yes(isLast)},
                    {"when", isDeposit || isLast ? "" : p.stages[i].when},
                    {"send", sent ? w.shortDate(*sent) : ""},
                    {"due", sent && days ? w.shortDate(*sent + std::chrono::days{*days}) : ""},
                    {"share", w.share(p.stages[i].share)},
                    {"amount", w.money(p.stages[i].amount + (isLast ? takenOptions(x) : Money{}))}});
  }
  f.emplace_back("invoices", std::move(rows));
}

/// '4 in 10' from one in ten on, below it '1 in 12', '1 in 20'.
std::string chanceWords(base::Share share, const Formatter& w) {
  const auto in = [&](std::int64_t n, std::int64_t m) {
    return w("office.chance", {{"n", std::to_string(n)}, {"m", std::to_string(m)}});
  };
  const auto thousandths = share.millionths / 100'000;
  constexpr int tenth = 95, thirteenth = 77;
  if (thousandths >= tenth) return in(base::divide(thousandths, 100, Round::HalfUp), 10);
  if (share < hundredth) return w("office.chance_small");
  return in(1, thousandths >= thirteenth ? base::divide(1000, thousandths, Round::HalfUp)
                                         : base::divide(200, thousandths, Round::HalfUp) * 5);
}

void addEnough(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& need = x.resources.product;
  const auto& enough = x.enough;
  const bool isOwn = std::any_of(x.estimate.coats.begin(), x.estimate.coats.end(),
                                 [](const auto& coat) { return coat.learnedSpread.has_value(); });
  f.emplace_back("enough", Facts{{"is_sure", Fact::yes(enough.chanceOfMore < hundredth)},
                                 {"own_jobs", Fact::yes(isOwn)},
                                 {"chance", chanceWords(enough.chanceOfMore, w)},
                                 {"have", w.volume(need.bought.volume + need.fromStock)},
                                 {"tin", w.tinSize(enough.oneMore.size)},
                                 {"price", enough.isInShed ? "" : w.money(enough.oneMore.price)},
                                 {"then", chanceWords(enough.chanceWithOneMore, w)}});
}

}  // namespace

void addOfficeTables(Facts& facts, const model::JobResult& x, const Formatter& w) {
  const Hours hours = hoursOf(x);
  addMoney(facts, x, hours, w);
  addHours(facts, x, hours, w);
  addWorkDays(facts, x, w);
  addInvoices(facts, x, w);
  addEnough(facts, x, w);
  constexpr std::size_t narrow = 4;  // areas whose hours fill half a page
  facts.emplace_back("side_by_side", Fact::yes(x.c.job.areas.size() <= narrow));
}

}  // namespace sheets
