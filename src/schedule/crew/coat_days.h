// The coats of some units, day after day from a given one: as many as a day holds, in the order of the site.
#pragma once

#include "schedule/crew/round.h"

namespace schedule {

/// What the search decides about coats.
struct CoatChoice {
  Heed heed = Heed::All;
  bool sameDay = false;  // a second coat may wait on site for the first to dry
};

class CoatDays {
 public:
  /// 'last' is done for the whole job after the coats, on their last day.
  CoatDays(const Desk& desk, const Work& work, const std::vector<Piece>& last);

  /// Adds the coats of units [from, until) to the schedule. The first day is 'anchor'; it begins with what
  /// the schedule already holds of it, which ends at its last duty, and not before that minute. False where
  /// the anchor holds no coat, or the coats do not all find a day.
  bool place(Schedule& schedule, std::size_t from, std::size_t until, base::Date anchor, int notBefore,
             const CoatChoice& choice);

 private:
  std::optional<Round> round(const Schedule& schedule, base::Date day, int from, bool isBegun);
  /// By the first so many of the crew, so that nobody works six hours on end.
  std::optional<Round> attempt(const Schedule& schedule, base::Date day, int from,
                               const std::vector<std::size_t>& units, bool isBegun, int people);
  int minutesThere(const Schedule& schedule, const Round& round, bool isBegun) const;
  /// All rest before a unit that would end later than 'spell' minutes after their arrival. 'late' tells which
  /// units are sanded as past the longest wait; empty for those that are so whenever they begin.
  std::optional<Round> roundOf(const Schedule& schedule, base::Date day, int from,
                               const std::vector<std::size_t>& units, bool isBegun, int people, int spell,
                               const std::vector<bool>& late = {});
  Round byAsFew(Round round, const Schedule& schedule, base::Date day, int from);
  int lastMinutes(int people) const { return lastMinutes_[static_cast<std::size_t>(people) - 1]; }
  bool couldFit(const std::vector<std::size_t>& units, base::Date day, int from, int people) const;
  void addItem(Round& round, const Schedule& schedule, std::size_t u, base::LocalTime from,
               bool isTakenForLate) const;
  std::optional<int> dustFrom(const Round& round, const Schedule& schedule, base::Date day, int from) const;
  FlowRules rulesFor(const Schedule& schedule, const std::vector<std::size_t>& units, base::Date day,
                     bool isBegun, int people) const;
  std::optional<BoardSpan> dryBoardsBeside(const Schedule& schedule, std::size_t unit,
                                           const std::vector<std::size_t>& today, base::LocalTime at) const;
  bool isPastLongestWait(const Schedule& schedule, std::size_t unit, base::LocalTime at) const;
  std::vector<bool> lateOnes(const Round& round, const Schedule& schedule, base::Date day) const;
  bool mayBeCoated(const Schedule& schedule, std::size_t unit, base::Date day,
                   const std::vector<std::size_t>& today) const;
  /// Whether the way of a unit is open at a moment; 'later' get their next coat later in the same round.
  bool isReached(const Schedule& schedule, std::size_t unit, base::LocalTime at,
                 const std::vector<std::size_t>& later) const;
  DayPlan dayWith(const Schedule& schedule, base::Date day, const Round& round, bool isBegun) const;
  void add(Schedule& schedule, base::Date day, Round round, bool isNewDay);
  const LaidCoat* lastCoat(const Schedule& schedule, std::size_t unit) const;
  int coatsLeft(std::size_t unit) const {
    return static_cast<int>(work_.units[unit].coats.size()) - done_[unit];
  }

  /// The units that come before one: what drips on it, and what is left over it.
  struct Earlier {
    std::vector<std::size_t> above, behind;
  };

  const Desk& desk_;
  const Work& work_;
  std::vector<int> lastMinutes_;  // by people: of one, of two, ...
  std::vector<Earlier> earlier_;  // by unit
  CoatChoice choice_;
  std::size_t from_ = 0, until_ = 0;
  std::vector<int> done_;
};

}  // namespace schedule
