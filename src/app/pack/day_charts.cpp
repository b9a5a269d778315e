#include "app/pack/day_charts.h"

#include "base/units.h"
#include "drawings/pen/paths.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>
#include <memory>

namespace app {
namespace {

using typeset::Dim;

typeset::Drawing stripsOf(const sheets::Day& day, const model::JobResult& x, const sheets::Formatter& w,
                          const drawings::Pen& pen, typeset::Size room) {
  std::vector<drawings::StripDeck> decks;
  for (const auto& coat : day.coats) {
    // A deck that is coated twice on one day is drawn once.
    const auto drawn =
        std::find_if(decks.begin(), decks.end(), [&](const auto& d) { return d.edge.deck == coat.deck; });
    if (drawn != decks.end()) {
      drawn->note = w("strips.first_drawn", {{"deck", sheets::deckLetter(coat.deck)}});
      continue;
    }
    if (coat.edge == nullptr) continue;
    drawings::StripDeck deck{*coat.edge, {}, {}};
    for (const auto& strip : deck.edge.strips) {
      const auto today = std::find_if(coat.strips.begin(), coat.strips.end(),
                                      [&](const auto& s) { return s.strip->number == strip.number; });
      const bool isToday = today != coat.strips.end();
      deck.starts.push_back(isToday ? w.clock(today->start) : "");
      deck.litres.push_back(isToday ? sheets::stripLitres(today->litres, w) : "");
    }
    decks.push_back(std::move(deck));
  }
  return drawings::stripsPlan(x.c, decks, pen, room);
}

/// The words of the boards' warmth: how warm they get on each deck, the limit, the dew point.
void tellWarmth(drawings::HoursDay& day, const model::JobResult& x, const sheets::Formatter& w) {
  std::optional<double> dewLeast, dewMost;
  for (auto& row : day.rows) {
    std::optional<double> warmest;
    for (const auto& hour : row.hours) {
      if (hour.source == model::WeatherSource::None || hour.at.minutes < day.from * 60 ||
          hour.at.minutes > day.until * 60)
        continue;
      warmest = std::max(warmest.value_or(hour.surface), hour.surface);
      dewLeast = std::min(dewLeast.value_or(hour.dewPoint), hour.dewPoint);
      dewMost = std::max(dewMost.value_or(hour.dewPoint), hour.dewPoint);
    }
    if (warmest) row.warmest = sheets::degreesText(*warmest, w);
  }
  const auto limit = x.c.product->limits.surfaceMax;
  day.surfaceMax = base::floating(limit);
  day.limitWords = w("hours_chart.limit", {{"degrees", w.mostTemperature(limit)}});
  if (dewLeast)
    day.dewWords = w("hours_chart.dew_point", {{"degrees", sheets::degreesText(*dewLeast, *dewMost, w)}});
}

/// Each second hour: '06:00' '08:00', or by the twelve hours '6 am' '8' '10' 'noon' '2 pm' '4'.
std::vector<std::string> axisOf(int from, int until, const sheets::Formatter& w, bool isTwelve) {
  std::vector<std::string> labels;
  for (int hour = from; hour <= until && hour < 24; hour += 2) {
    const bool isFirstOfHalf = hour == from || (hour > 12 && hour <= 14);
    const auto half = hour < 12 ? "dates.am" : "dates.pm";
    const auto number = std::to_string(hour > 12 ? hour - 12 : hour);
    if (!isTwelve) labels.push_back(w.clock(hour * 60));
    else if (hour == 12) labels.push_back(w("hours_chart.noon"));
    else labels.push_back(isFirstOfHalf ? w(half, {{"time", number}}) : number);
  }
  return labels;
}

typeset::Drawing hoursOf(const sheets::Day& day, const model::JobResult& x, const sheets::Formatter& w,
                         const drawings::Pen& pen, typeset::Dim width) {
  const auto& crew = x.c.job.crew;
  drawings::HoursDay hours;
  hours.from = std::min(6, crew.startMinutes / 60);
  hours.until = std::max(20, (crew.endMinutes + 59) / 60);
  hours.clock = axisOf(hours.from, hours.until, w, x.c.region->monthFirst);
  for (const auto& light : x.plan.light) {
    if (light.date != day.date) continue;
    const auto minutes = [&](const std::optional<base::LocalTime>& t) {
      return t && t->day == day.date ? std::optional(t->minutes) : std::nullopt;
    };
    hours.sunrise = minutes(light.sunrise);
    hours.sunset = minutes(light.sunset);
    if (hours.sunrise) hours.sun.push_back(w("hours_chart.sunrise", {{"time", w.clock(*hours.sunrise)}}));
    if (hours.sunset) hours.sun.push_back(w("hours_chart.sunset", {{"time", w.clock(*hours.sunset)}}));
  }
  const bool isSingle = sheets::coatCounts(x).most == 1;
  for (std::size_t deck = 0; deck < x.c.job.areas.size(); ++deck) {
    drawings::HoursRow row{sheets::deckLetter(deck) + "\u00A0\u00A0" + x.c.job.areas[deck].name, {}, {}, {}};
    for (const auto& coat : day.coats) {
      if (coat.deck == deck)
        row.coats.push_back({coat.from, coat.until, coat.coat,
                             isSingle ? w("coats.only") : w("coats.names." + std::to_string(coat.coat))});
    }
    if (row.coats.empty()) continue;
    for (const auto& hour : x.plan.hours) {
      if (hour.deck == deck && hour.at.day == day.date) row.hours.push_back(hour);
    }
    hours.rows.push_back(std::move(row));
  }
  tellWarmth(hours, x, w);
  return drawings::hoursChart(hours, pen, width);
}

}  // namespace

void addDayDrawings(typeset::Drawings& drawings, const model::JobResult& x, const drawings::Pen& pen,
                    typeset::Dim width) {
  const sheets::Formatter w(*x.c.region, x.language);
  const auto days = std::make_shared<const std::vector<sheets::Day>>(sheets::daysOf(x, w));
  for (std::size_t i = 0; i < days->size(); ++i) {
    if ((*days)[i].coats.empty()) continue;
    const auto number = std::to_string(i + 1);
    const auto strips = [=, &x](Dim height) { return stripsOf((*days)[i], x, w, pen, {width, height}); };
    drawings.emplace("strips-" + number, typeset::DrawingRequest({Dim::mm(40), Dim::mm(125)}, strips));
    const auto hours = [=, &x] { return hoursOf((*days)[i], x, w, pen, width); };
    drawings.emplace("hours-" + number, typeset::DrawingRequest(hours));
  }
}

}  // namespace app
