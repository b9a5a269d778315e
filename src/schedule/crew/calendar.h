// The crew's days: on which it works, and from when to when.
#pragma once

#include "model/job.h"

#include <map>
#include <vector>

namespace schedule {

/// Clock minutes of a day, 'until' not included.
struct Span {
  int from = 0, until = 0;
};

/// Minutes on site without a rest: Directive 2003/88/EC (2003), art. 4; our own choice elsewhere.
inline constexpr int longestSpell = 6 * 60;

class Calendar {
 public:
  /// 'morning' and 'evening' are minutes of each day that setting up and packing down take. Hours are kept on
  /// five minutes. Without a region there are no public holidays.
  Calendar(const model::Job& job, const model::Region* region, int morning, int evening);

  bool isWorkday(base::Date day) const;
  /// The first working day from 'day' on; throws std::logic_error where none is within ten years, so ask
  /// hasWorkdays() first.
  base::Date workday(base::Date day) const;
  /// The n-th working day before 'day'.
  base::Date workdayBefore(base::Date day, int n) const;
  /// False when no day of the next year is worked.
  bool hasWorkdays(base::Date from) const;

  /// Clock times between setting up and packing down; empty where these fill the day.
  Span day() const { return day_; }
  int morning() const { return morning_; }
  int evening() const { return evening_; }
  int rest() const { return rest_; }
  /// When the crew rests on a day that is worked from its first minute to its last.
  int restAt() const { return restAt_; }
  /// Minutes of work that a whole day holds.
  int capacity() const;

 private:
  bool isHoliday(base::Date day) const;

  const model::Job& job_;
  const model::Region* region_;
  Span day_;
  int morning_, evening_, rest_, restAt_;
  mutable std::map<int, std::vector<base::Date>> holidays_;  // by year, as asked for so far
};

}  // namespace schedule
