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
  DayOfCrew(DayPlan day, const Calendar& calendar, int people)
      : day_(std::move(day)), calendar_(calendar), people_(static_cast<std::size_t>(people)) {}

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

  /// A long day ends later if someone has no other time to rest.
  void makeRoomForRest() {
    const int rest = calendar_.rest();
    const int latest = calendar_.day().until + calendar_.evening() - rest;
    if (rest == 0 || day_.home - day_.arrive <= longestSpell || day_.home > latest) return;
    for (std::size_t person = 0; person < people_; ++person) {
      const auto free = gaps(person, morning(), day_.home);
      const bool canRest = std::any_of(free.begin(), free.end(),
                                       [&](const Span& gap) { return gap.until - gap.from >= rest; });
      if (hasRest(person) || canRest) continue;
      day_.home += rest;
      return;
    }
  }

  /// Everyone rests once in a wait that is long enough.
  DayPlan told() {
    std::vector<model::Duty> idle;
    for (std::size_t person = 0; person < people_; ++person) {
      bool hasRested = calendar_.rest() == 0 || hasRest(person);
      for (auto gap : gaps(person, morning(), day_.home)) {
        if (!hasRested && gap.until - gap.from >= calendar_.rest()) {
          idle.push_back(duty(What::Rest, gap.from, gap.from + calendar_.rest(), person));
          gap.from += calendar_.rest();
          hasRested = true;
        }
        if (gap.until > gap.from) idle.push_back(duty(What::Wait, gap.from, gap.until, person));
      }
    }
    day_.duties.insert(day_.duties.end(), idle.begin(), idle.end());
    std::stable_sort(day_.duties.begin(), day_.duties.end(),
                     [](const auto& a, const auto& b) { return a.shift.start < b.shift.start; });
    return std::move(day_);
  }

  int home() const { return day_.home; }

 private:
  int morning() const { return day_.arrive + calendar_.morning(); }

  bool hasRest(std::size_t person) const {
    return std::any_of(day_.duties.begin(), day_.duties.end(), [&](const model::Duty& duty) {
      return duty.what == What::Rest && takesPart(duty, person);
    });
  }

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
};

}  // namespace

void closeDay(DayPlan& day, const Calendar& calendar, int people) {
  DayOfCrew late(day, calendar, people), early = late;
  late.makeRoomForRest();
  if (early.packEarly()) {
    early.makeRoomForRest();
    if (early.home() < late.home()) {
      day = early.told();
      return;
    }
  }
  day = late.told();
}

}  // namespace schedule
