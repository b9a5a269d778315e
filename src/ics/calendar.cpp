#include "ics/calendar.h"

#include <cstdio>

namespace ics {
namespace {

constexpr std::size_t mostOctets = 75;

std::string dateWords(base::Date d) {
  const std::string iso = base::isoDate(d);
  return iso.substr(0, 4) + iso.substr(5, 2) + iso.substr(8, 2);
}

std::string utcWords(std::chrono::sys_seconds t) {
  const auto day = std::chrono::floor<std::chrono::days>(t);
  const std::chrono::hh_mm_ss clock{t - day};
  char text[8];
  std::snprintf(text, sizeof text, "%02d%02d%02d", static_cast<int>(clock.hours().count()),
                static_cast<int>(clock.minutes().count()), static_cast<int>(clock.seconds().count()));
  return dateWords(day) + "T" + text + "Z";
}

std::string rule(Every every, base::Date first) {
  const bool isYears = every.months % 12 == 0;
  const int interval = isYears ? every.months / 12 : every.months;
  std::string text = isYears ? "FREQ=YEARLY" : "FREQ=MONTHLY";
  if (interval > 1) text += ";INTERVAL=" + std::to_string(interval);
  const std::chrono::year_month_day date{first};
  const unsigned day = unsigned{date.day()};
  const bool mayBeMissing = day > 28 && (!isYears || date.month() == std::chrono::February);
  if (!mayBeMissing) return text;
  // A day that does not exist is left out (3.3.10): take the last of those that do.
  if (isYears) text += ";BYMONTH=2";
  text += ";BYMONTHDAY=28";
  for (unsigned d = 29; d <= day; ++d) text += "," + std::to_string(d);
  return text + ";BYSETPOS=-1";
}

class Writer {
 public:
  void line(const std::string& name, const std::string& value) { bytes_ += folded(name + ":" + value); }
  void text(const std::string& name, const std::string& value) {
    if (!value.empty()) line(name, escaped(value));
  }

  void event(const Event& e, base::Date stamp) {
    line("BEGIN", "VEVENT");
    text("UID", e.uid);
    line("DTSTAMP", stampWords(stamp));
    line("SEQUENCE", std::to_string(e.sequence));
    if (const auto* span = std::get_if<Span>(&e.when)) {
      line("DTSTART", utcWords(span->start));
      line("DTEND", utcWords(span->end));
    } else {
      const auto& days = std::get<Days>(e.when);
      line("DTSTART;VALUE=DATE", dateWords(days.first));
      line("DTEND;VALUE=DATE", dateWords(days.last + std::chrono::days{1}));  // not included: 3.6.1
      if (e.repeats) line("RRULE", rule(*e.repeats, days.first));
    }
    text("SUMMARY", e.summary);
    text("DESCRIPTION", e.description);
    text("LOCATION", e.location);
    line("TRANSP", e.isBusy ? "OPAQUE" : "TRANSPARENT");
    line("END", "VEVENT");
  }

  std::string take() { return std::move(bytes_); }

 private:
  std::string bytes_;
};

}  // namespace

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '\n') out += "\\n";
    else if (c == '\\' || c == ';' || c == ',') out += std::string("\\") + c;
    else out += c;
  }
  return out;
}

std::string folded(const std::string& line) {
  std::string out;
  std::size_t from = 0;
  while (true) {
    const std::size_t most = from == 0 ? mostOctets : mostOctets - 1;  // the space counts too
    if (line.size() - from <= most) return out + line.substr(from) + "\r\n";
    std::size_t end = from + most;
    while (end > from && (line[end] & 0xC0) == 0x80) --end;
    if (end == from) end += most;  // no letter at all: bytes of a damaged file
    out += line.substr(from, end - from) + "\r\n ";
    from = end;
  }
}

std::string stampWords(base::Date stamp) { return utcWords(stamp); }

std::string eventLines(const Event& event, base::Date stamp) {
  Writer w;
  w.event(event, stamp);
  return w.take();
}

std::string fileOf(const std::string& events) {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//planksheaf//job "
         "calendar//EN\r\nCALSCALE:GREGORIAN\r\n" +
         events + "END:VCALENDAR\r\n";
}

std::string write(const std::vector<Event>& events, base::Date stamp) {
  std::string lines;
  for (const auto& e : events) lines += eventLines(e, stamp);
  return fileOf(lines);
}

}  // namespace ics
