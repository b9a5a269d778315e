// The public holidays of a region: groups of days with the law they are from.
#include "input/content/content_parts.h"

#include <algorithm>
#include <charconv>
#include <sstream>

namespace input {
namespace {

using std::chrono::month;
using std::chrono::weekday;

constexpr const char* weekdays[] = {"Sunday",   "Monday", "Tuesday", "Wednesday",
                                    "Thursday", "Friday", "Saturday"};
constexpr const char* months[] = {"January", "February", "March",     "April",   "May",      "June",
                                  "July",    "August",   "September", "October", "November", "December"};
constexpr const char* ordinals[] = {"first", "second", "third", "fourth"};

constexpr Word<base::OnWeekend> weekendWords[] = {
    {"Monday too", base::OnWeekend::AddsMonday},
    {"Monday instead", base::OnWeekend::MovesToMonday},
    {"Monday instead of Sunday", base::OnWeekend::SundayMovesToMonday},
    {"two days later too", base::OnWeekend::AddsTwoDaysLater},
    {"two days later", base::OnWeekend::MovesTwoDaysLater},
    {"nearest weekday too", base::OnWeekend::AddsNearestWeekday}};

/// The place in a table of words, from 0.
template <std::size_t N>
std::optional<unsigned> indexIn(const char* const (&table)[N], const std::string& word) {
  for (unsigned i = 0; i < N; ++i) {
    if (word == table[i]) return i;
  }
  return {};
}

std::optional<weekday> weekdayOf(const std::string& word) {
  const auto i = indexIn(weekdays, word);
  return i ? std::optional(weekday{*i}) : std::nullopt;
}

std::optional<int> numberOf(const std::string& word) {
  int n = 0;
  const auto [end, problem] = std::from_chars(word.data(), word.data() + word.size(), n);
  return problem == std::errc{} && end == word.data() + word.size() ? std::optional(n) : std::nullopt;
}

/// '25 December'; of every year, so no 29 February.
std::optional<std::chrono::month_day> monthDay(const std::string& day, const std::string& name) {
  const auto n = numberOf(day);
  const auto m = indexIn(months, name);
  if (!n || *n < 1 || !m) return {};
  const std::chrono::month_day d = month{*m + 1} / *n;
  return d.ok() && d != month{2} / 29 ? std::optional(d) : std::nullopt;
}

std::optional<base::DayRule> dayOf(const std::vector<std::string>& w) {
  if (w == std::vector<std::string>{"Easter"}) return base::DayRule{base::EasterSunday{}};
  if (w.size() == 2) {
    if (const auto d = monthDay(w[0], w[1])) return base::DayRule{*d};
  } else if (w.size() == 4 && w[2] == "of") {
    const auto d = weekdayOf(w[1]);
    const auto n = indexIn(ordinals, w[0]), m = indexIn(months, w[3]);
    if (d && m && n) return base::DayRule{month{*m + 1} / (*d)[*n + 1]};
    if (d && m && w[0] == "last") return base::DayRule{month{*m + 1} / (*d)[std::chrono::last]};
  } else if (w.size() == 4 && w[1] == "nearest") {
    const auto d = weekdayOf(w[0]);
    const auto m = monthDay(w[2], w[3]);
    if (d && m) return base::DayRule{base::NearestWeekday{*m, *d}};
  } else if (w.size() == 6 && w[1] == "on" && w[2] == "or" && w[3] == "after") {
    const auto d = weekdayOf(w[0]);
    const auto m = monthDay(w[4], w[5]);
    if (d && m) return base::DayRule{base::NextWeekday{*m, *d}};
  }
  return {};
}

std::optional<base::DayRule> dayRule(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  int later = 0;
  if (words.size() > 2 && (words.end()[-2] == "+" || words.end()[-2] == "-")) {
    const auto n = numberOf(words.back());
    if (!n || *n < 1 || *n > 60) return {};
    later = words.end()[-2] == "+" ? *n : -*n;
    words.resize(words.size() - 2);
  }
  auto rule = dayOf(words);
  if (rule) rule->later = later;
  return rule;
}

void reportDay(const Field& f, const std::string& text) {
  f.error(inQuotes(text) + " is not a day of every year",
          "write it like '25 December', 'first Monday of June', 'last Monday of May - 1', 'Easter + 1', "
          "'Monday nearest 29 January' or 'Wednesday on or after 10 August'");
}

std::optional<base::DayRule> readDayRule(const Field& f) {
  if (!f.isGiven()) return {};
  const std::string s = text(f);
  auto rule = dayRule(s);
  if (!rule && !s.empty()) reportDay(f, s);
  return rule;
}

/// A day, or '1 February if Friday, else first Monday of February'.
void readDay(const Field& f, base::HolidayRule& holiday) {
  const std::string s = text(f);
  const auto condition = s.find(" if "), other = s.find(", else ");
  if (condition == std::string::npos || other == std::string::npos || other < condition) {
    holiday.day = readDayRule(f);
    return;
  }
  const auto first = dayRule(s.substr(0, condition)), rest = dayRule(s.substr(other + 7));
  const auto on = weekdayOf(s.substr(condition + 4, other - condition - 4));
  if (!first || !rest || !on) {
    reportDay(f, s);
    return;
  }
  holiday.day = rest;
  holiday.preferred = {*first, *on};
}

base::HolidayRule readHoliday(const Field& f, const base::HolidayRule& group,
                              const std::map<std::string, std::string>& states) {
  Record r(f);
  base::HolidayRule h = group;
  h.name = text(r.must("name", "Christmas Day"));
  const Field day = r.may("day"), dates = r.may("dates"), own = r.may("states");
  if (day.isGiven()) readDay(day, h);
  for (const Field& each : dates.items()) h.dates.push_back(date(each));
  if (!day.isGiven() && h.dates.empty())
    f.error("neither 'day' nor 'dates' is given",
            "write the rule, like 'day: 25 December', or the dates of each year");
  h.clash = readDayRule(r.may("not_on"));
  h.onWeekend = choice(r.may("weekend"), weekendWords, "rule for weekends", h.onWeekend);
  if (const Field until = r.may("known_until"); until.isGiven())
    h.knownUntil = whole(until, {2000, 2200, "a year from 2000 to 2200"}, 2000);
  if (own.isGiven()) h.states.clear();
  for (const Field& state : own.items()) h.states.push_back(knownId(state, states, "state"));
  r.finish();
  return h;
}

}  // namespace

std::vector<base::HolidayRule> readHolidays(const Field& f,
                                            const std::map<std::string, std::string>& states) {
  std::vector<base::HolidayRule> holidays;
  for (const Field& item : f.items()) {
    Record r(item);
    base::HolidayRule group;
    group.source = text(r.must("source", "title and year of the law"));
    for (const Field& state : r.may("states").items())
      group.states.push_back(knownId(state, states, "state"));
    for (const Field& day : r.must("days", "[{name: Christmas Day, day: 25 December}]").items())
      holidays.push_back(readHoliday(day, group, states));
    r.finish();
  }
  return holidays;
}

}  // namespace input
