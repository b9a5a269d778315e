// A calendar as it is being made: days on site and the coats laid on them.
#pragma once

#include "schedule/crew/coat_flow.h"
#include "schedule/crew/open_hours.h"
#include "schedule/weather/drying_clock.h"

namespace schedule {

/// One day on site.
struct DayPlan {
  base::Date date{};
  int people = 1;            // who come: the first of the crew
  int arrive = 0, home = 0;  // clock minutes
  std::vector<model::Duty> duties;
  std::vector<FlowStrip> strips;
  std::optional<int> lastStart, lastStroke;
  std::vector<Slot> packing;  // of one person each, before the last wiping; empty: all pack down before home
  int overworked = 0;         // people who work more than six hours on end
  int tighter = 0;            // minutes that the day's work is planned shorter than reckoned
};

/// A coat of a unit.
struct LaidCoat {
  std::size_t unit = 0;
  int coat = 1;
  base::LocalTime start, end;  // first and last stroke
  base::LocalTime touchDry, recoat, walk;
  Heed heed = Heed::All;
  bool isLate = false;   // past the product's longest wait
  bool isExtra = false;  // sanded for once more
};

struct Schedule {
  std::vector<DayPlan> days;  // in order
  std::vector<LaidCoat> coats;
  std::vector<base::LocalTime> bareSince;  // by unit; its last sanding
  std::vector<model::WashedBoards> washed;
  int unreached = 0, late = 0;  // strips wiped walking backwards; wiped when the product is sticky

  base::LocalTime end() const;
  /// The coat before of the same unit that ended last; null for a first coat.
  const LaidCoat* before(const LaidCoat& coat) const;
};

/// All that a calendar is made from; outlives it.
struct Desk {
  const model::JobInputs& c;
  const std::vector<Calendar>& calendars;  // by people: of one, of two, ...
  const Calendar& calendar;                // of everyone
  const AccessGraph& graph;
  OpenHours& open;
  DryingClock& drying;

  const Calendar& calendarOf(int people) const { return calendars[static_cast<std::size_t>(people) - 1]; }
};

/// No piece of work is shorter, unless it finishes its task; minutes.
inline constexpr int leastPiece = 15;

/// So many minutes a day's work may be planned tighter than reckoned: nobody comes back for them, or stays on
/// past the crew's hours. Our own choice.
inline constexpr int mostTighter = 10;

/// How long sanded boards may stand bare, days. Common practice, no source; a product's data sheet may say
/// less.
inline constexpr int coatWithinDays = 3;

/// Nobody works alone who need not.
inline constexpr int leastTogether = 2;

/// All of the crew.
std::vector<std::size_t> everyone(int people);

/// Most minutes that the first days of a stretch of work are filled with; nothing = whole days.
using Quotas = std::vector<int>;

/// All together do piece after piece from 'from' on, day by day; no piece under a quarter of an hour unless
/// it finishes its task. The last day may be a little tighter than reckoned. Returns when the last is done;
/// with 'ends' also when each is. No pieces: 'from'.
base::LocalTime fill(Schedule& schedule, std::vector<Piece> pieces, base::LocalTime from,
                     const Calendar& calendar, int people, const Quotas& quotas = {},
                     std::vector<base::LocalTime>* ends = nullptr);

/// Duties of everyone on a day with a coat, waits put in, from arrival to home. On a long day everyone rests
/// once while they wait, wiping a little later for it, or before packing down; on one of over four hours,
/// whoever waits for long enough does. Whoever is free while the last strips soak in packs down, if that
/// brings everyone home sooner. 'calendar' is that of the day's people, 'wipeWait' in minutes.
void closeDay(DayPlan& day, const Calendar& calendar, int wipeWait);

}  // namespace schedule
