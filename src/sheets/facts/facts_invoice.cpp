#include "sheets/facts/facts_invoice.h"

#include <algorithm>

namespace sheets {
namespace {

using base::Money;

std::string numberOf(const model::JobResult& x, std::size_t stage) {
  return x.c.job.ref + "/" + std::to_string(stage + 1);
}

std::string minus(Money amount, const Formatter& w) { return "\u2212" + w.money(amount); }

FactList takenFacts(const model::JobResult& x, const Formatter& w) {
  FactList list;
  const auto& options = x.c.job.price.options;
  for (std::size_t i = 0; i < options.size(); ++i) {
    if (options[i].isTaken)
      list.push_back({{"text", options[i].text}, {"amount", w.money(x.price.options[i])}});
  }
  return list;
}

FactList earlierFacts(const model::JobResult& x, std::size_t stage, const Formatter& w) {
  FactList list;
  for (std::size_t i = 0; i < stage; ++i)
    list.push_back({{"number", numberOf(x, i)},
                    {"date", w.date(x.c.job.invoices[i])},
                    {"amount", minus(x.price.stages[i].amount, w)}});
  return list;
}

}  // namespace

Money takenOptions(const model::JobResult& x) {
  Money sum;
  for (std::size_t i = 0; i < x.price.options.size(); ++i) {
    if (x.c.job.price.options[i].isTaken) sum += x.price.options[i];
  }
  return sum;
}

std::vector<Money> taxOfStages(const model::Price& price) {
  std::vector<Money> taxes;
  Money asked, taxed;
  for (const auto& stage : price.stages) {
    asked += stage.amount;
    const Money upTo =
        price.total > Money{}
            ? Money{base::mulDiv(price.tax.minor, asked.minor, price.total.minor, base::Round::HalfUp)}
            : Money{};
    taxes.push_back(upTo - taxed);
    taxed = upTo;
  }
  return taxes;
}

void addInvoice(Facts& facts, const model::JobResult& x, const Formatter& w) {
  const auto& stages = x.price.stages;
  const auto& days = x.c.job.invoices;
  if (stages.empty()) return;  // nothing has been priced
  // A deposit that comes to nothing leaves fewer stages than the job names.
  const std::size_t at = std::min(std::max<std::size_t>(days.size(), 1), stages.size()) - 1;
  const bool isLast = at + 1 == stages.size(), isDeposit = at == 0 && x.price.deposit > Money{};
  Money amount = stages[at].amount, tax = taxOfStages(x.price)[at];
  if (isLast) {
    amount += takenOptions(x);
    for (std::size_t i = 0; i < x.price.options.size(); ++i) {
      const auto& option = x.c.job.price.options[i];
      if (option.isTaken) tax += x.price.options[i] - option.price;
    }
  }
  const auto pays = x.c.firm.paymentDays;
  const bool isDue = pays && at < days.size();
  const base::Date due = isDue ? days[at] + std::chrono::days{*pays} : base::Date{};
  FactList earlier = earlierFacts(x, isLast ? at : 0, w), taken = takenFacts(x, w);
  facts.emplace_back("invoice", Facts{{"number", numberOf(x, at)},
                                      {"date", at < days.size() ? w.date(days[at]) : ""},
                                      {"due", isDue ? w.dayMonth(due) : ""},
                                      {"due_long", isDue ? w.longDate(due) : ""},
                                      {"is_deposit", Fact::yes(isDeposit)},
                                      {"is_last", Fact::yes(isLast)},
                                      {"share", w.share(stages[at].share)},
                                      {"when", isDeposit || isLast ? "" : stages[at].when},
                                      {"net", w.money(amount - tax)},
                                      {"tax", w.money(tax)},
                                      {"amount", w.money(amount)},
                                      {"amount_sign", w.signedMoney(amount)},
                                      {"earlier", std::move(earlier)},
                                      {"taken", isLast ? taken : FactList{}}});
  facts.emplace_back("agreed", Facts{{"total", w.money(x.price.total + takenOptions(x))},
                                     {"total_sign", w.signedMoney(x.price.total + takenOptions(x))},
                                     {"taken", std::move(taken)}});
}

}  // namespace sheets
