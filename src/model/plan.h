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
  int people = 1;
  std::vector<std::size_t> who = {};  // of the crew, from 0
  int part = 0;                       // of a deck laid in parts, from 1; 0 = the whole deck
};

/// What somebody does in some minutes of a day on site: every minute from arrival to home belongs to one.
struct Duty {
  enum class What { Task, Rest, Wait };
  What what = What::Task;
  Shift shift;
  int strip = 0;  // its number, of cutting in, laying and wiping; the first's of those wiped in one go
  int strips = 1;
};

/// Boards that dry after a wash; nothing that needs dry boards begins before.
struct WashedBoards {
  std::size_t deck = 0;
  base::LocalTime washed, dry;
};

/// What a date of a plan is of: a coat's strokes, then what the customer waits for.
enum class Moment { CoatStart, CoatEnd, Walk, Furniture, Rugs, FirstWash, Maintenance };

struct Event {
  Moment what = Moment::CoatStart;
  int coat = 0;  // from 1, of a coat's start and end
  base::LocalTime at;
  int utcOffsetMinutes = 0;        // of the site's time zone at that moment
  std::vector<std::size_t> decks;  // the decks it holds for; empty = all
};

/// What makes an hour unfit for coating.
enum class WeatherLimit {
  AirCold,
  AirHot,
  BoardsHot,
  Dew,        // boards less than 3 K above the dew point
  DewBefore,  // dew falls before the coat is touch dry
  Damp,       // relative humidity above the product's limit
  Rain,
  Wet,         // rain has wetted the boards, and they have not dried yet
  RainBefore,  // rain before it is rain safe
  Wind,
  Dark,
  Moisture,  // the air keeps the wood above the product's moisture limit
  Unknown    // beyond the forecast, and nothing usual is given
};

/// A coat that could not be placed inside the product's ideal window or in fit hours, and why.
struct WindowViolation {
  enum class Why {
    Weather,       // no hour of the ideal window is fit
    DaysOff,       // nobody works on the day it was due
    CoatingHours,  // it fell outside the hours fit for coating
    LargeDeck,     // the deck takes more than one day's coating hours
    Access         // the way to it lay over wet boards
  };
  std::size_t deck = 0;
  int coat = 2;
  base::Hours gap;         // from the end of the coat before; 0 for a first coat
  bool isLate = true;      // false: sooner than ideal
  bool isPastMax = false;  // later than the product allows without sanding in between
  Why why = Why::CoatingHours;
  std::optional<WeatherLimit> gate;   // for Weather: what most often stands against it
  bool isUnfit = false;               // the weather leaves it no fit hour: it is laid by the clock
  std::optional<base::Date> nearest;  // the next day that would do, where isUnfit
};

enum class WeatherSource { None, Forecast, Normals };

/// One hour on one deck: is it fit for laying a coat, from its first minute to its last?
struct Hour {
  base::LocalTime at;
  std::size_t deck = 0;
  bool isFit = false;
  std::vector<WeatherLimit> reasons;  // empty when fit
  WeatherSource source = WeatherSource::None;
  Air air;
  double dewPoint = 0, surface = 0;  // C
  double woodMoisture = 0;           // %, where sheltered wood settles in this air
  double sunlight = 0;               // W/m2 of sun and sky on level ground, through the clouds
  double skylight = 0;               // W/m2, the part of it that comes from the whole sky
  double sunElevation = 0;           // degrees, apparent
};

struct SunDay {
  base::Date date{};
  std::optional<base::LocalTime> sunrise, sunset;  // nothing on a polar day or night
};

/// Where somebody stands who cuts in, lays or wipes a strip.
struct Stand {
  enum class On {
    Boards,  // of the deck itself, where this coat has not come yet
    Ground,  // beside an edge
    Deck,    // another deck
    Strip    // the strip itself, walking backwards: no dry place is near enough to wipe it later
  };
  On on = On::Boards;
  std::size_t deck = 0;  // for Deck

  bool operator==(const Stand&) const = default;
};

/// One step of a strip.
struct StripWork {
  base::LocalTime start, end;
  std::vector<std::size_t> who;
  Stand from;
};

