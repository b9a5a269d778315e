// When things happen: the crew's days, each piece of work in them, and the dates the customer waits for.
#pragma once

#include "model/estimate.h"

namespace model {

/// One unbroken piece of work.
struct Shift {
  std::string task;                 // id
  std::optional<std::size_t> deck;  // nothing = the whole job
  int pass = 0;                     // grit or coat; 0 = neither
  base::LocalTime start, end;
};

struct Event {
  std::string name;  // coat_1_start, coat_1_end, ..., walk, furniture, rugs, first_wash, maintenance
  base::LocalTime at;
  int utcOffsetMinutes = 0;        // of the site's time zone at that moment
  std::vector<std::size_t> decks;  // the decks it holds for; empty = all
};

struct Plan {
  std::vector<base::Date> days;      // days with work on site
  std::vector<Shift> shifts;         // in order of their start
  std::vector<Event> events;         // never go backwards
  std::vector<std::string> remarks;  // why a coat misses its ideal window, in words for the documents
  base::LocalTime finished;          // last coat's end, or the end of the last shift where nothing is coated
};

}  // namespace model
