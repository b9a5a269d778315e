#include "app/pack/milestones.h"

#include "model/lookup.h"
#include "model/names.h"
#include "sheets/facts/facts_records.h"
#include "sheets/words/formatter.h"

#include <algorithm>
#include <map>

namespace app {
namespace {

/// By the calendar, to the nearest: a day that lies in the later half of a month counts it.
std::int64_t monthsBetween(base::Date from, base::Date to) {
  int months = 0;
  while (base::plusMonths(from, months + 1) <= to) ++months;
  const auto last = base::plusMonths(from, months), next = base::plusMonths(from, months + 1);
  return months + ((to - last) * 2 >= next - last ? 1 : 0);
}

}  // namespace

std::vector<drawings::Milestone> stationsOf(const model::JobResult& x) {
  const sheets::Formatter w(*x.c.region, x.language);
  using model::Moment;
  const std::map<Moment, const char*> pictures = {{Moment::Walk, "care-walk"},
                                                  {Moment::Furniture, "care-chair"},
                                                  {Moment::Rugs, "care-pot"},
                                                  {Moment::FirstWash, "care-wash"},
                                                  {Moment::Maintenance, "care-brush"}};
  base::LocalTime last = sheets::isAllLaid(x) ? x.plan.finished : sheets::upToHalfHour(x.plan.finished);
  std::vector<drawings::Milestone> list{
      {"care-coat", w.weekday(last.day), w.dayMonth(last.day), w("timeline.coat.what"),
       w(sheets::isAllLaid(x) ? "timeline.coat.note" : "timeline.coat.note_planned",
         {{"time", w.clock(last.minutes)}}),
       ""}};
  for (const auto& e : x.plan.events) {
    const auto picture = pictures.find(e.what);
    if (picture == pictures.end()) continue;
    const base::LocalTime at = sheets::upToHalfHour(e.at);
    const auto days = (at.day - last.day).count();
    list.back().gap = days >= 60 ? w.counted("waits.months", monthsBetween(last.day, at.day))
                      : days >= 14 && days % 7 == 0 ? w.counted("waits.weeks", days / 7)
                                                    : w.counted("waits.days", days);
    const bool isVisit = e.what == Moment::Maintenance,
               isTimed = e.what == Moment::Walk || e.what == Moment::Furniture;
    const bool isYearly = isVisit && x.c.product->times.maintenanceMonths == 12;
    // The year stands beside it, on one line.
    const base::Values inYear{{"weekday", w.shortWeekday(at.day)}, {"year", w.year(at.day)}};
    const std::string key = std::string("timeline.") + model::nameOf(e.what);
    list.push_back({picture->second, isVisit ? w("timeline.weekday_year", inYear) : w.weekday(at.day),
                    w.dayMonth(at.day), w(key + (isYearly ? ".what_yearly" : ".what")),
                    w(key + ".note", isTimed ? base::Values{{"time", w.clock(at.minutes)}} : base::Values{}),
                    ""});
    last = at;
  }
  return list;
}

std::vector<drawings::Milestone> quoteStationsOf(const model::JobResult& x) {
  const sheets::Formatter w(*x.c.region, x.language);
  std::vector<drawings::Milestone> list;
  const auto add = [&](const char* key, base::Date from, const std::string& note) {
    list.push_back({"", w.weekday(from), w.dayMonth(from), w(std::string("quote_dates.") + key), note, ""});
  };
  const auto until = [&](base::Date from, base::Date to) {
    return from == to ? std::string{} : w("quote_dates.until", {{"date", w.shortDate(to)}});
  };
  if (!x.plan.days.empty())
    add("clear", x.plan.days.front().date - std::chrono::days{1}, w("quote_dates.clear_note"));
  const auto addWork = [&](const char* key, std::initializer_list<model::Work> works) {
    std::optional<base::Date> from, to;
    for (const auto& s : x.plan.shifts) {
      const auto& task = model::taskOf(x.content, s.task);
      const bool belongs = task.work && std::find(works.begin(), works.end(), *task.work) != works.end();
      if (!belongs || (task.work == model::Work::Oil && !task.isPerCoat)) continue;
      if (!from) from = s.start.day;
      to = s.end.day;
    }
    if (from) add(key, *from, until(*from, *to));
  };
  using model::Work;
  const bool isFixed = model::asksFor(x.c.job.work, Work::Fix),
             isSanded = model::asksFor(x.c.job.work, Work::Sand);
  addWork("wash", {Work::Wash});
  addWork(!isSanded ? "fix" : isFixed ? "fix_and_sand" : "sand", {Work::Fix, Work::Sand});
  addWork("coats", {Work::Oil});
  for (const auto& e : x.plan.events) {
    if (e.what != model::Moment::Walk && e.what != model::Moment::Furniture) continue;
    const base::LocalTime at = sheets::upToHalfHour(e.at);
    add(model::nameOf(e.what), at.day, w("quote_dates.from", {{"time", w.clock(at.minutes)}}));
  }
  return list;
}

}  // namespace app
