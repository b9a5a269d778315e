// The crew's working time: which minutes of which days can be worked, and how work fills them.
#pragma once

#include "model/job.h"

#include <cstdint>
#include <map>
#include <vector>

namespace schedule {

/// Clock minutes of a day, 'until' not included.
struct Span {
  int from = 0, until = 0;
};

/// One day's part of a piece of work.
struct Part {
  base::LocalTime start, end;
};

class Calendar {
 public:
  /// 'morning' and 'evening' are minutes of each day that setting up and packing down take. Without a region
  /// there are no public holidays.
  Calendar(const model::Job& job, const model::Region* region, int morning, int evening);

  /// Every search for a time looks at days one after another, so they are counted here. Throws
  /// std::logic_error where more are looked at than any plan takes: it would go on for ever.
  bool isWorkday(base::Date day) const;
  /// The clock times between setting up and packing down.
  Span day() const { return day_; }
  /// Minutes that can be worked between two clock times, the break taken off.
  int workable(Span span) const;
  /// False when no minute of any day of the next year can be worked.
  bool hasTime(Span within, base::Date from) const;
  /// The first moment at or after 't' that can be worked within this part of a day, which has to hold such a
  /// minute.
  base::LocalTime next(base::LocalTime t, Span within) const;
  /// Work of so many minutes from the first workable moment at or after 't', day by day.
  std::vector<Part> fill(base::LocalTime t, int minutes, Span within) const;

 private:
  bool isHoliday(base::Date day) const;

  const model::Job& job_;
  const model::Region* region_;
  Span day_;
  Span pause_;
  mutable std::int64_t looks_ = 0;                           // at days
  mutable std::map<int, std::vector<base::Date>> holidays_;  // by year, as asked for so far
};

}  // namespace schedule
