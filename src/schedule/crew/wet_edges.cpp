// The strips of the calendar, deck by deck and coat by coat.
#include "schedule/crew/outcome.h"

#include <algorithm>

namespace schedule {
namespace {

using base::LocalTime;

model::StripWork workOf(const Slot& slot, base::Date day) {
  return {{day, slot.start}, {day, slot.end}, slot.who, slot.from};
}

/// From the deck's own corner.
std::optional<model::Place> wayOutOf(std::size_t deck, const Desk& desk) {
  const auto& areas = desk.graph.areas();
  if (areas[deck].outline.empty()) return {};
  const auto& own = desk.c.job.areas[deck];
  if (own.wayOut) return own.wayOut;
  const Way* out = desk.graph.wayOut(deck);
  if (!out) return {};
  double left = areas[deck].outline.front().x, top = areas[deck].outline.front().y;
  for (const auto& p : areas[deck].outline) {
    left = std::min(left, p.x);
    top = std::min(top, p.y);
  }
  const auto drawn = model::extentOf(*model::outlineOf(own)).from;
  const auto length = [](double metres) {
    return base::Length{static_cast<std::int64_t>(metres * 1000 + (metres < 0 ? -0.5 : 0.5)) * 1'000'000};
  };
  return model::Place{length(out->at().x - left) + drawn.x, length(out->at().y - top) + drawn.y};
}

}  // namespace

std::vector<model::WetEdge> wetEdgesOf(const Found& found, const Schedule& schedule, const Desk& desk,
                                       const model::Estimate& e) {
  std::vector<model::WetEdge> edges;
  for (const auto& need : e.coats) {
    model::WetEdge edge;
    edge.deck = need.deck;
    edge.coat = need.coat;
    edge.wayOut = wayOutOf(need.deck, desk);
    const Unit* first = nullptr;
    base::Wide before = 0, whole = 0;
    for (const auto& unit : found.work.units) {
      if (unit.deck != need.deck) continue;
      whole += wholeUnit;
      if (unit.row) whole = unit.row->whole;
    }
    if (whole == 0) continue;
    const base::Area area = e.decks[need.deck].area;
    const auto upTo = [&](base::Wide size) {
      return base::Area{base::divide(size * area.millionths, whole, base::Round::HalfUp)};
    };
    for (const auto& day : schedule.days) {
      int n = 0;
      for (const auto& s : day.strips) {
        ++n;
        const Unit& unit = found.work.units[s.unit];
        if (unit.deck != need.deck || s.coat != need.coat) continue;
        if (!first) {
          first = &unit;
          edge.startsAtEnd = !unit.runs.empty() && unit.runs.front().isDown;
          edge.openMinutes = s.openMinutes;
        }
        model::BoardStrip strip;
        strip.deck = need.deck;
        strip.number = n;
        strip.fromBoard = s.fromBoard;
        strip.boards = s.boards;
        strip.area = upTo(before + s.size) - upTo(before);
        before += s.size;
        strip.minutes = s.lay.end - s.lay.start;
        strip.coat = s.coat;
        strip.part = unit.part;
        strip.openMinutes = s.openMinutes;
        strip.isTooLong = s.isTooLong;
        strip.goesOn = s.goesOn;
        if (s.cutIn) strip.cutIn = workOf(*s.cutIn, day.date);
        if (s.wipe) strip.wipe = workOf(*s.wipe, day.date);
        strip.lay = workOf(s.lay, day.date);
        edge.openMinutes = std::min(edge.openMinutes, s.openMinutes);
        edge.isTooLong = edge.isTooLong || s.isTooLong;
        edge.strips.push_back(std::move(strip));
      }
    }
    if (!edge.strips.empty()) edges.push_back(std::move(edge));
  }
  return edges;
}

}  // namespace schedule
