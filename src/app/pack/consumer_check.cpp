#include "app/pack/consumer_check.h"

#include "estimate/consumer_rules.h"
#include "model/lookup.h"

#include <algorithm>

namespace app {
namespace {

/// Messages are plain text: no-break spaces become spaces.
std::string spaced(std::string words) {
  const std::string noBreak = "\u00A0";
  for (auto at = words.find(noBreak); at != std::string::npos; at = words.find(noBreak, at))
    words.replace(at, noBreak.size(), " ");
  return words;
}

std::string authorityOf(const model::Region& region, const std::string& about) {
  const std::string* name = model::authorityFor(region, about);
  return name ? *name : "the local authority";
}

/// The largest share, in hundredths of a percent, whose deposit stays within an amount.
base::Share shareWithin(base::Money most, base::Money total) {
  constexpr std::int64_t step = 10'000;
  const auto rounded = [&](base::Round round) {
    const std::int64_t steps = base::Share::whole(100).millionths / step;
    return base::Share{base::mulDiv(most.minor, steps, total.minor, round) * step};
  };
  const auto above = rounded(base::Round::Up);
  return base::share(total, above, base::Round::Down) <= most ? above : rounded(base::Round::Down);
}

void checkDeposit(const model::JobInputs& c, const model::Price& price, const sheets::Formatter& w,
                  base::Diagnostics& messages) {
  const auto& region = *c.region;
  const auto& state = c.job.site.state;
  const auto warn = [&](const std::string& what, const std::string& hint) {
    messages.warn(c.job.price.depositPos, "price.deposit", spaced(what), spaced(hint));
  };
  if (price.deposit == base::Money{}) return;
  const bool differsByState = std::any_of(region.depositCaps.begin(), region.depositCaps.end(),
                                          [](const auto& cap) { return !cap.states.empty(); });
  if (differsByState && state.empty()) {
    warn("deposit limits differ by state in " + region.name,
         "add the state to 'site:', like 'state: " + region.states.rbegin()->first + "'");
    return;
  }
  if (price.depositCap == nullptr) return;
  const auto& cap = *price.depositCap;
  const base::Money most = estimate::mostDeposit(cap, price.total, c.job.price.specialOrders);
  if (price.deposit <= most) return;
  const std::string place = state.empty() ? region.name : region.states.at(state);
  const std::string what =
      "the deposit of " + w.signedMoney(price.deposit) + " on " + w.signedMoney(price.total);
  if (model::isFromMemory(cap.source)) {
    warn(what + " may be more than the law of " + place + " allows",
         "ask " + authorityOf(region, "rights") + "; our figure is from memory");
    return;
  }
  warn(what + " is more than the " + w.signedMoney(most) + (cap.isAdvice ? " advised in " : " allowed in ") +
           place,
       "write 'deposit: " + w.share(shareWithin(most, price.total)) + "' or less; " + cap.source);
}

void checkStart(const model::JobInputs& c, base::Diagnostics& messages) {
  const auto& rule = c.region->cancellation;
  const auto& job = c.job;
  if (!job.customer.isUninvited || rule.text.empty()) return;
  // The firm's own days off are not counted either: a longer count errs on the safe side.
  std::vector<base::Date> holidays = job.crew.off;
  const int year = int{std::chrono::year_month_day{job.quoted}.year()};
  for (const int each : {year, year + 1}) {
    for (const auto& h : base::holidaysOf({c.region->holidays, c.region->states}, job.site.state, each))
      holidays.push_back(h.date);
  }
  const base::Date last = estimate::lastDayToCancel(rule, job.quoted, true, holidays);
  if (job.start > last) return;
  messages.warn(job.startPos, "start",
                "you called uninvited, so the customer may cancel until " + base::isoDate(last) +
                    " even if they accept on the day of the quote",
                (rule.isStandstill ? "take no payment and do no work until then; "
                                   : "work done until then may stay unpaid; ") +
                    rule.source);
}

}  // namespace

void checkConsumerRules(const model::JobInputs& c, const model::Price& price, const sheets::Formatter& w,
                        base::Diagnostics& messages) {
  checkStart(c, messages);
  checkDeposit(c, price, w, messages);
}

}  // namespace app
