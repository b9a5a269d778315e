// Finding things in the plain structs.
#pragma once

#include "model/job.h"
#include "model/plan.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

namespace model {

/// True when a job's 'work:' names this kind.
inline bool asksFor(const std::vector<Work>& work, Work one) {
  return std::find(work.begin(), work.end(), one) != work.end();
}

/// The product's colour that the job names, as a screen shows it; null where its maker does not say.
inline const NamedColour* screenColour(const JobInputs& c) {
  const auto& all = c.product->colours;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name == c.job.colour; });
  return found == all.end() ? nullptr : &*found;
}

/// The customer has yet to choose one of the product's colours.
inline bool isColourOpen(const JobInputs& c) {
  return c.job.colour.empty() && !c.product->colours.empty() && asksFor(c.job.work, Work::Oil);
}

/// A job whose coats are recorded was accepted and begun, so it counts as done.
inline Progress progressOf(const Job& job) {
  if (!job.done.empty() || job.doneOn) return Progress::Done;
  if (job.declined) return Progress::Declined;
  return job.accepted ? Progress::Accepted : Progress::Quoted;
}

/// Nobody accepts what has begun.
inline base::Date validUntil(const Job& job) {
  const base::Date last = job.quoted + std::chrono::days{job.validDays};
  return job.start > job.quoted ? std::min(last, job.start - std::chrono::days{1}) : last;
}

/// The task of an id that a labour line or a shift carries; such ids always come from the content.
inline const Task& taskOf(const Content& content, const std::string& id) {
  for (const auto& task : content.tasks) {
    if (task.id == id) return task;
  }
  throw std::logic_error("internal error: no task '" + id + "'");
}

/// When everybody rests: half way through the working time, from a quarter of an hour on.
inline ClockSpan breakOf(const Crew& crew) {
  const int middle = crew.startMinutes + (crew.endMinutes - crew.startMinutes - crew.breakMinutes) / 2;
  return {middle / 15 * 15, middle / 15 * 15 + crew.breakMinutes};
}

/// The public holidays of a year on which the crew of a job stays at home.
inline std::vector<base::Holiday> holidaysOff(const Job& job, const Region& region, int year) {
  if (job.crew.worksOnHolidays) return {};
  auto off = base::holidaysOf({region.holidays, region.states}, job.site.state, year);
  const auto& worked = job.crew.workedHolidays;
  std::erase_if(off, [&](const base::Holiday& h) {
    return std::find(worked.begin(), worked.end(), h.rule->name) != worked.end();
  });
  return off;
}

/// Treated for certain, or a timber that often is.
inline bool mayBeTreated(const Deck& deck, const Content& content) {
  return deck.isTreated || content.timbers.at(deck.timber).mayBeTreated;
}

/// Boards that may hold arsenic are sanded by people with papers for it only.
inline bool maySandTreated(const Job& job) {
  return std::find(job.licensedFor.begin(), job.licensedFor.end(), "treated") != job.licensedFor.end();
}

/// The first of its kind; null where there is none, as of a visit after a job without coats.
inline const Event* eventOf(const Plan& plan, Moment what) {
  const auto found =
      std::find_if(plan.events.begin(), plan.events.end(), [&](const Event& e) { return e.what == what; });
  return found == plan.events.end() ? nullptr : &*found;
}

/// Whether a tool is used for a task on a deck; nothing = the whole job.
inline bool isUsedFor(const Tool& tool, const std::string& task, std::optional<std::size_t> deck,
                      const Job& job, const Content& content) {
  return std::find(tool.tasks.begin(), tool.tasks.end(), task) != tool.tasks.end() &&
         (tool.isForTreated || !deck || !mayBeTreated(job.areas.at(*deck), content));
}

/// True where the sun reaches the deck at some time of the span, clouds aside.
inline bool isSunlit(const Deck& deck, ClockSpan span) {
  return !deck.isCovered && (!deck.sun || (deck.sun->from < span.until && deck.sun->until > span.from));
}

/// Levels of a day's noise, dB(A), from which ears are looked after and from which they are protected. Where
/// the region names none: Directive 2003/10/EC, art. 3; 29 CFR 1910.95 (c) and (b).
inline int lowerLevel(const NoiseLimits& noise) {
  return noise.lower.value_or(noise.rule == NoiseRule::Osha ? 85 : 80);
}
inline int upperLevel(const NoiseLimits& noise) {
  return noise.upper.value_or(noise.rule == NoiseRule::Osha ? 90 : 85);
}

/// The limits at work in force on a day.
inline const WorkLimits& limitsOn(const Region& region, base::Date day) {
  const auto after = region.laterLimits.upper_bound(day);
  return after == region.laterLimits.begin() ? region.limits : std::prev(after)->second;
}

/// A task of a coat lays product when it is measured along the edges or over the surface that takes product;
/// blowing the boards clean before a coat and wiping it off do not.
inline bool laysProduct(const Task& task) {
  return task.isPerCoat && !task.isWiping &&
         (task.measure == Measure::Wetted || task.measure == Measure::CutIn);
}

/// The authority that a region names for 'safety', 'waste' and so on; null where it names none.
inline const std::string* authorityFor(const Region& region, const std::string& about) {
  for (const auto& authority : region.authorities) {
    if (authority.about == about) return &authority.name;
  }
  return nullptr;
}

/// A source that says so: what it gives is not told as a fact.
inline bool isFromMemory(const std::string& source) {
  return source.find("from memory") != std::string::npos;
}

}  // namespace model
