#include "forecast/steps.h"

#include "forecast/times.h"
#include "forecast/units.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <cmath>

namespace forecast {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

constexpr Element airElements[] = {Element::Air, Element::Humidity, Element::Cloud, Element::Wind};
constexpr auto shortest = minutes{15}, longest = minutes{180};
constexpr auto longestShared = hours{6};    // steps of services far ahead
constexpr auto longestBridged = hours{3};   // two missing hours
constexpr std::int64_t mostSteps = 10'000;  // a hundred days in steps of a quarter of an hour

std::string listed(const std::vector<std::string>& words) {
  std::string s;
  for (std::size_t i = 0; i < words.size(); ++i)
    s += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return s;
}

void checkElements(const Series& series) {
  std::vector<std::string> missing;
  for (const Element e : airElements) {
    const bool isThere = std::any_of(series.instants.begin(), series.instants.end(),
                                     [&](const Instant& i) { return i[e].has_value(); });
    if (!isThere) missing.push_back("no " + nameOf(e));
  }
  if (series.rain.empty()) missing.push_back("no " + nameOf(Element::Rain));
  if (missing.empty()) return;
  const bool isCloudAlone = missing == std::vector<std::string>{"no " + nameOf(Element::Cloud)};
  throw Refusal{"", "it has " + listed(missing),
                isCloudAlone ? "give what is likely in the job, like weather: {forecast: FILE, cloud: 60 %}"
                             : series.fetch};
}

minutes stepOf(const Series& series) {
  seconds step = seconds::max();
  for (std::size_t i = 1; i < series.instants.size(); ++i) {
    const seconds here = series.instants[i].at - series.instants[i - 1].at;
    if (here <= seconds{0}) throw Refusal{"", "its times are not in order", series.fetch};
    step = std::min(step, here);
  }
  if (series.instants.size() < 2) throw Refusal{"", "a forecast has two steps at least", series.fetch};
  if (step < shortest || step > longest)
    throw Refusal{"", "the steps are " + spanWords(step) + " long", "allowed: from 15 min to 3 h"};
  return std::chrono::duration_cast<minutes>(step);
}

/// An element along the moments of a series.
class Line {
 public:
  Line(const Series& series, Element e) {
    for (std::size_t i = 0; i < series.instants.size(); ++i) {
      const Instant& instant = series.instants[i];
      if (instant[e]) known_.push_back({i, instant.at, *instant[e]});
    }
  }

  /// Nothing where it is not known; 't' never goes back. Counts what it bridges.
  std::optional<double> at(Time t) {
    while (next_ < known_.size() && known_[next_].at <= t) ++next_;
    if (next_ == 0) return {};
    const Known& before = known_[next_ - 1];
    if (before.at == t) return before.value;
    if (next_ == known_.size()) return {};
    const Known& after = known_[next_];
    const bool isHole = after.index > before.index + 1;
    if (after.at - before.at > (isHole ? longestBridged : longestShared)) return {};
    if (isHole) ++bridged_;
    const auto part =
        static_cast<double>((t - before.at).count()) / static_cast<double>((after.at - before.at).count());
    return std::lerp(before.value, after.value, part);
  }
  int bridged() const { return bridged_; }

 private:
  struct Known {
    std::size_t index;
    Time at;
    double value;
  };
  std::vector<Known> known_;
  std::size_t next_ = 0;
  int bridged_ = 0;
};

/// Rain of steps one after another.
class RainLine {
 public:
  explicit RainLine(const std::vector<Rain>& rain) : rain_(rain) {}

  /// Nothing where not all of the step is known.
  std::optional<double> in(Time from, Time until) {
    while (next_ < rain_.size() && rain_[next_].until <= from) ++next_;
    double mm = 0;
    Time known = from;
    isShared_ = false;
    for (std::size_t i = next_; i < rain_.size() && rain_[i].from <= known && known < until; ++i) {
      const Rain& r = rain_[i];
      const Time end = std::min(r.until, until);
      if (end <= known) continue;
      mm +=
          r.mm * static_cast<double>((end - known).count()) / static_cast<double>((r.until - r.from).count());
      isShared_ = isShared_ || r.until - r.from > until - from;
      known = end;
    }
    return known == until ? std::optional(mm) : std::nullopt;
  }
  /// Whether the last answer was a part of a longer window.
  bool isShared() const { return isShared_; }

