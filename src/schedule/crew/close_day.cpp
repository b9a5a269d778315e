// A day with a coat told for everyone from arrival to home: when they rest, wait and pack down.
#include "schedule/crew/schedule.h"

#include <algorithm>

namespace schedule {
namespace {

using What = model::Duty::What;

bool takesPart(const model::Duty& duty, std::size_t person) {
  const auto& who = duty.shift.who;
  return std::find(who.begin(), who.end(), person) != who.end();
}

class DayOfCrew {
 public:
  DayOfCrew(DayPlan day, const Calendar& calendar, int wipeWait)
      : day_(std::move(day)),
        calendar_(calendar),
        people_(static_cast<std::size_t>(day_.people)),
        wipeWait_(wipeWait) {}

  /// Those who are free while the last strips soak in pack down for all, but for pads and rags. Returns
  /// whether they can.
  bool packEarly() {
    constexpr int last = 5;  // minutes after the last wiping
    if (calendar_.evening() <= last) return false;
    const int end = day_.home - calendar_.evening();
    int lastStroke = 0;
    for (const auto& strip : day_.strips) lastStroke = std::max(lastStroke, strip.lay.end);
    std::vector<std::pair<int, Slot>> free;
    for (std::size_t person = 0; person < people_; ++person) {
      Span longest;
      for (const auto& gap : gaps(person, lastStroke, end)) {
        if (gap.until - gap.from > longest.until - longest.from) longest = gap;
      }
      free.push_back({longest.until - longest.from, {longest.from, longest.until, {person}, {}}});
    }
    std::stable_sort(free.begin(), free.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    const int all = (calendar_.evening() - last) * static_cast<int>(people_);
    for (std::size_t many = people_; many > 0; --many) {
      const int each = (all + 5 * static_cast<int>(many) - 1) / (5 * static_cast<int>(many)) * 5;
      if (each == 0 || free[many - 1].first < each) continue;
      for (std::size_t i = 0; i < many; ++i) {
        day_.packing.push_back(free[i].second);
        day_.packing.back().end = free[i].second.start + each;
      }
      for (const auto person : everyone(static_cast<int>(people_)))
        day_.packing.push_back({end, end + last, {person}, {}});
      day_.home = end + last;
      return true;
    }
    return false;
  }

  bool isLong() const { return calendar_.rest() > 0 && day_.home - day_.arrive > longestSpell; }

  /// On a long day everyone rests while they wait; whoever would only have to wipe a little later does so.
  void giveRests() {
    if (!isLong()) return;
    for (std::size_t person = 0; person < people_; ++person) giveRest(person);
  }

  /// On a day of over four hours whoever only waits for long enough rests meanwhile.
  void restWhileWaiting() {
    constexpr int halfDay = 4 * 60;  // common practice
    if (calendar_.rest() == 0 || day_.home - day_.arrive <= halfDay) return;
    for (std::size_t person = 0; person < people_; ++person) {
      const auto all = gaps(person, morning(), day_.home);
      const auto gap = std::find_if(all.rbegin(), all.rend(), [&](const Span& free) {
        return free.until - free.from >= calendar_.rest();
      });
      if (gap != all.rend() && !hasRest(person))
        day_.duties.push_back(duty(What::Rest, gap->from, gap->from + calendar_.rest(), person));
    }
  }

  /// A long day ends later if someone has no other time to rest.
  void makeRoomForRest() {
    const int rest = calendar_.rest();
    const int latest = calendar_.day().until + calendar_.evening() - rest;
    if (!lacksRest() || day_.home > latest) return;
    day_.home += rest;
    giveRests();
  }

  /// Whether someone works a long day without a rest.
  bool lacksRest() const {
    if (!isLong()) return false;
    for (std::size_t person = 0; person < people_; ++person) {
      if (!hasRest(person)) return true;
    }
    return false;
  }

  /// Those who work a long day for more than six hours on end.
  int overworked() const {
    int count = 0;
    for (std::size_t person = 0; isLong() && person < people_; ++person) {
      const auto rest = restOf(person);
      count += rest == day_.duties.end() || !parts(rest->shift.start.minutes);
    }
    return count;
  }

  /// Everyone waits when there is nothing to do.
  DayPlan told() {
    std::vector<model::Duty> idle;
    for (std::size_t person = 0; person < people_; ++person) {
      for (const auto& gap : gaps(person, morning(), day_.home))
        idle.push_back(duty(What::Wait, gap.from, gap.until, person));
    }
    day_.overworked = overworked();
    day_.duties.insert(day_.duties.end(), idle.begin(), idle.end());
    std::stable_sort(day_.duties.begin(), day_.duties.end(),
                     [](const auto& a, const auto& b) { return a.shift.start < b.shift.start; });
    return std::move(day_);
  }

  int home() const { return day_.home; }

 private:
  int morning() const { return day_.arrive + calendar_.morning(); }

  /// Whether a rest from a minute on parts the day so that nobody works six hours on end.
  bool parts(int minute) const {
    return minute - day_.arrive <= longestSpell && day_.home - minute - calendar_.rest() <= longestSpell;
  }

  /// Near the middle of the day, and where it parts the day if it can.
  void giveRest(std::size_t person) {
    if (hasRest(person)) return;
    auto all = gaps(person, morning(), day_.home - calendar_.evening());
    const int middle = (day_.arrive + day_.home - calendar_.rest()) / 2;
    std::stable_sort(all.begin(), all.end(), [&](const Span& a, const Span& b) {
      return std::abs(a.from - middle) < std::abs(b.from - middle);
    });
    for (const bool isParting : {true, false}) {
      for (const auto& gap : all) {
        if (parts(gap.from) != isParting) continue;
        const int missing = calendar_.rest() - (gap.until - gap.from);
        if (missing > 0 && !wipeLater(person, gap.until, missing)) continue;
        day_.duties.push_back(duty(What::Rest, gap.from, gap.from + calendar_.rest(), person));
        return;
      }
    }
  }

  /// Moves what a person wipes alone from a minute on, if it is not sticky by then and nothing comes after
  /// it.
  bool wipeLater(std::size_t person, int from, int minutes) {
    const auto isIt = [&](const Slot& slot) {
      return slot.start == from && slot.who == std::vector<std::size_t>{person} &&
             slot.from.on != model::Stand::On::Strip;
    };
    const auto first = std::find_if(day_.strips.begin(), day_.strips.end(),
                                    [&](const auto& strip) { return strip.wipe && isIt(*strip.wipe); });
    if (first == day_.strips.end() || from + minutes > first->lay.end + 2 * wipeWait_) return false;
    const Slot was = *first->wipe;
    if (was.end + minutes > day_.home - calendar_.evening()) return false;
    for (const auto& d : day_.duties) {
      const auto& shift = d.shift;
      if (takesPart(d, person) && shift.start.minutes >= was.end && shift.start.minutes < was.end + minutes)
        return false;
    }
    for (auto& d : day_.duties) {
      if (d.shift.who != was.who || d.shift.start.minutes != from) continue;
      d.shift.start.minutes += minutes;
      d.shift.end.minutes += minutes;
    }
    for (auto& strip : day_.strips) {
      if (strip.wipe != was) continue;
      strip.wipe->start += minutes;
      strip.wipe->end += minutes;
    }
    return true;
  }

  std::vector<model::Duty>::const_iterator restOf(std::size_t person) const {
    return std::find_if(day_.duties.begin(), day_.duties.end(), [&](const model::Duty& duty) {
      return duty.what == What::Rest && takesPart(duty, person);
    });
  }

  bool hasRest(std::size_t person) const { return restOf(person) != day_.duties.end(); }

  /// When a person has nothing to do, in order.
  std::vector<Span> gaps(std::size_t person, int from, int until) const {
    std::vector<Span> busy{{until, until}};
    for (const auto& duty : day_.duties) {
      if (takesPart(duty, person)) busy.push_back({duty.shift.start.minutes, duty.shift.end.minutes});
    }
    for (const auto& slot : day_.packing) {
      if (slot.who.front() == person) busy.push_back({slot.start, slot.end});
    }
    if (day_.packing.empty()) busy.push_back({day_.home - calendar_.evening(), day_.home});
    std::sort(busy.begin(), busy.end(), [](const Span& a, const Span& b) { return a.from < b.from; });
    std::vector<Span> free;
    for (const auto& span : busy) {
      if (std::min(span.from, until) > from) free.push_back({from, std::min(span.from, until)});
      from = std::max(from, span.until);
    }
    return free;
  }

  model::Duty duty(What what, int from, int until, std::size_t person) const {
    return {what, {{}, {}, 0, {day_.date, from}, {day_.date, until}, 1, {person}, 0}, 0};
  }

  DayPlan day_;
  const Calendar& calendar_;
  std::size_t people_;
  int wipeWait_;
};

}  // namespace

void closeDay(DayPlan& day, const Calendar& calendar, int wipeWait) {
  DayOfCrew late(day, calendar, wipeWait);
  late.giveRests();
  DayOfCrew early = late;
  late.makeRoomForRest();
  const bool isSooner = early.packEarly() && !early.lacksRest() && early.home() < late.home();
  DayOfCrew& best = isSooner ? early : late;
  best.restWhileWaiting();
  day = best.told();
}

}  // namespace schedule
