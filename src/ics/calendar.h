// Calendar files: RFC 5545, Internet Calendaring and Scheduling Core Object Specification (2009).
#pragma once

#include "base/date.h"

#include <chrono>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace ics {

/// A stretch of time, or whole days: 'last' is included.
struct Span {
  std::chrono::sys_seconds start, end;
};
struct Days {
  base::Date first{}, last{};
};

/// Comes back every so many months, for good; in years where they are whole. What falls on a day that a month
/// does not have comes on the month's last.
struct Every {
  int months = 12;
};

struct Event {
  std::string uid;  // the same whenever the event is written again, so that it replaces itself
  std::variant<Span, Days> when;
  std::string summary, description, location;  // any text; the last two may be empty
  std::optional<Every> repeats;                // of Days
  bool isBusy = false;                         // the people are taken for that time
  int sequence = 0;                            // revision of the event: a higher one replaces a lower
};

/// The bytes of the file, times in UTC. 'stamp' stands for when it was written: the day of the quote, so that
/// the same job gives the same file.
std::string write(const std::vector<Event>& events, base::Date stamp);

/// The lines of one event in such a file, and a file of such lines.
std::string eventLines(const Event& event, base::Date stamp);
std::string fileOf(const std::string& events);
/// '20270316T000000Z'
std::string stampWords(base::Date stamp);

/// Section 3.3.11: backslash, semicolon, comma and line break; a colon stays.
std::string escaped(const std::string& text);

/// Section 3.1: lines of at most 75 octets, each with its CR LF, never cut inside a letter of UTF-8.
std::string folded(const std::string& line);

}  // namespace ics
