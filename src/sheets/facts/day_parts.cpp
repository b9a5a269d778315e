#include "sheets/facts/day_parts.h"

#include "model/lookup.h"
#include "sheets/facts/facts_decks.h"

#include <algorithm>
#include <numeric>

namespace sheets {
namespace {

/// All shifts of one coat on one deck that lay product.
std::vector<const model::Shift*> strokesOf(const model::JobResult& x, std::size_t deck, int coat) {
  std::vector<const model::Shift*> strokes;
  for (const auto& shift : x.plan.shifts) {
    if (shift.deck == deck && shift.pass == coat && model::laysProduct(model::taskOf(x.content, shift.task)))
      strokes.push_back(&shift);
  }
  return strokes;
}

/// A coat with its strips.
struct TimedCoat {
  const model::CoatNeed* need = nullptr;
  const model::WetEdge* edge = nullptr;
  std::vector<const model::Shift*> strokes;
  std::int64_t litres = 0;  // steps
  std::vector<std::pair<base::LocalTime, DayStrip>> strips;
};

void timeStrips(TimedCoat& coat) {
  if (coat.edge == nullptr) return;
  base::Area whole;
  std::vector<std::int64_t> areas;
  for (const auto& s : coat.edge->strips) {
    whole += s.area;
    areas.push_back(s.area.millionths);
  }
  const std::int64_t step =
      std::max<std::int64_t>(1, whole.millionths / std::max<std::int64_t>(1, coat.litres));
  auto litres = apportioned(areas, step);  // may miss the sum by a step, which the largest takes
  *std::max_element(litres.begin(), litres.end()) +=
      coat.litres - std::accumulate(litres.begin(), litres.end(), std::int64_t{0});
  for (std::size_t i = 0; i < coat.edge->strips.size(); ++i) {
    const auto& strip = coat.edge->strips[i];
    coat.strips.push_back({strip.lay.start, {&strip, strip.lay.start.minutes, litres[i]}});
  }
}

std::vector<TimedCoat> coatsOf(const model::JobResult& x, const Formatter& w) {
  const auto litres = printedLitres(x, w);
  std::vector<TimedCoat> coats;
  std::vector<std::size_t> count(x.c.job.areas.size());
  for (const auto& need : x.estimate.coats) {
    TimedCoat coat{
        &need, nullptr, strokesOf(x, need.deck, need.coat), litres[need.deck][count[need.deck]++], {}};
    for (const auto& edge : x.plan.edges) {
      if (edge.deck == need.deck && edge.coat == need.coat) coat.edge = &edge;
    }
    timeStrips(coat);
    coats.push_back(std::move(coat));
  }
  return coats;
}

/// The part of a coat that is laid on a day; nothing when it is another day's.
std::optional<DayCoat> partOf(const TimedCoat& coat, base::Date date) {
  DayCoat part{coat.need->deck, coat.need->coat, 24 * 60, 0, {}, {}, 0, coat.need, coat.edge, {}};
  for (const auto* s : coat.strokes) {
    if (s->start.day > date && !part.goesOn) part.goesOn = s->start.day;
    if (s->start.day != date) continue;
    part.from = std::min(part.from, s->start.minutes);
    part.until = std::max(part.until, s->end.minutes);
  }
  if (part.until == 0) return std::nullopt;
  for (const auto& [at, strip] : coat.strips) {
    if (at.day != date) continue;
    part.strips.push_back(strip);
    part.litres += strip.litres;
    part.area += strip.strip->area;
  }
  return part;
}

/// The tins of the job, largest first: those from the shed and those bought.
std::vector<model::TinCount> tinsOf(const model::ProductNeed& need) {
  std::vector<model::TinCount> tins = need.bought.tins;
  for (const auto& stock : need.opened) {
    const auto same =
        std::find_if(tins.begin(), tins.end(), [&](const auto& t) { return t.tin.size == stock.size; });
    if (same != tins.end()) same->count += stock.count;
    else tins.push_back({{stock.size, {}}, stock.count});
  }
  std::stable_sort(tins.begin(), tins.end(),
                   [](const auto& a, const auto& b) { return a.tin.size > b.tin.size; });
  return tins;
}

/// The tins to open for a need: large ones while they are emptied, then the smallest that covers the rest.
void openTins(Day& day, std::vector<model::TinCount>& shelf, base::Volume need, base::Volume& open) {
  day.open = open;
  while (open < need) {
    model::TinCount* next = nullptr;
    for (auto& tin : shelf) {
      if (tin.count == 0) continue;
      next = &tin;  // the shelf is in order of size: at last the smallest
      if (tin.tin.size <= need - open) break;
    }
    if (next == nullptr) break;
    --next->count;
    open += next->tin.size;
    const auto same = std::find_if(day.tins.begin(), day.tins.end(),
                                   [&](const auto& t) { return t.tin.size == next->tin.size; });
    if (same != day.tins.end()) ++same->count;
    else day.tins.push_back({next->tin, 1});
  }
  open = open < need ? base::Volume{} : open - need;
}

}  // namespace

std::vector<Day> daysOf(const model::JobResult& x, const Formatter& w) {
  const auto coats = coatsOf(x, w);
  std::vector<Day> days;
  std::vector<bool> isBegun(x.c.job.areas.size());
  auto shelf = tinsOf(x.resources.product);
  base::Volume open;
  for (const auto& site : x.plan.days) {
    const base::Date date = site.date;
    Day day;
    day.date = date;
    day.site = &site;
    for (const auto& shift : x.plan.shifts) {
      if (shift.start.day != date) continue;
      day.shifts.push_back(&shift);
      if (!shift.deck || isBegun[*shift.deck]) continue;
      isBegun[*shift.deck] = true;
      day.firstOn.push_back(*shift.deck);
    }
    std::sort(day.firstOn.begin(), day.firstOn.end());
    std::int64_t steps = 0;
    for (const auto& coat : coats) {
      if (auto part = partOf(coat, date)) {
        steps += part->litres;
        day.coats.push_back(std::move(*part));
      }
    }
    std::stable_sort(day.coats.begin(), day.coats.end(),
                     [](const auto& a, const auto& b) { return a.from < b.from; });
    openTins(day, shelf, w.volumeStep() * steps, open);
    days.push_back(std::move(day));
  }
  return days;
}

}  // namespace sheets
