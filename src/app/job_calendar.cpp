#include "app/job_calendar.h"

#include "ics/calendar.h"
#include "model/lookup.h"
#include "model/wiping.h"
#include "plan/zone.h"
#include "sheets/words.h"

#include <algorithm>

namespace app {
namespace {

std::string joined(const std::vector<std::string>& words, const char* between) {
  std::string all;
  for (const auto& w : words) all += (all.empty() ? "" : between) + w;
  return all;
}

struct Maker {
  const Telling& told;
  const Computation& x = told.x;
  sheets::Words w{*told.c.region, *told.language};

  const model::Job& job() const { return told.c.job; }

  std::chrono::sys_seconds utc(base::LocalTime t) const { return plan::localToUtc(job().site.timezone, t); }

  /// From the job's number and the firm's own domain; 'what' tells the events of a job apart.
  std::string uid(const std::string& what) const {
    const auto& email = told.c.brand.email;
    const auto at = email.find('@');
    return job().ref + "-" + what + "@" +
           (at == std::string::npos ? "planksheaf.invalid" : email.substr(at + 1));
  }

  std::string place() const {
    return joined(job().site.address.empty() ? job().customer.address : job().site.address, ", ");
  }

  ics::Event event(const std::string& what, const std::string& summary) const {
    ics::Event e;
    e.uid = uid(what);
    e.summary = job().customer.name + ": " + summary;
    e.location = place();
    return e;
  }

  std::string shiftLine(const model::Shift& s) const {
    const auto& task = model::taskOf(*told.content, s.task);
    std::string line =
        base::isoClock(s.start.minutes) + "-" + base::isoClock(s.end.minutes) + " " + task.name;
    if (s.deck) line += ", " + job().areas[*s.deck].name;
    if (task.isPerCoat || task.isForLateCoat)
      line += ", " + w("job_calendar.coat", {{"n", std::to_string(s.pass)}});
    else if (s.pass > 0) line += ", " + w("job_calendar.grit", {{"n", std::to_string(s.pass)}});
    return line;
  }

  /// 'number' counts the crew's days from 1, so that a day that moves keeps its event.
  ics::Event crewDay(base::Date day, std::size_t number) const {
    std::vector<std::string> tasks, lines;
    std::optional<base::LocalTime> start, end;
    for (const auto& s : x.plan.shifts) {
      if (s.start.day != day) continue;
      start = start ? std::min(*start, s.start) : s.start;
      end = end ? std::max(*end, s.end) : s.end;
      const auto& name = model::taskOf(*told.content, s.task).name;
      if (std::find(tasks.begin(), tasks.end(), name) == tasks.end()) tasks.push_back(name);
      lines.push_back(shiftLine(s));
    }
    if (const auto wiping = model::wipingOn(x.plan, *told.content, told.c.product->times, day); wiping && end)
      end = std::max(*end, {day, wiping->until});
    ics::Event e = event("crew-" + std::to_string(number), joined(tasks, ", "));
    e.summary = job().ref + " " + e.summary;
    e.description = joined(lines, "\n");
    e.when =
        ics::Span{utc(start.value_or(base::LocalTime{day, 0})), utc(end.value_or(base::LocalTime{day, 0}))};
    e.isBusy = true;
    return e;
  }

  ics::Event visit(base::Date day) const {
    const int months = told.c.product->times.maintenanceMonths;
    ics::Event e =
        event("maintenance", months == 12 ? w("job_calendar.yearly_visit") : w("job_calendar.visit"));
    e.when = ics::Days{day, day};
    e.repeats = ics::Every{months};
    std::vector<std::string> lines{job().ref + ": " + told.c.product->name};
    if (!job().colour.empty()) lines[0] += ", " + job().colour;
    if (!job().customer.phone.empty()) lines.push_back(job().customer.phone);
    e.description = joined(lines, "\n");
    return e;
  }
};

}  // namespace

std::string jobCalendar(const Telling& told) {
  const Maker make{told};
  const auto& x = told.x;
  std::vector<ics::Event> events;
  for (std::size_t i = 0; i < x.plan.days.size(); ++i) events.push_back(make.crewDay(x.plan.days[i], i + 1));
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
  return ics::write(events, x.c.job.quoted);
}

}  // namespace app