 private:
  const std::vector<Rain>& rain_;
  std::size_t next_ = 0;
  bool isShared_ = false;
};

}  // namespace

std::optional<std::string> rangeMissed(Element element, double value) {
  // Wider than weather on earth where people lay coats; dew point and moisture are defined in all of it.
  constexpr struct {
    double least, most;
    const char* words;
  } ranges[] = {{-40, 55, "from -40 to 55 C"},
                {1, 105, "from 1 to 100 %"},
                {0, 100.5, "from 0 to 100 %"},
                {0, 80, "from 0 to 80 m/s"},
                {0, 300, "from 0 to 300 mm"}};
  const auto& range = ranges[static_cast<std::size_t>(element)];
  if (value >= range.least && value <= range.most) return {};
  return range.words;
}

model::Forecast makeForecast(Series series, std::optional<double> cloud, const std::string& zone,
                             std::vector<Note>& notes) {
  const bool hasCloud = std::any_of(series.instants.begin(), series.instants.end(),
                                    [](const Instant& i) { return i[Element::Cloud].has_value(); });
  if (cloud && !hasCloud) {
    for (Instant& i : series.instants) i[Element::Cloud] = *cloud;
  }
  checkElements(series);
  const minutes step = stepOf(series);
  if ((series.instants.back().at - series.instants.front().at) / step > mostSteps)
    throw Refusal{"", "it has more than " + std::to_string(mostSteps) + " steps",
                  "leave out what lies behind the job"};
  Line lines[] = {
      {series, Element::Air}, {series, Element::Humidity}, {series, Element::Cloud}, {series, Element::Wind}};
  RainLine rain(series.rain);
  model::Forecast f;
  f.service = series.service;
  f.place = series.place;
  f.stepMinutes = static_cast<int>(step.count());
  std::optional<Time> end;  // of the steps that follow each other
  bool goesOn = false;      // behind a hole
  std::size_t native = 0;
  for (Time t = series.instants.front().at; t <= series.instants.back().at; t += step) {
    while (native + 1 < series.instants.size() && series.instants[native + 1].at <= t) ++native;
    const auto celsius = lines[0].at(t), humidity = lines[1].at(t), sky = lines[2].at(t),
               wind = lines[3].at(t);
    const auto mm = rain.in(t, t + step);
    const bool isWhole = celsius && humidity && sky && wind && mm;
    if (end && isWhole) goesOn = true;
    if (!isWhole && !f.steps.empty() && !end) end = t;
    if (!isWhole || end) continue;
    if (f.steps.empty()) f.from = t;
    const bool isLong = native + 1 < series.instants.size() &&
                        series.instants[native + 1].at - series.instants[native].at > step;
    if ((isLong || rain.isShared()) && !f.sharedFrom) f.sharedFrom = t;
    f.steps.push_back({*celsius, std::min(*humidity, 100.0), std::min(*sky / 100, 1.0), *wind, *mm});
  }
  if (f.steps.size() < 2) throw Refusal{"", "no two steps after each other have all values", series.fetch};
  const auto clock = [&](Time t) { return base::isoTime(schedule::utcToLocal(zone, t)); };
  if (goesOn)
    notes.push_back({"values are missing at " + clock(*end) + ", so it counts to there",
                     "save a new one; behind it the usual weather of the month counts"});
  std::vector<std::string> bridged;
  for (std::size_t i = 0; i < elementsOfAir; ++i) {
    if (lines[i].bridged() > 0) bridged.push_back(nameOf(airElements[i]));
  }
  if (!bridged.empty())
    notes.push_back({"missing values of " + listed(bridged) + " are filled in between those beside them",
                     "save a new one where these hours matter"});
  return f;
}

}  // namespace forecast
