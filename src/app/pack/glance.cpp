#include "app/pack/glance.h"

#include "base/joined.h"
#include "model/lookup.h"
#include "sheets/facts/day_work.h"

#include <algorithm>

namespace app {
namespace {

using drawings::GlanceDay;

/// Those that take longest first.
std::vector<std::string> namesOfTasks(const sheets::Day& day, const model::JobResult& x) {
  auto tasks = sheets::tasksOf(day, x);
  std::stable_sort(tasks.begin(), tasks.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  std::vector<std::string> names;
  for (const auto& task : tasks) names.push_back(task.first);
  return names;
}

void tellWork(GlanceDay& glance, const sheets::Day& day, const model::JobResult& x,
              const sheets::Formatter& w) {
  std::vector<std::size_t> decks;
  std::vector<std::string> coats;
  for (const auto& coat : day.coats) {
    base::addOnce(coats, std::to_string(coat.coat));
    base::addOnce(decks, coat.deck);
  }
  if (!coats.empty()) {
    glance.kind = GlanceDay::Kind::Coat;
    glance.what = {
        w.counted("glance.coats", static_cast<std::int64_t>(coats.size()), {{"numbers", w.joined(coats)}})};
  } else {
    const auto tasks = namesOfTasks(day, x);
    if (tasks.size() > 1) glance.what.push_back(tasks[0] + ", " + tasks[1]);
    glance.what.insert(glance.what.end(), tasks.begin(), tasks.end());
    glance.what.push_back(w("glance.work"));
    for (const auto* shift : day.shifts)
      if (shift->deck) base::addOnce(decks, *shift->deck);
  }
  const bool isAll = decks.size() > 1 && decks.size() == x.c.job.areas.size();
  glance.where = isAll ? w("day.every_letter") : sheets::deckLetters(decks, ", ");
}

bool dries(base::Date date, const model::JobResult& x) {
  return std::any_of(x.plan.washed.begin(), x.plan.washed.end(),
                     [&](const auto& boards) { return boards.washed.day < date && date <= boards.dry.day; });
}

}  // namespace

std::vector<GlanceDay> glanceOf(const std::vector<sheets::Day>& days, const model::JobResult& x,
                                const sheets::Formatter& w) {
  std::vector<GlanceDay> all;
  if (days.empty()) return all;
  const auto* walk = model::eventOf(x.plan, model::Moment::Walk);
  base::Date last = days.back().date;
  if (walk != nullptr) last = std::max(last, walk->at.day);
  for (base::Date date = days.front().date; date <= last; date += std::chrono::days{1}) {
    const bool beginsMonth = std::chrono::year_month_day{date}.day() == std::chrono::day{1};
    GlanceDay glance{GlanceDay::Kind::Off,
                     w.shortWeekday(date),
                     std::to_string(static_cast<unsigned>(std::chrono::year_month_day{date}.day())),
                     all.empty() || beginsMonth
                         ? w("glance.month", {{"month", w.month(date)}, {"year", w.year(date)}})
                         : "",
                     {},
                     ""};
    const auto day = std::find_if(days.begin(), days.end(), [&](const auto& d) { return d.date == date; });
    if (day != days.end()) {
      glance.kind = GlanceDay::Kind::Work;
      tellWork(glance, *day, x, w);
    } else if (walk != nullptr && date == walk->at.day) {
      glance.kind = GlanceDay::Kind::Walk;
      glance.what = {w("glance.walk", {{"time", w.clock(walk->at.minutes)}})};
    } else if (date < days.back().date && dries(date, x)) {
      glance.kind = GlanceDay::Kind::Drying;
      glance.what = {w("glance.drying", {{"moisture", w.share(x.c.product->limits.moistureMax)}}),
                     w("glance.dries")};
    } else {
      glance.what = {w(date < days.back().date ? "glance.off" : "glance.coat_dries"), w("glance.none")};
    }
    all.push_back(std::move(glance));
  }
  return all;
}

}  // namespace app
