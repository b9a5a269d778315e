#include "schedule/crew/records.h"

#include "base/quantity_words.h"
#include "model/plain.h"
#include "schedule/crew/dates.h"
#include "schedule/weather/air.h"
#include "schedule/weather/zone.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace schedule {
namespace {

using model::DoneCoat;
using model::Event;

/// A coat from the start of its first part to the end of its last.
struct Laid {
  std::size_t deck = 0;
  int coat = 1;
  base::LocalTime start, end;
};

std::vector<Laid> laidCoats(const std::vector<DoneCoat>& done) {
  std::vector<Laid> coats;
  for (const auto& d : done) {
    const auto same = std::find_if(coats.begin(), coats.end(),
                                   [&](const auto& c) { return c.deck == d.deck && c.coat == d.coat; });
    if (same == coats.end()) {
      coats.push_back({d.deck, d.coat, d.start, d.end});
    } else {
      same->start = std::min(same->start, d.start);
      same->end = std::max(same->end, d.end);
    }
  }
  return coats;
}

const Laid* recordOf(const std::vector<Laid>& laid, std::size_t deck, int coat) {
  const auto found =
      std::find_if(laid.begin(), laid.end(), [&](const auto& d) { return d.deck == deck && d.coat == coat; });
  return found == laid.end() ? nullptr : &*found;
}

/// Takes the recorded decks out of the planned events of their coat; an event of no deck any more goes.
void takeOut(std::vector<Event>& events, const std::vector<Laid>& laid, std::size_t decks) {
  for (auto& event : events) {
    if (event.coat == 0) continue;
    const bool holdsForAll = event.decks.empty();
    for (std::size_t deck = 0; holdsForAll && deck < decks; ++deck) event.decks.push_back(deck);
    std::erase_if(event.decks, [&](std::size_t deck) {
      return std::any_of(laid.begin(), laid.end(),
                         [&](const auto& d) { return d.deck == deck && d.coat == event.coat; });
    });
  }
  std::erase_if(events, [](const auto& e) { return e.coat > 0 && e.decks.empty(); });
}

/// One event for the decks whose coat began or ended at the same time.
void putIn(std::vector<Event>& events, model::Moment what, int coat, base::LocalTime at, std::size_t deck) {
  for (auto& event : events) {
    if (event.what == what && event.coat == coat && event.at == at) {
      event.decks.push_back(deck);
      return;
    }
  }
  events.push_back({what, coat, at, 0, {deck}});
}

/// A planned coat that would lie before a recorded one below it, or too soon after it, has no sense: whoever
/// records late weather has to move the rest.
void warnOfOldPlans(const std::vector<Event>& planned, const std::vector<Laid>& laid,
                    const model::JobInputs& c, base::Diagnostics& messages) {
  for (const auto& event : planned) {
    if (event.what != model::Moment::CoatStart || event.coat == 1) continue;
    for (const auto deck : event.decks) {
      const auto* below = recordOf(laid, deck, event.coat - 1);
      const auto& least = c.product->times.recoatMin;
      if (below == nullptr || between(c.job.site.timezone, below->end, event.at) >= least) continue;
      const std::string until = event.at < below->end
                                    ? " was finished"
                                    : " has waited the product's least, " + model::plain(least, 1) + " h";
      messages.warn({}, "done",
                    "coat " + std::to_string(event.coat) + " of '" + c.job.areas[deck].name +
                        "' is planned before coat " + std::to_string(event.coat - 1) + until,
                    "record it as well, or move 'start'");
    }
  }
}

/// The dew point nobody has to write down: air and humidity tell it.
void warnOfDew(const model::JobInputs& c, base::Diagnostics& messages) {
  const auto number = [](auto measured) { return static_cast<double>(measured.millionths) / 1e6; };
  std::set<std::size_t> told;  // entries that hold for several decks are told once
  for (const auto& d : c.job.done) {
    if (!d.air || !d.surface || !d.humidity || d.humidity->isZero()) continue;
    if (*d.air > base::Temperature::whole(60)) continue;  // the formula's range ends there
    const double margin = dewMargin(number(*d.surface), number(*d.air), number(*d.humidity));
    if (margin >= leastDewMargin || !told.insert(d.entry).second) continue;
    // Rounded down, so that 2.96 K does not read as 3.
    const auto tenths = static_cast<std::int64_t>(std::floor(margin * 10));
    messages.warn({}, "done",
                  "coat " + std::to_string(d.coat) + " of '" + c.job.areas[d.deck].name +
                      "' was laid on boards " + base::decimal(tenths * 100'000, 1, ".", "") +
                      " K above the dew point, less than 3 K",
                  "check what was measured; if it is right, look for dull spots on the next visit");
  }
}

/// Every measured value that the product does not allow is told at its record, once for all its decks.
void warnOfLimits(const model::JobInputs& c, base::Diagnostics& messages) {
  const auto& limits = c.product->limits;
  std::set<std::size_t> told;
  for (const auto& d : c.job.done) {
    if (!told.insert(d.entry).second) continue;
    const auto say = [&](const char* key, const std::string& measured, const std::string& limit) {
      messages.warn(d.pos, "done[" + std::to_string(d.entry + 1) + "]." + key,
                    measured + ", and the product is not laid " + limit,
                    "check what was measured; if it is right, look at the coat on the next visit");
    };
    const auto degrees = [&](base::Temperature t) { return model::plainTemperature(t, c.region->units); };
    const auto percent = [](base::Share s) { return model::plain(s) + " %"; };
    if (d.air && *d.air < limits.airMin)
      say("air", "air of " + degrees(*d.air), "below " + degrees(limits.airMin));
    if (d.air && *d.air > limits.airMax)
      say("air", "air of " + degrees(*d.air), "above " + degrees(limits.airMax));
    if (d.surface && *d.surface > limits.surfaceMax)
      say("surface", "boards of " + degrees(*d.surface), "above " + degrees(limits.surfaceMax));
    if (d.humidity && *d.humidity > limits.humidityMax)
      say("humidity", "humidity of " + percent(*d.humidity), "above " + percent(limits.humidityMax));
    if (d.moisture && *d.moisture > limits.moistureMax)
      say("moisture", "wood of " + percent(*d.moisture) + " moisture",
          "above " + percent(limits.moistureMax));
  }
}

}  // namespace

void checkRecordedTimes(const model::Job& job, base::Diagnostics& messages) {
  const auto& zone = job.site.timezone;
  if (!isZone(zone)) return;
  std::set<std::size_t> told;
  for (const auto& d : job.done) {
    if (!told.insert(d.entry).second) continue;
    const auto check = [&](base::LocalTime t, const base::SourcePos& pos, const char* key) {
      if (utcToLocal(zone, localToUtc(zone, t)) == t) return;
      messages.error(
          pos, "done[" + std::to_string(d.entry + 1) + "]." + key,
          "the clocks at the site skip " + base::isoClock(t.minutes) + " on " + base::isoDate(t.day),
          "they go forward that night; write the time as the clock showed it");
    };
    check(d.start, d.fromPos, "from");
    check(d.end, d.toPos, "to");
  }
}

void applyRecords(model::Plan& plan, const model::JobInputs& c, base::Diagnostics& messages) {
  const auto& done = c.job.done;
  if (done.empty()) return;
  const auto laid = laidCoats(done);
  takeOut(plan.events, laid, c.job.areas.size());
  warnOfOldPlans(plan.events, laid, c, messages);
  warnOfDew(c, messages);
  warnOfLimits(c, messages);
  for (const auto& d : laid) {
    putIn(plan.events, model::Moment::CoatStart, d.coat, d.start, d.deck);
    putIn(plan.events, model::Moment::CoatEnd, d.coat, d.end, d.deck);
  }
  plan.finished = {};
  for (const auto& event : plan.events) {
    if (event.what == model::Moment::CoatEnd) plan.finished = std::max(plan.finished, event.at);
  }
  std::erase_if(plan.misses,
                [&](const auto& miss) { return recordOf(laid, miss.deck, miss.coat) != nullptr; });
  addDates(plan, c, Calendar(c.job, c.region, 0, 0));
}

void applyDayDone(model::Plan& plan, const model::JobInputs& c) {
  plan.finished = {c.job.doneOn.value(), c.job.crew.endMinutes};
  addDates(plan, c, Calendar(c.job, c.region, 0, 0));
}

}  // namespace schedule
