#include "plan/coats.h"

#include "plan/zone.h"

#include <algorithm>
#include <span>

namespace plan {
namespace {

using Batch = std::span<const DeckCoats>;

int minutesOf(const DeckCoats& deck, std::size_t coat) {
  int sum = 0;
  if (coat < deck.coats.size()) {
    for (const auto& t : deck.coats[coat]) sum += t.minutes;
  }
  return sum;
}

int minutesOf(Batch batch, std::size_t coat) {
  int sum = 0;
  for (const auto& deck : batch) sum += minutesOf(deck, coat);
  return sum;
}

/// Decks in order, as many as one day's coating hours hold; a deck that is too large for a day stands alone.
std::vector<Batch> batchesOf(const std::vector<DeckCoats>& decks, int dayMinutes) {
  std::vector<Batch> batches;
  std::size_t from = 0;
  int sum = 0;
  for (std::size_t i = 0; i < decks.size(); ++i) {
    int longest = 0;
    for (std::size_t n = 0; n < decks[i].coats.size(); ++n)
      longest = std::max(longest, minutesOf(decks[i], n));
    if (i > from && sum + longest > dayMinutes) {
      batches.push_back(Batch(decks).subspan(from, i - from));
      from = i;
      sum = 0;
    }
    sum += longest;
  }
  if (from < decks.size()) batches.push_back(Batch(decks).subspan(from));
  return batches;
}

/// How a batch lies in the calendar when its first coat starts on or after a given day.
struct Try {
  std::vector<model::Shift> shifts;
  std::vector<model::Event> events;
  std::vector<model::Miss> misses;
  int badness = 0;  // 0 every coat in its ideal window, 1 inside the longest wait, 2 beyond it
};

struct CoatPlacer {
  const model::Case& c;
  const Calendar& calendar;
  Span coating;

  const std::string& zone() const { return c.job.site.timezone; }

  bool crossesDayOff(base::LocalTime from, base::LocalTime to) const {
    for (base::Date d = from.day + std::chrono::days{1}; d < to.day; d += std::chrono::days{1}) {
      if (!calendar.isWorkday(d)) return true;
    }
    return false;
  }

  /// Where a coat of a batch can begin: not before 'earliest', and early enough in the day to be finished
  /// that day unless it is too long for any.
  base::LocalTime beginning(base::LocalTime earliest, int minutes) const {
    const bool isLong = minutes > calendar.workable(coating);
    base::LocalTime t = calendar.next(earliest, coating);
    while (isLong ? t.minutes > calendar.next({t.day, 0}, coating).minutes
                  : !calendar.fitsOneDay(t, minutes, coating)) {
      t = calendar.next({t.day + std::chrono::days{1}, 0}, coating);
    }
    return t;
  }

  Try place(Batch batch, base::LocalTime from, base::Hours wait) const {
    Try result;
    std::vector<base::LocalTime> ends(batch.size(), from), firstEnds(batch.size(), from);
    std::size_t coats = 0;
    for (const auto& deck : batch) coats = std::max(coats, deck.coats.size());
    for (std::size_t n = 0; n < coats; ++n) {
      // Each deck waits from its own last stroke. A deck later in the batch is reached later by what lies
      // before it.
      base::LocalTime earliest = from;
      int before = 0;
      for (std::size_t i = 0; i < batch.size(); ++i) {
        if (n >= batch[i].coats.size()) continue;
        if (n > 0) {
          const auto ready = after(zone(), ends[i], wait);
          earliest = std::max(earliest, base::plusMinutes(ready, -before));
        }
        before += minutesOf(batch[i], n);
      }
      placeCoat(batch, n, beginning(earliest, minutesOf(batch, n)), wait, ends, firstEnds, result);
      from = *std::max_element(ends.begin(), ends.end());
    }
    return result;
  }

