// A plan cut into its days: what is laid on each, strip by strip, and the tins to open for it.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// A strip of boards begun on one day.
struct DayStrip {
  const model::BoardStrip* strip = nullptr;
  int start = 0;            // minutes of the clock
  std::int64_t litres = 0;  // in steps of Formatter::volumeStep()
};

/// One deck's coat, or the part of it that is laid on one day.
struct DayCoat {
  std::size_t deck = 0;
  int coat = 1;
  int from = 0, until = 0;           // minutes of the clock, from the first stroke to the last
  std::optional<base::Date> goesOn;  // the day with the next part of the coat
  base::Area area;
  std::int64_t litres = 0;  // as printed, with loss
  const model::CoatNeed* need = nullptr;
  const model::WetEdge* edge = nullptr;  // null only where the plan holds none
  std::vector<DayStrip> strips;
};

struct Day {
  base::Date date{};
  const model::SiteDay* site = nullptr;
  std::vector<const model::Shift*> shifts;  // in order of their start
  std::vector<DayCoat> coats;               // in the order they are laid
  std::vector<model::TinCount> tins;        // to open, largest first
  base::Volume open;                        // left in tins opened on the days before
  std::vector<std::size_t> firstOn;         // decks that nobody worked on before
};

/// The days with work on site. Litres are those of printedLitres(), so that all sheets agree.
std::vector<Day> daysOf(const model::JobResult& x, const Formatter& w);

}  // namespace sheets
