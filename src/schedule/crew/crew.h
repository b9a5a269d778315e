// The crew's way through the work: one gang that, whenever it is free, takes the next piece that can be done.
#pragma once

#include "schedule/crew/coats.h"

namespace schedule {

/// When a deck that is ready gets its place for the coats.
enum class CoatsWait {
  ForAll,   // when every deck is ready, so that as many as can share a day
  ForDust,  // when no other deck has dusty work ahead
  ForNone
};

struct Policy {
  CoatsWait wait = CoatsWait::ForAll;
  std::optional<base::Date> coatsFrom;  // no coat before this day
};

struct Course {
  std::vector<model::Shift> shifts;  // coats too, in order
  Sessions sessions;
  std::vector<Train> trains;  // without their sessions, in the order they were placed
  CoatsWait wait = CoatsWait::ForAll;
  bool hasWaited = false;  // some deck waited with its coats, so another policy may do better
};

/// What decks are ranked by where several could be worked on: the longest chain of work and waits still
/// ahead, then the larger deck, then its name, then its place in the job.
struct Rank {
  std::int64_t ahead = 0;  // minutes
  base::Area area;
  std::string name;
  std::size_t deck = 0;
  bool isBefore(const Rank& other) const;
};

Course takeCourse(const Work& work, const SessionMaker& maker, const model::Estimate& e,
                  base::LocalTime start, const Policy& policy);

}  // namespace schedule
