#include "app/after/year_after.h"

#include "app/after/next_job.h"
#include "app/report/year_changes.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "input/read.h"
#include "model/lookup.h"
#include "schedule/crew/calendar.h"

#include <algorithm>
#include <filesystem>
#include <iostream>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int done = 0, refused = 1;

int refuse(const std::string& file, const std::string& what, const std::string& hint) {
  base::Diagnostics messages;
  messages.error({file}, "", what, hint);
  std::cerr << base::format(messages);
  return refused;
}

/// A start that is sooner than anybody comes back for a year's maintenance, or on a day off.
void warnOfStart(base::Date start, const model::JobResult& last, const model::JobResult& next,
                 const std::string& file, base::Diagnostics& messages) {
  const std::string day = base::isoDate(start);
  if (!schedule::Calendar(next.c.job, next.c.region, 0, 0).isWorkday(start))
    messages.warn({file}, "start", "the crew does not work on " + day, "give a working day under --start");
  const auto* visit = model::eventOf(last.plan, model::Moment::Maintenance);
  const auto finished = last.plan.finished.day;
  if (visit == nullptr || (start - finished) * 2 >= visit->at.day - finished) return;
  const auto days = (start - finished).count();
  messages.warn(
      {file}, "start",
      day + " is only " + std::to_string(days) + (days == 1 ? " day" : " days") + " after the last coat",
      "the yearly visit falls due on " + base::isoDate(visit->at.day));
}

}  // namespace

int again(const AgainOrder& order) {
  base::Diagnostics messages;
  const auto text = input::readFile(order.job);
  if (!text)
    return refuse(order.job, "cannot be read: " + input::whyUnreadable(order.job),
                  "give the path of a finished job");
  const Firms firms(order.choices);
  const auto shipped = firms.of({order.job, *text});
  const auto x = compute(JobText{order.job, *text}, *shipped, order.choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  if (!x->c.job.choices.empty() && !x->c.job.isChosen)
    return refuse(order.job, "none of its choices is chosen, so there is no work to follow",
                  "add a line like chosen: 1");
  if (x->estimate.coats.empty())
    return refuse(order.job, "lays no coat, so there is none to renew", "give a job with 'oil' under 'work'");
  if (x->c.job.declined)
    return refuse(order.job, "was declined, so there is no coat to renew",
                  "give the job before it, or take 'declined' out");
  if (order.start <= x->plan.finished.day)
    return refuse(order.job, "its last coat lies on " + base::isoDate(x->plan.finished.day),
                  "give a later day under --start");
  const auto quoted = order.quoted.value_or(order.start - quotedBefore);
  if (quoted > order.start)
    return refuse(order.job, "the work starts before the date of the quote",
                  "give an earlier day under --quoted");

  const auto [file, fresh] =
      nextJob({order.job, *text}, *x, *shipped,
              {order.start, quoted, order.raise, order.file, order.choices.firm.empty()});
  if (fs::exists(file))
    return refuse(file, "is there already", "choose another name with -o; nothing is written over");

  base::Diagnostics mistakes, warnings;
  const auto y = compute(JobText{file, fresh.text}, *shipped, order.choices, mistakes);
  if (!y) {
    std::cerr << base::format(mistakes);
    return refuse(order.job, "next year's job has the mistakes above and is not written",
                  "mend the same lines in this job, then run it again");
  }
  writeAll({{file, fresh.text}});
  warnOfStart(order.start, *x, *y, file, warnings);
  std::cerr << base::format(warnings);
  const std::string name = base::printable(file);
  if (!fresh.promises.empty()) std::cerr << name << ": comments now, put back what still holds:\n";
  for (const auto& promise : fresh.promises) std::cerr << "  " << base::printable(promise) << "\n";
  std::cout << name << ": look it over; then run 'planksheaf check " << name << "'\n" << yearChanges(*x, *y);
  return done;
}

}  // namespace app
