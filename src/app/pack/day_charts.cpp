#include "app/pack/day_charts.h"

#include "app/pack/glance.h"
#include "model/wiping.h"
#include "sheets/facts/day_people.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"

#include <algorithm>
#include <memory>

namespace app {
namespace {

using typeset::Dim;

typeset::Drawing stripsOf(const sheets::Day& day, const std::vector<std::size_t>& coats,
                          const model::JobResult& x, const sheets::Formatter& w, const drawings::Pen& pen,
                          typeset::Size room) {
  std::vector<drawings::StripDeck> decks;
  const auto texts = sheets::coatTexts(day, x, w);
  for (const auto place : coats) {
    const auto& text = texts[place];
    if (text.coat->edge == nullptr) continue;
    drawings::StripDeck deck{*text.coat->edge, {}, text.name, text.note, text.steps, w.volumeUnit()};
    for (const auto& strip : deck.edge.strips) {
      const auto number = std::to_string(strip.number);
      const auto today = std::find_if(text.strips.begin(), text.strips.end(),
                                      [&](const auto& s) { return s.number == number; });
      const bool isToday = strip.lay.start.day == day.date && today != text.strips.end();
      deck.strips.push_back(
          isToday ? drawings::StripWords{number, today->lay, today->amount, today->cutIn, today->wipe}
                  : drawings::StripWords{number, "", "", "", ""});
    }
    decks.push_back(std::move(deck));
  }
  return drawings::stripsPlan(x.c, decks, pen, room);
}

/// Each hour: '7' '8', or by the twelve hours '7 am' '8' 'noon' '1 pm' '2'.
std::vector<std::string> axisOf(int from, int until, const sheets::Formatter& w, bool isTwelve) {
  std::vector<std::string> labels;
  for (int hour = from; hour <= until; ++hour) {
    const bool isFirstOfHalf = hour == from || hour == 13;
    const auto half = hour < 12 ? "dates.am" : "dates.pm";
    const auto number = std::to_string(isTwelve && hour > 12 ? hour - 12 : hour);
    if (isTwelve && hour == 12) labels.push_back(w("hours_chart.noon"));
    else labels.push_back(isTwelve && isFirstOfHalf ? w(half, {{"time", number}}) : number);
  }
  return labels;
}

/// The coated decks of a day, those whose hours are fit alike in one row.
std::vector<drawings::HoursRow> rowsOf(const sheets::Day& day, const model::JobResult& x,
                                       const sheets::Formatter& w) {
  std::vector<std::pair<std::vector<std::string>, std::vector<model::Hour>>> groups;  // letters, hours
  std::vector<std::size_t> seen;
  for (const auto& coat : day.coats) {
    if (std::find(seen.begin(), seen.end(), coat.deck) != seen.end()) continue;
    seen.push_back(coat.deck);
    std::vector<model::Hour> hours;
    for (const auto& hour : x.plan.hours)
      if (hour.deck == coat.deck && hour.at.day == day.date) hours.push_back(hour);
    const auto alike = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
      return std::equal(hours.begin(), hours.end(), group.second.begin(), group.second.end(),
                        [](const auto& a, const auto& b) {
                          return a.at == b.at && a.isFit == b.isFit && a.reasons == b.reasons;
                        });
    });
    if (alike != groups.end()) alike->first.push_back(sheets::deckLetter(coat.deck));
    else groups.push_back({{sheets::deckLetter(coat.deck)}, std::move(hours)});
  }
  std::vector<drawings::HoursRow> rows;
  for (auto& [letters, hours] : groups) {
    auto name = w("hours_chart.head");
    if (groups.size() > 1) name = w("hours_chart.head_of", {{"areas", w.joined(letters)}});
    rows.push_back({std::move(name), std::move(hours)});
  }
  return rows;
}

typeset::Drawing hoursOf(const sheets::Day& day, const model::JobResult& x, const sheets::Formatter& w,
                         const drawings::Pen& pen, typeset::Dim width) {
  drawings::HoursDay hours;
  const auto minutesOf = [&](const std::optional<base::LocalTime>& t) {
    return t && t->day == day.date ? std::optional(t->minutes) : std::nullopt;
  };
  const auto there = sheets::onSite(day);
  int last = std::max(there.until, x.c.job.crew.endMinutes);
  hours.lastStart = minutesOf(day.site->lastStart);
  hours.lastStroke = minutesOf(day.site->lastStroke);
  last = std::max(last, hours.lastStroke.value_or(0));
  hours.isWiped = model::wipingOn(x.plan, x.content, day.date).has_value();
  hours.from = std::min(there.from, x.c.job.crew.startMinutes) / 60;
  hours.until = std::min(24, (last + 59) / 60);
  hours.clock = axisOf(hours.from, hours.until, w, x.c.region->monthFirst);
  for (const auto& light : x.plan.light) {
    if (light.date != day.date) continue;
    hours.sunrise = minutesOf(light.sunrise);
    hours.sunset = minutesOf(light.sunset);
  }
  hours.rows = rowsOf(day, x, w);
  const auto people = sheets::peopleOf(day, x, w);
  const auto texts = sheets::rowTexts(people, x, w);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    drawings::PersonLane lane{texts[i].name, texts[i].text, {}};
    const std::size_t shared = texts.size() - people.size();  // 1 where all begin alike
    if (i >= shared)
      for (const auto& run : people[i - shared].runs)
        lane.bars.push_back(
            {run.from, run.until, run.words, run.verb, sheets::noteText(run, texts[i], w), run.isWork});
    hours.people.push_back(std::move(lane));
  }
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
    const auto pages = sheets::pagesOfCoats((*days)[i]);
    for (std::size_t page = 0; page < pages.size(); ++page) {
      const auto strips = [=, coats = pages[page], &x](Dim height) {
        return stripsOf((*days)[i], coats, x, w, pen, {width, height});
      };
      drawings.emplace("strips-" + number + (page == 0 ? "" : "-" + std::to_string(page + 1)),
                       typeset::DrawingRequest({Dim::mm(40), Dim::mm(190)}, strips));
    }
    const auto hours = [=, &x] { return hoursOf((*days)[i], x, w, pen, width); };
    drawings.emplace("hours-" + number, typeset::DrawingRequest(hours));
  }
  drawings.emplace("days", typeset::DrawingRequest(
                               [=, &x] { return drawings::glanceChart(glanceOf(*days, x, w), pen, width); }));
}

}  // namespace app
