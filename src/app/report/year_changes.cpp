#include "app/report/year_changes.h"

#include "app/report/text_table.h"
#include "model/lookup.h"
#include "sheets/words/formatter.h"

#include <algorithm>

namespace app {
namespace {

int coatsOf(const model::JobResult& x) {
  int most = 0;
  for (const auto& need : x.estimate.coats) most = std::max(most, need.coat);
  return most;
}

/// After the last coat, to the next whole hour.
std::string waitFor(model::Moment what, const model::JobResult& x, const sheets::Formatter& w) {
  const auto* event = model::eventOf(x.plan, what);
  if (event == nullptr) return {};
  const auto from = x.plan.finished, to = event->at;
  const auto minutes = (to.day - from.day).count() * 24 * 60 + to.minutes - from.minutes;
  return w.wait(base::Hours::whole((minutes + 59) / 60));
}

}  // namespace

base::Volume litresOf(const model::JobResult& x) {
  base::Volume litres;
  for (const auto& need : x.estimate.coats) {
    const auto laid = std::find_if(x.laid.coats.begin(), x.laid.coats.end(), [&](const auto& a) {
      return a.deck == need.deck && a.coat == need.coat && a.litres;
    });
    litres += laid != x.laid.coats.end() ? *laid->litres : increased(need.litres, x.c.job.loss);
  }
  return litres;
}

std::string yearChanges(const model::JobResult& last, const model::JobResult& next) {
  const sheets::Formatter w(*next.c.region, next.language);
  std::vector<TextRow> rows = {{"", last.c.job.ref, next.c.job.ref}};
  const auto add = [&](const char* name, auto of) {
    const std::string before = of(last), after = of(next);
    if (before != after) rows.push_back({name, before, after});
  };
  add("coats", [](const auto& x) { return std::to_string(coatsOf(x)); });
  add("product", [](const auto& x) { return x.c.product->name; });
  add("takes", [&](const auto& x) { return w.volume(litresOf(x)); });
  add("walk on it after", [&](const auto& x) { return waitFor(model::Moment::Walk, x, w); });
  add("furniture back after", [&](const auto& x) { return waitFor(model::Moment::Furniture, x, w); });
  add("days on site", [](const auto& x) { return std::to_string(x.resources.crewDays); });
  add("hours, all people", [&](const auto& x) { return w.number({x.resources.labourHours.millionths}, 1); });
  add("raise on the firm's rates", [&](const auto& x) { return w.share(x.c.job.price.raise); });
  add("total, by the rates of now", [&](const auto& x) { return w.signedMoney(x.price.total); });
  return textTable(rows);
}

}  // namespace app
