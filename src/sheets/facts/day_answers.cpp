#include "sheets/facts/day_answers.h"

#include "model/wiping.h"
#include "sheets/facts/day_work.h"

#include <algorithm>
#include <cmath>

namespace sheets {
namespace {

/// First and last stroke of the plan.
model::ClockSpan strokes(const Day& day) {
  model::ClockSpan span{24 * 60, 0};
  for (const auto& coat : day.coats) {
    span.from = std::min(span.from, coat.from);
    span.until = std::max(span.until, coat.until);
  }
  return span;
}

/// The end of the coats' drying, 'touch-dry about 16:50', on another day with its name.
std::string touchDry(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::optional<base::LocalTime> last;
  for (const auto& coat : x.plan.coats)
    if (coat.end.day == day.date && (!last || *last < coat.touchDry)) last = coat.touchDry;
  if (!last) return {};
  const auto time = w.clock(last->minutes);
  return last->day == day.date ? w("day.touch_dry", {{"time", time}})
                               : w("day.touch_dry_on", {{"time", time}, {"day", w.shortDay(last->day)}});
}

FactList answersOf(const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto& there = *day.site;
  const auto planned = strokes(day);
  const int latest = x.c.job.crew.endMinutes;
  const auto clock = [&](const std::optional<base::LocalTime>& at, int other) {
    return w.clock(at ? at->minutes : other);
  };
  const bool isWiped = model::wipingOn(x.plan, x.content, day.date).has_value();
  FactList list;
  const auto add = [&](const char* label, const std::string& time, const std::string& note) {
    list.push_back({{"label", w(label)}, {"time", time}, {"note", note}});
  };
  add("day.start", w.clock(planned.from),
      w("day.start_note",
        {{"arrive", w.clock(there.arrive.minutes)}, {"last", clock(there.lastStart, planned.from)}}));
  add("day.last_stroke", clock(there.lastStroke, planned.until),
      w(isWiped ? "day.last_stroke_wiped" : "day.last_stroke_note",
        {{"plan", w.clock(planned.until)}, {"home", w.clock(latest)}}));
  const auto dry = touchDry(day, x, w);
  add("day.home_by", w.clock(std::max(latest, there.home.minutes)),
      w("day.home_note", {{"plan", w.clock(there.home.minutes)}}) + (dry.empty() ? "" : "; " + dry));
  return list;
}

/// Least and most of a figure over the hours that the crew lays in.
struct Reach {
  double least = 0, most = 0;
};
template <class Value>
std::optional<Reach> reachOf(const Day& day, const model::JobResult& x, Value value) {
  const auto planned = strokes(day);
  std::optional<Reach> reach;
  for (const auto& hour : x.plan.hours) {
    const bool isCoated =
        std::any_of(day.coats.begin(), day.coats.end(), [&](const auto& c) { return c.deck == hour.deck; });
    if (!isCoated || hour.at.day != day.date || hour.source == model::WeatherSource::None ||
        hour.at.minutes + 60 <= planned.from || hour.at.minutes >= planned.until)
      continue;
    const double v = value(hour);
    if (!reach) reach = Reach{v, v};
    reach = Reach{std::min(reach->least, v), std::max(reach->most, v)};
  }
  return reach;
}

/// '11–27 °C', or '-2 to 4 °C' in words where a dash could be taken for a sign.
std::string degreesSpan(double least, double most, const Formatter& w) {
  const auto low = degreesText(least, w), high = degreesText(most, w);
  if (least < 0.5 || low == high) return degreesText(least, most, w);
  return w("day.span", {{"from", low.substr(0, low.find("\u00A0"))}, {"to", high}});
}

bool rains(const Day& day, const model::JobResult& x, base::Hours dryHours) {
  const auto planned = strokes(day);
  const base::LocalTime from{day.date, planned.from};
  const int until = planned.until + static_cast<int>(dryHours.millionths * 60 / 1'000'000);
  return std::any_of(x.plan.hours.begin(), x.plan.hours.end(), [&](const auto& hour) {
    const auto days = (hour.at.day - day.date).count();
    const auto minutes = hour.at.minutes + static_cast<int>(days) * 24 * 60;
    return hour.source == model::WeatherSource::Forecast && minutes + 60 > from.minutes && minutes < until &&
           std::find(hour.reasons.begin(), hour.reasons.end(), model::WeatherLimit::Rain) !=
               hour.reasons.end();
  });
}

std::string windText(double metresPerSecond, const Formatter& w, bool isLimit) {
  const double milesPerHour = 2.2369362920544;  // exactly 3600/1609.344: international mile
  const double shown = w.isMetric() ? metresPerSecond : metresPerSecond * milesPerHour;
  const auto whole = static_cast<std::int64_t>(isLimit ? std::floor(shown + 1e-9) : std::round(shown));
  return w(w.isMetric() ? "day.metres_a_second" : "day.miles_an_hour", {{"n", std::to_string(whole)}});
}

FactList goOf(const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto& product = *x.c.product;
  FactList list;
  const auto add = [&](const char* name, const std::string& limit, const std::string& forecast) {
    list.push_back({{"name", w(name)}, {"limit", limit}, {"forecast", forecast}});
  };
  const auto most = [&](const std::string& value) { return w("day.at_most", {{"value", value}}); };
  const auto least = [&](const std::string& value) { return w("day.at_least", {{"value", value}}); };
  const bool isForecast = std::any_of(x.plan.hours.begin(), x.plan.hours.end(), [&](const auto& h) {
    return h.at.day == day.date && h.source == model::WeatherSource::Forecast;
  });
  add("day.go_moisture", most(w.share(product.limits.moistureMax)), w("day.go_moisture_how"));
  const auto surface = reachOf(day, x, [](const auto& h) { return h.surface; });
  add("day.go_boards", most(w.mostTemperature(product.limits.surfaceMax)),
      surface ? w(isForecast ? "day.go_forecast" : "day.go_usual",
                  {{"value", degreesSpan(surface->least, surface->most, w)}})
              : w("day.go_measure"));
  // A difference, so that only the size of the degree counts; 3 K, ISO 8502-4:2017 for steel, our choice for
  // timber.
  const auto dew = reachOf(day, x, [](const auto& h) { return h.dewPoint; });
  constexpr double margin = 3;
  add("day.go_dew", least(w.isMetric() ? "3\u00A0°C" : "5.4\u00A0°F"),
      dew ? w("day.go_dew_from",
              {{"dew", degreesText(dew->most, w)}, {"from", degreesText(std::ceil(dew->most + margin), w)}})
          : w("day.go_measure"));
  const auto dry = product.times.rainSafe;
  add("day.go_rain", w.wait(dry),
      !isForecast ? w("day.go_look") : w(rains(day, x, dry) ? "day.go_rain_told" : "day.go_dry"));
  if (const auto wind = product.limits.windMax) {
    const auto blows = reachOf(day, x, [](const auto& h) { return h.air.wind; });
    add("day.go_wind", most(windText(static_cast<double>(wind->millionths) / 1e6, w, true)),
        blows && isForecast ? w("day.go_forecast", {{"value", windText(blows->most, w, false)}})
                            : w("day.go_measure"));
  }
  return list;
}

}  // namespace

void addAnswers(Facts& f, const Day& day, const model::JobResult& x, const Formatter& w) {
  const bool isCoated = !day.coats.empty();
  auto go = isCoated ? goOf(day, x, w) : FactList{};
  f.emplace_back("go_all", go.empty()
                               ? ""
                               : w.counted("day.go_all", static_cast<std::int64_t>(go.size()),
                                           {{"words", w.spelled(static_cast<std::int64_t>(go.size()))}}));
  f.emplace_back("answers", isCoated ? answersOf(day, x, w) : FactList{});
  f.emplace_back("go", std::move(go));
}

SiteWeather weatherOn(const Day& day, const model::JobResult& x) {
  const auto there = onSite(day);
  SiteWeather out;
  for (const auto& hour : x.plan.hours) {
    const bool isOnSite =
        hour.at.day == day.date && hour.at.minutes + 60 > there.from && hour.at.minutes < there.until;
    if (!isOnSite || hour.source == model::WeatherSource::None) continue;
    if (out.coldest == nullptr || hour.air.celsius < out.coldest->air.celsius) out.coldest = &hour;
    if (out.warmest == nullptr || hour.air.celsius > out.warmest->air.celsius) out.warmest = &hour;
  }
  if (out.coldest != nullptr) out.source = out.coldest->source;
  return out;
}

}  // namespace sheets