/// One strip of whole boards that keeps a wet edge.
struct BoardStrip {
  std::size_t deck = 0;
  int number = 1;                 // through the day
  int fromBoard = 0, boards = 0;  // counted across from the top or left side; treads from the foot
  base::Area area;                // they add up to the deck's
  int minutes = 0;                // of laying
  int coat = 1, part = 0;         // part 0 = the deck is not divided
  int openMinutes = 0;            // at the warmest surface of the hours it is laid in
  bool isTooLong = false;         // even one board takes longer than the coat stays open
  bool goesOn = false;            // from the wet edge of the strip before
  std::optional<StripWork> cutIn, wipe;
  StripWork lay;
};

/// How a deck is laid board by board.
struct WetEdge {
  std::size_t deck = 0;
  int coat = 1;
  std::vector<BoardStrip> strips;  // in the order they are laid; without boards to count one stretch
  bool startsAtEnd = false;        // the first strip: false: at the top or left edge, on stairs at the foot;
                                   // true: at the bottom or right edge, on stairs at the top step
  int openMinutes = 0;             // of the coat at the warmest surface planned
  bool isTooLong = false;          // even one board takes longer than the coat stays open
  int peopleNeeded = 0;            // where more people would help; 0 = not needed, or no number would
  std::optional<Place> wayOut;     // from the deck's own corner; nothing for what has no place on a plan
};

/// Sanding beyond what the job asks for: before a coat on boards that stood bare too long, or past the
/// product's longest wait.
struct ExtraPass {
  std::size_t deck = 0;
  int coat = 1;
  base::Share part = base::Share::whole(100);  // of the deck
};

/// A coat of a deck, or of a part of it, and when it is dry: slowed by cold and damp.
struct CoatTimes {
  std::size_t deck = 0;
  int coat = 1, part = 0;
  base::LocalTime start, end;  // first and last stroke
  base::LocalTime touchDry, recoatFrom, recoatUntil, walk;
};

/// Why nobody came on the working days before a day on site.
struct DayHold {
  enum class Why {
    DaysOff,     // nobody works on the days before
    BoardsDry,   // after the wash
    CoatDry,     // the coat below may not be laid on yet
    Weather,     // no fit hours
    BeforeCoat,  // prepared just before its coat, so that no boards stand bare
  };
  Why why = Why::DaysOff;
  std::optional<base::LocalTime> until;  // of BoardsDry and CoatDry
  std::optional<WeatherLimit> gate;      // of Weather: what most often stands against it
};

/// A day on site.
struct SiteDay {
  base::Date date{};
  int people = 1;  // who come: the first of the crew
  base::LocalTime arrive, home;
  std::optional<base::LocalTime> lastStart, lastStroke;  // of a day with a coat, or it is not wiped in time
  std::optional<DayHold> heldBy;  // nothing: the day after the one before, or the first
  int tighter = 0;                // minutes that its work is planned shorter than reckoned
};

/// What a calendar costs the firm, before tax. Exact where the firm's rates are known.
struct CalendarCost {
  int siteDays = 0;
  std::int64_t personMinutes = 0;  // paid, from arrival to home
  base::Money visits, paidHours;
  base::Money extraPasses;  // of the paid hours
  base::Money total() const { return visits + paidHours; }
};

/// Another day the coats could start on.
struct Alternative {
  enum class Why { Later, Order, Window, Cost, Weather };
  base::LocalTime start, finished;  // first coat's start, last coat's end
  base::Money cost;
  Why why = Why::Later;  // it was not taken
};

struct Plan {
  std::vector<SiteDay> days;
  std::vector<Shift> shifts;     // in order of their start
  std::vector<Duty> duties;      // the same with setting up, packing down, rests and waiting
  std::vector<CoatTimes> coats;  // in order of their start
  std::vector<WashedBoards> washed;
  std::vector<ExtraPass> extraPasses;
  CalendarCost cost;
  std::vector<Event> events;  // never go backwards
  std::vector<WindowViolation> misses;
  std::vector<Hour> hours;                // of the days asked for, by time then deck
  std::vector<SunDay> light;              // of the same days
  std::vector<WetEdge> edges;             // by deck and coat
  std::vector<Alternative> alternatives;  // best first
  WeatherSource weather = WeatherSource::None;
  base::LocalTime finished;  // last coat's end, or the end of the last shift where nothing is coated
  int coatingFrom = 0, coatingUntil = 0;  // clock minutes a coat is kept to
};

}  // namespace model
