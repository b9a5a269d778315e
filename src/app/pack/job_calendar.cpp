#include "app/pack/job_calendar.h"

#include "base/joined.h"
#include "ics/update.h"
#include "model/lookup.h"
#include "schedule/weather/zone.h"
#include "sheets/facts/day_work.h"

#include <algorithm>

namespace app {
namespace {

struct Maker {
  const model::JobResult& x;
  sheets::Formatter w{*x.c.region, x.language};

  const model::Job& job() const { return x.c.job; }

  std::chrono::sys_seconds utc(base::LocalTime t) const {
    return schedule::localToUtc(job().site.timezone, t);
  }

  /// From a job's number and nothing that the firm may change; 'what' tells the events of a job apart.
  static std::string uid(const std::string& ref, const std::string& what) {
    return ref + "-" + what + "@planksheaf.invalid";
  }

  /// The number of the first job that the yearly visits go back to.
  const std::string& firstRef() const {
    return !job().firstJob.empty() ? job().firstJob : !job().after.empty() ? job().after : job().ref;
  }

  std::string place() const {
    return base::joined(job().site.address.empty() ? job().customer.address : job().site.address);
  }

  ics::Event event(const std::string& what, const std::string& summary) const {
    ics::Event e;
    e.uid = uid(job().ref, what);
    e.sequence = job().revision;
    e.summary = job().customer.name + ": " + summary;
    e.location = place();
    return e;
  }

  std::string shiftLine(const model::Shift& s) const {
    const auto& task = model::taskOf(x.content, s.task);
    std::string line =
        base::isoClock(s.start.minutes) + "-" + base::isoClock(s.end.minutes) + " " + task.name;
    if (s.deck) line += ", " + job().areas[*s.deck].name;
    if (task.isPerCoat || task.isForLateCoat)
      line += ", " + w("job_calendar.coat", {{"n", std::to_string(s.pass)}});
    else if (s.pass > 0) line += ", " + w("job_calendar.grit", {{"n", std::to_string(s.pass)}});
    return line;
  }

  /// 'number' counts the crew's days from 1, so that a day that moves keeps its event.
  ics::Event crewDay(const sheets::Day& day, std::size_t number) const {
    std::vector<std::string> tasks, lines;
    for (const auto* s : day.shifts) {
      const auto& name = model::taskOf(x.content, s->task).name;
      base::addOnce(tasks, name);
      lines.push_back(shiftLine(*s));
    }
    ics::Event e = event("crew-" + std::to_string(number), base::joined(tasks));
    e.summary = job().ref + " " + e.summary;
    e.description = base::joined(lines, "\n");
    const auto there = sheets::onSite(day);
    e.when = ics::Span{utc({day.date, there.from}), utc({day.date, there.until})};
    e.isBusy = true;
    return e;
  }

  /// Of one series for all the years: next year's job goes on with it, and as it was quoted later its
  /// sequence is higher.
  ics::Event visit(base::Date day) const {
    const int months = x.c.product->times.maintenanceMonths;
    ics::Event e =
        event("maintenance", months == 12 ? w("job_calendar.yearly_visit") : w("job_calendar.visit"));
    e.uid = uid(firstRef(), "maintenance");
    e.sequence += static_cast<int>((job().quoted - *base::parseDate("2000-01-01")).count());
    e.when = ics::Days{day, day};
    e.repeats = ics::Every{months};
    std::vector<std::string> lines{job().ref + ": " + x.c.product->name};
    if (!job().colour.empty()) lines[0] += ", " + job().colour;
    if (!job().customer.phone.empty()) lines.push_back(job().customer.phone);
    e.description = base::joined(lines, "\n");
    return e;
  }
};

std::vector<ics::Event> eventsOf(const model::JobResult& x) {
  const Maker make{x};
  std::vector<ics::Event> events;
  for (const auto& day : sheets::daysOf(x, make.w)) events.push_back(make.crewDay(day, events.size() + 1));
  for (const auto& e : x.plan.events) {
    if (e.name == "furniture") {
      ics::Event back = make.event("furniture", make.w("job_calendar.furniture"));
      const auto at = make.utc(e.at);
      back.when = ics::Span{at, at + std::chrono::hours{1}};
      events.push_back(back);
    } else if (e.name == "first_wash") {
      ics::Event wash = make.event("first-wash", make.w("job_calendar.first_wash"));
      wash.when = ics::Days{e.at.day, e.at.day};
      events.push_back(wash);
    } else if (e.name == "maintenance") {
      events.push_back(make.visit(e.at.day));
    }
  }
  return events;
}

}  // namespace

std::string jobCalendar(const model::JobResult& x, const std::string& before) {
  const bool isLost = model::progressOf(x.c.job) == model::Progress::Declined;
  return ics::writeOver(before, x.c.job.ref + "-", isLost ? std::vector<ics::Event>{} : eventsOf(x),
                        x.c.job.quoted);
}

}  // namespace app
