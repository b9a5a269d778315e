#include "schedule/crew/choice.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace schedule {
namespace {

using base::LocalTime;
using std::chrono::days;

/// Coats past their window, coats outside the ideal one; days on site and days from first to last taken
/// together; times the oil is got out; the end. Less is better.
using Badness = std::tuple<int, int, std::int64_t, std::size_t, LocalTime>;

Badness badnessOf(const Course& course) {
  int missed = 0, outside = 0;
  for (const auto& train : course.trains) {
    missed += train.worst == Window::Missed || train.heed != Heed::All;
    outside += train.worst != Window::Ideal;
  }
  std::int64_t sum = 0;
  base::Date day{};
  LocalTime last;
  for (const auto& shift : course.shifts) {
    sum += shift.start.day != day;
    day = shift.start.day;
    last = std::max(last, shift.end);
  }
  if (!course.shifts.empty()) sum += (day - course.shifts.front().start.day).count();
  return {missed, outside, sum, course.sessions.size(), last};
}

/// No worse than the other, with fewer days on site, or fewer from first to last.
bool savesVisits(const Badness& a, const Badness& b) {
  return std::tie(std::get<0>(a), std::get<1>(a), std::get<2>(a)) <
         std::tie(std::get<0>(b), std::get<1>(b), std::get<2>(b));
}

/// The days on which decks get their first coat, but for the first of them; not more than three.
std::vector<base::Date> laterStarts(const Course& course) {
  constexpr std::size_t most = 3;
  std::set<base::Date> starts;
  for (const auto& train : course.trains) starts.insert(train.start.day);
  std::vector<base::Date> later(starts.begin(), starts.end());
  if (!later.empty()) later.erase(later.begin());
  if (later.size() > most) later.resize(most);
  return later;
}

}  // namespace

Course bestCourse(const Work& work, const SessionMaker& maker, const model::Estimate& e, LocalTime now) {
  Course best = takeCourse(work, maker, e, now, {CoatsWait::ForAll, {}});
  if (best.hasWaited) {
    for (const auto wait : {CoatsWait::ForDust, CoatsWait::ForNone}) {
      Course other = takeCourse(work, maker, e, now, {wait, {}});
      if (badnessOf(other) < badnessOf(best)) best = std::move(other);
    }
  }
  // A deck that could be coated sooner than the others shares their visits instead where that saves one.
  const CoatsWait wait = best.wait;
  for (const base::Date day : laterStarts(best)) {
    Course other = takeCourse(work, maker, e, now, {wait, day});
    if (savesVisits(badnessOf(other), badnessOf(best))) best = std::move(other);
  }
  return best;
}

LocalTime finishedOf(const Course& course, LocalTime start) {
  LocalTime end = start;
  for (const auto& session : course.sessions) end = std::max(end, session.shifts.back().end);
  return course.sessions.empty() && !course.shifts.empty() ? course.shifts.back().end : end;
}

std::vector<model::Alternative> alternativesTo(const Course& course, const Work& work,
                                               const SessionMaker& maker, const model::Estimate& e,
                                               LocalTime start) {
  constexpr int daysToTry = 4;
  constexpr std::size_t most = 3;
  struct Other {
    Badness badness;
    model::Alternative told;
  };
  std::vector<Other> others;
  if (course.trains.empty()) return {};
  const auto firstStroke = [](const Course& one) {
    LocalTime first = one.trains.front().start;
    for (const auto& train : one.trains) first = std::min(first, train.start);
    return first;
  };
  LocalTime latest = firstStroke(course);
  for (int i = 0; i < daysToTry; ++i) {
    const Course other = takeCourse(work, maker, e, start, {course.wait, latest.day + days{1}});
    latest = firstStroke(other);
    const Badness badness = badnessOf(other);
    model::Alternative told{latest, finishedOf(other, start), 0, "later"};
    for (const auto& train : other.trains) told.misses += train.worst != Window::Ideal;
    if (std::get<0>(badness) > std::get<0>(badnessOf(course))) told.reason = "weather";
    if (std::get<1>(badness) > std::get<1>(badnessOf(course))) told.reason = "window";
    others.push_back({badness, told});
  }
  std::stable_sort(others.begin(), others.end(),
                   [](const auto& a, const auto& b) { return a.badness < b.badness; });
  std::vector<model::Alternative> best;
  for (const auto& other : others) {
    if (best.size() < most) best.push_back(other.told);
  }
  return best;
}

}  // namespace schedule
