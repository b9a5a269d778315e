// The visits ahead as lists for people, programs and spreadsheets.
#pragma once

#include "records/due.h"
#include "sheets/words/formatter.h"

#include <functional>

namespace app {

/// Visits that are driven together.
struct VisitRound {
  struct Stop {
    std::size_t visit = 0;  // of the list
    double kilometres = 0;  // from the one before
    base::Hours hours;      // of all people
    base::Volume litres;
  };
  std::vector<Stop> stops;
  bool hasPlaces = true;
};

struct VisitList {
  std::vector<records::Visit> visits;  // in groups
  std::vector<VisitRound> rounds;      // of those to write to; empty = not in rounds
  base::Date today{};                  // for the days that a quote waits
  std::function<sheets::Formatter(const records::Visit&)> formatterOf;
};

/// A table for each group, and for each round where there are any, a heading over it.
std::string visitsText(const VisitList& list);
std::string visitsCsv(const VisitList& list);
/// By the names of content/schemas/due.schema.json.
std::string visitsJson(const VisitList& list);

}  // namespace app
