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

/// A coat that could not be placed inside the product's ideal window, and why.
struct Miss {
  enum class Why {
    DaysOff,       // nobody works on the day it was due
    CoatingHours,  // it fell outside the hours fit for coating
    LargeDeck      // the deck takes more than one day's coating hours
  };
  std::size_t deck = 0;
  int coat = 2;
  base::Hours gap;         // from the end of the coat before
  bool isLate = true;      // false: sooner than ideal
  bool isPastMax = false;  // later than the product allows without sanding in between
  Why why = Why::CoatingHours;
};

struct Plan {
  std::vector<base::Date> days;  // days with work on site
  std::vector<Shift> shifts;     // in order of their start
  std::vector<Event> events;     // never go backwards
  std::vector<Miss> misses;
  base::LocalTime finished;  // last coat's end, or the end of the last shift where nothing is coated
  int coatingFrom = 0, coatingUntil = 0;  // clock minutes a coat is kept to
};

}  // namespace model