  void placeCoat(Batch batch, std::size_t n, base::LocalTime now, base::Hours wait,
                 std::vector<base::LocalTime>& ends, std::vector<base::LocalTime>& firstEnds,
                 Try& result) const {
    model::Event start{"coat_" + std::to_string(n + 1) + "_start", {}, 0, {}};
    model::Event end{"coat_" + std::to_string(n + 1) + "_end", {}, 0, {}};
    for (std::size_t i = 0; i < batch.size(); ++i) {
      if (n >= batch[i].coats.size()) continue;
      bool isBegun = false;
      const base::LocalTime lastEnd = ends[i], firstEnd = firstEnds[i];
      for (const auto& task : batch[i].coats[n]) {
        if (task.minutes == 0) continue;
        base::LocalTime from = now;
        if (n > 0 && task.isWet && !isBegun) from = std::max(now, after(zone(), lastEnd, wait));
        for (const auto& part : calendar.fill(from, task.minutes, coating)) {
          result.shifts.push_back({task.task, batch[i].deck, static_cast<int>(n) + 1, part.start, part.end});
          if (task.isWet && !isBegun) {
            isBegun = true;
            if (start.decks.empty()) start.at = part.start;
            firstEnds[i] = part.end;
            if (n > 0) judge(batch[i].deck, static_cast<int>(n) + 1, firstEnd, lastEnd, part.start, result);
          }
          now = part.end;
        }
      }
      ends[i] = now;
      start.decks.push_back(batch[i].deck);
      end.decks.push_back(batch[i].deck);
    }
    end.at = now;
    result.events.push_back(start);
    result.events.push_back(end);
  }

  /// 'firstEnd' is the end of the coat's first day before: on a deck that took several days the boards of the
  /// first have waited longest.
  void judge(std::size_t deck, int coat, base::LocalTime firstEnd, base::LocalTime lastEnd,
             base::LocalTime start, Try& result) const {
    const auto& t = c.product->times;
    const bool tookDays = firstEnd.day != lastEnd.day;
    const base::Hours least = between(zone(), lastEnd, start);
    const base::Hours most = tookDays ? between(zone(), firstEnd, start) : least;
    if (least >= t.recoatIdealFrom && most <= t.recoatIdealTo) return;
    const bool isLate = most > t.recoatIdealTo;
    model::Miss miss{
        deck, coat, isLate ? most : least, isLate, most > t.recoatMax, model::Miss::Why::CoatingHours};
    if (tookDays) miss.why = model::Miss::Why::LargeDeck;
    else if (crossesDayOff(lastEnd, start)) miss.why = model::Miss::Why::DaysOff;
    result.badness = std::max(result.badness, miss.isPastMax ? 2 : 1);
    result.misses.push_back(miss);
  }

  /// Tries the coming working days for the first coat, and both waits: into the ideal window, or as soon as
  /// the product allows. The first that keeps every coat in its window wins; else the best of them.
  Try best(Batch batch, base::LocalTime ready) const {
    constexpr int daysToTry = 14;
    const auto& t = c.product->times;
    Try best;
    best.badness = 3;
    base::LocalTime from = ready;
    for (int i = 0; i < daysToTry && best.badness > 0; ++i) {
      for (const auto wait : {t.recoatIdealFrom, t.recoatMin}) {
        Try here = place(batch, from, wait);
        if (here.badness < best.badness) best = std::move(here);
      }
      from = calendar.next({from.day + std::chrono::days{1}, 0}, coating);
    }
    return best;
  }
};

}  // namespace

void placeCoats(model::Plan& plan, const std::vector<DeckCoats>& decks, const model::Case& c,
                const Calendar& calendar, Span coating, base::LocalTime ready) {
  const CoatPlacer placer{c, calendar, coating};
  for (const auto& batch : batchesOf(decks, calendar.workable(coating))) {
    const Try placed = placer.best(batch, ready);
    plan.shifts.insert(plan.shifts.end(), placed.shifts.begin(), placed.shifts.end());
    plan.events.insert(plan.events.end(), placed.events.begin(), placed.events.end());
    plan.misses.insert(plan.misses.end(), placed.misses.begin(), placed.misses.end());
    ready = placed.shifts.back().end;
  }
}

}  // namespace plan
