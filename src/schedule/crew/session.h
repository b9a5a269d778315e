// Coats laid one after the other on one day, or one large deck over several: first everything that raises
// dust, then deck by deck.
#pragma once

#include "model/plan.h"
#include "schedule/crew/open_hours.h"
#include "schedule/crew/pieces.h"
#include "schedule/strips/ways_out.h"
#include "schedule/weather/drying_clock.h"

namespace schedule {

/// One coat of one deck.
struct Lay {
  const DeckCoats* deck = nullptr;
  std::size_t coat = 0;      // counted from 0
  base::LocalTime earliest;  // no stroke before
  base::LocalTime dryFrom;   // the boards can be stepped on
  Heed heed = Heed::All;     // the weather its hours are chosen by
  // As laid:
  base::LocalTime begun;              // first task, before the first stroke or with it
  std::vector<model::Shift> strokes;  // the work from the first to the last that lays product

  base::LocalTime start() const { return strokes.front().start; }
  base::LocalTime end() const { return strokes.back().end; }
};

/// A time during which a deck is wet with product, or raises dust or water.
struct Guard {
  std::optional<std::size_t> deck;  // nothing = the whole job
  base::LocalTime from, until;
};

struct Session {
  std::vector<Lay> lays;             // none where it is only work between coats
  std::vector<model::Shift> shifts;  // in order, at least one
  std::vector<Guard> wet, dust;      // wet: first stroke of each day to touch dry
  bool isOverDays = false;

  base::LocalTime start() const { return shifts.front().start; }
};

using Sessions = std::vector<Session>;  // in order of their start

/// Working days, after those that are taken, in which a coat must find its place.
inline constexpr int lookAhead = 30;

base::Date lastDayOf(const Sessions& sessions);

/// The first moment from 't' on at which no session takes the crew and, for work that raises dust, no other
/// deck is wet.
base::LocalTime freeFrom(base::LocalTime t, const Sessions& sessions, std::optional<std::size_t> deck,
                         bool isDusty);
/// The first moment after 't' at which it is free no more; nothing where it stays so.
std::optional<base::LocalTime> freeUntil(base::LocalTime t, const Sessions& sessions,
                                         std::optional<std::size_t> deck, bool isDusty);

/// Lays coats into the hours open for them, around sessions that stand already.
class SessionMaker {
 public:
  /// 'c', 'calendar', 'open' and 'drying' outlive this.
  SessionMaker(const model::JobInputs& c, const Calendar& calendar, OpenHours& open, DryingClock& drying)
      : c_(c), calendar_(calendar), open_(open), drying_(drying), leads_(leadsOnto(c.job.areas)) {}

  /// All on this day from 'from' on, one after the other; nothing where the day does not hold them so.
  std::optional<Session> onOneDay(const std::vector<Lay>& lays, base::LocalTime from,
                                  const Sessions& others) const;
  /// One coat that no day holds, on each day in the longest of its open spans: what ends in the middle of a
  /// deck does not go on the same day. Days with other sessions are left out. Nothing where the open hours of
  /// many days do not hold it.
  std::optional<Session> overDays(const Lay& lay, const Sessions& others) const;
  /// One dry task as soon as the crew is free.
  Session dryWork(const DeckCoats& deck, std::size_t coat, const CoatTask& task, base::LocalTime from,
                  const Sessions& others) const;

  /// When the last strip is wiped off, too; the end of the work for a product that is not wiped.
  base::LocalTime wipedOff(const Session& session) const;
  /// When the boards coated until 'end' are touch dry.
  base::LocalTime touchDry(base::LocalTime end) const;
  /// True where one day could hold the coat if all of its hours were fit.
  bool mayFitOneDay(int minutes) const { return minutes <= calendar_.workable(open_.bounds()); }

  /// Whether the crew leaves a deck over the other, so that it has to be laid before it.
  bool isLeftOver(std::size_t deck, std::size_t other) const { return leads_[deck][other]; }

  const model::JobInputs& job() const { return c_; }
  const Calendar& calendar() const { return calendar_; }
  OpenHours& open() const { return open_; }

 private:
  std::optional<Session> layOver(const Lay& lay, base::Date from, const Sessions& others) const;
  Span longestOpen(const Lay& lay, base::LocalTime from) const;
  std::optional<Session> laidFrom(base::LocalTime t, const std::vector<Lay>& lays) const;
  std::optional<base::LocalTime> shiftedFor(const Session& session, base::LocalTime t,
                                            const Sessions& others) const;
  base::LocalTime afterBreak(base::LocalTime t, const Lay& lay) const;
  void addGuards(Session& session) const;

  const model::JobInputs& c_;
  const Calendar& calendar_;
  OpenHours& open_;
  DryingClock& drying_;
  std::vector<std::vector<bool>> leads_;
};

}  // namespace schedule
