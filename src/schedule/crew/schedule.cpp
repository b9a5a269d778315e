#include "schedule/crew/schedule.h"

#include "model/crew_time.h"

#include <algorithm>
#include <numeric>

namespace schedule {
namespace {

using base::LocalTime;
using What = model::Duty::What;

model::Duty dutyOf(What what, base::Date day, int from, int until, const std::vector<std::size_t>& who) {
  return {what, {{}, {}, 0, {day, from}, {day, until}, static_cast<int>(who.size()), who, 0}, 0};
}

/// One day of work by all together.
class GangDay {
 public:
  GangDay(base::Date date, int from, const Calendar& calendar, int people)
      : calendar_(calendar), who_(everyone(people)), now_(from) {
    day_.date = date;
    day_.people = people;
    day_.arrive = from - calendar.morning();
  }

  /// So many minutes are planned for this day at most. Returns by how many they are more than it holds.
  int limit(int minutes) {
    const int most = calendar_.day().until - now_;
    hasRest_ = calendar_.rest() > 0 &&
               std::min(minutes, most) + calendar_.morning() + calendar_.evening() > longestSpell;
    const int room = hasRest_ ? most - calendar_.rest() : most;
    left_ = std::min(minutes, room);
    restAt_ = std::clamp(calendar_.restAt(), now_, day_.arrive + longestSpell);
    return minutes - left_;
  }

  void tighten(int minutes) { day_.tighter = minutes; }

  /// Takes as much of the piece as the day holds; 0 = none.
  int take(const Piece& piece, int wanted) {
    int taken = std::min(wanted, left_);
    if (taken <= 0 || (taken < leastPiece && taken < wanted)) return 0;
    int rest = taken;
    while (rest > 0) {
      int part = rest;
      if (hasRest_ && now_ + part > restAt_) {
        part = std::max(0, restAt_ - now_);
        const bool isNearlyDone = rest - part < leastPiece && now_ + rest <= day_.arrive + longestSpell;
        if (isNearlyDone) part = rest;
        else if (part < leastPiece) part = 0;
      }
      if (part == 0) {
        takeRest();
        continue;
      }
      add(piece, part);
      rest -= part;
    }
    left_ -= taken;
    return taken;
  }

  int now() const { return now_; }
  DayPlan done() {
    if (hasRest_) takeRest();
    day_.home = now_ + calendar_.evening();
    return std::move(day_);
  }

 private:
  void add(const Piece& piece, int minutes) {
    model::Shift shift{piece.task,
                       piece.deck,
                       piece.pass,
                       {day_.date, now_},
                       {day_.date, now_ + minutes},
                       static_cast<int>(who_.size()),
                       who_,
                       piece.part};
    now_ += minutes;
    if (!day_.duties.empty()) {
      auto& last = day_.duties.back();
      const bool isSame = last.what == What::Task && last.shift.task == shift.task &&
                          last.shift.deck == shift.deck && last.shift.pass == shift.pass &&
                          last.shift.part == shift.part;
      if (isSame) {
        last.shift.end = shift.end;
        return;
      }
    }
    day_.duties.push_back({What::Task, std::move(shift), 0});
  }
  void takeRest() {
    day_.duties.push_back(dutyOf(What::Rest, day_.date, now_, now_ + calendar_.rest(), who_));
    now_ += calendar_.rest();
    hasRest_ = false;
  }

  const Calendar& calendar_;
  std::vector<std::size_t> who_;
  DayPlan day_;
  int now_;
  int left_ = 0, restAt_ = 0;
  bool hasRest_ = false;
};

/// Takes so many minutes off pieces from one on, five off each of those that are rounded up most. Whether it
/// can.
bool tighten(std::vector<Piece>& pieces, std::size_t from, int minutes) {
  std::vector<Piece*> some;
  for (std::size_t i = from; i < pieces.size(); ++i) {
    if (pieces[i].minutes > leastPiece) some.push_back(&pieces[i]);
  }
  const auto roundedUp = [](const Piece* piece) { return Effort{piece->minutes} * 100 - piece->exact; };
  std::stable_sort(some.begin(), some.end(),
                   [&](const Piece* a, const Piece* b) { return roundedUp(a) > roundedUp(b); });
  const auto many = static_cast<std::size_t>(minutes / model::clockStep);
  if (some.size() < many) return false;
  for (std::size_t i = 0; i < many; ++i) some[i]->minutes -= model::clockStep;
  return true;
}

}  // namespace

std::vector<std::size_t> everyone(int people) {
  std::vector<std::size_t> all(static_cast<std::size_t>(people));
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

LocalTime Schedule::end() const {
  return days.empty() ? LocalTime{} : LocalTime{days.back().date, days.back().home};
}

const LaidCoat* Schedule::before(const LaidCoat& coat) const {
  const LaidCoat* last = nullptr;
  for (const auto& other : coats) {
    if (other.unit == coat.unit && other.coat + 1 == coat.coat && (!last || last->end < other.end))
      last = &other;
  }
  return last;
}

LocalTime fill(Schedule& schedule, std::vector<Piece> pieces, LocalTime from, const Calendar& calendar,
               int people, const Quotas& quotas, std::vector<LocalTime>* ends) {
  int all = minutesOf(pieces);
  std::size_t next = 0;
  int left = pieces.empty() ? 0 : pieces.front().minutes;
  base::Date date = calendar.workday(from.day);
  LocalTime end = from;
  const int evening = calendar.day().until - leastPiece;
  for (std::size_t n = 0; next < pieces.size(); ++n) {
    int start = date == from.day ? std::max(from.minutes, calendar.day().from) : calendar.day().from;
    start = model::upToStep(start);
    if (start > evening) {
      date = calendar.workday(date + std::chrono::days{1});
      continue;
    }
    GangDay day(date, start, calendar, people);
    const int over = day.limit(n < quotas.size() ? std::min(all, quotas[n]) : all);
    pieces[next].minutes = left;
    if (over > 0 && over <= mostTighter && tighten(pieces, next, over)) {
      all -= over;
      left = pieces[next].minutes;
      day.tighten(over);
    }
    bool isAny = false;
    while (next < pieces.size()) {
      const int taken = day.take(pieces[next], left);
      if (taken == 0 && left > 0) break;
      isAny = true;
      left -= taken;
      all -= taken;
      end = {date, day.now()};
      if (left > 0) break;
      if (ends) ends->push_back(end);
      if (++next < pieces.size()) left = pieces[next].minutes;
    }
    if (isAny) schedule.days.push_back(day.done());
    date = calendar.workday(date + std::chrono::days{1});
  }
  return end;
}

}  // namespace schedule
