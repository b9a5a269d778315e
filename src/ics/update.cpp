#include "ics/update.h"

#include <algorithm>
#include <charconv>
#include <utility>

namespace ics {
namespace {

/// An event of the older file.
struct Older {
  std::vector<std::string> lines;  // unfolded, without BEGIN and END

  std::string value(const std::string& name) const {
    for (const auto& line : lines)
      if (line.starts_with(name + ":")) return line.substr(name.size() + 1);
    return {};
  }
  std::string uid() const { return value("UID"); }
  bool isCancelled() const { return value("STATUS") == "CANCELLED"; }
  int sequence() const {
    const std::string words = value("SEQUENCE");
    int n = 0;
    std::from_chars(words.data(), words.data() + words.size(), n);
    return std::clamp(n, 0, 1'000'000'000);
  }
};

std::vector<std::string> unfoldedLines(const std::string& bytes) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', from), bytes.size());
    std::string line = bytes.substr(from, end - from);
    if (line.ends_with('\r')) line.pop_back();
    const bool goesOn = line.starts_with(' ') || line.starts_with('\t');
    if (goesOn && !lines.empty()) lines.back() += line.substr(1);
    else lines.push_back(std::move(line));
    from = end + 1;
  }
  return lines;
}

std::vector<Older> readEvents(const std::string& bytes) {
  std::vector<Older> events;
  std::optional<Older> open;
  for (auto& line : unfoldedLines(bytes)) {
    if (line == "BEGIN:VEVENT") {
      open.emplace();
    } else if (line == "END:VEVENT" && open) {
      events.push_back(*std::exchange(open, {}));
    } else if (open) {
      open->lines.push_back(std::move(line));
    }
  }
  return events;
}

std::string linesOf(const Older& event) {
  std::string text = folded("BEGIN:VEVENT");
  for (const auto& line : event.lines) text += folded(line);
  return text + folded("END:VEVENT");
}

/// What tells the event apart and where it stood; nothing else of it holds any more.
Older cancelled(const Older& event, base::Date stamp) {
  if (event.isCancelled()) return event;
  Older gone;
  for (const auto& line : event.lines) {
    const std::string name = line.substr(0, line.find_first_of(":;"));
    for (const char* kept : {"UID", "DTSTART", "DTEND", "RRULE", "SUMMARY"})
      if (name == kept) gone.lines.push_back(line);
  }
  gone.lines.push_back("DTSTAMP:" + stampWords(stamp));
  gone.lines.push_back("SEQUENCE:" + std::to_string(event.sequence() + 1));
  gone.lines.push_back("STATUS:CANCELLED");
  gone.lines.push_back("TRANSP:TRANSPARENT");
  return gone;
}

int sequenceOver(const Older& older, Event event, base::Date stamp) {
  const int least = event.sequence;
  event.sequence = older.sequence();
  const bool isSame = linesOf(older) == eventLines(event, stamp);
  return std::max(least, event.sequence + (isSame ? 0 : 1));
}

}  // namespace

std::string writeOver(const std::string& before, const std::string& own, std::vector<Event> events,
                      base::Date stamp) {
  std::string gone;
  for (const auto& older : readEvents(before)) {
    const auto again =
        std::find_if(events.begin(), events.end(), [&](const auto& e) { return e.uid == older.uid(); });
    if (again != events.end()) again->sequence = sequenceOver(older, *again, stamp);
    else if (older.uid().starts_with(own)) gone += linesOf(cancelled(older, stamp));
  }
  std::string lines;
  for (const auto& e : events) lines += eventLines(e, stamp);
  return fileOf(lines + gone);
}

}  // namespace ics
