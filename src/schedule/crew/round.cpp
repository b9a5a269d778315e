#include "schedule/crew/round.h"

#include <algorithm>

namespace schedule {

int Round::begun() const { return flow.rests.empty() ? start : std::min(start, flow.rests.front().first); }

int Round::end() const { return std::max(flow.end, start + (shared.empty() ? 0 : shared.back().until)); }

namespace {

/// A day that begins later, so that nobody waits on site for the dew to go.
void later(DayPlan& day, int minutes) {
  if (minutes <= 0) return;
  day.arrive += minutes;
  for (auto& duty : day.duties) {
    duty.shift.start.minutes += minutes;
    duty.shift.end.minutes += minutes;
  }
}

void addDuties(DayPlan& plan, const Round& round, const Work& work) {
  const base::Date day = plan.date;
  const auto all = everyone(round.people);
  const auto put = [&](const std::string& task, Where deck, int part, int pass, int from, int until,
                       const std::vector<std::size_t>& who, int strip = 0) {
    model::Shift shift{task, deck, pass, {day, from}, {day, until}, static_cast<int>(who.size()), who, part};
    plan.duties.push_back({model::Duty::What::Task, std::move(shift), strip});
  };
  for (const auto& [piece, from, until, who] : round.shared)
    put(piece.task, piece.deck, piece.part, piece.pass, round.start + from, round.start + until, who);
  for (const auto& [from, until] : round.flow.rests)
    plan.duties.push_back(
        {model::Duty::What::Rest, {{}, {}, 0, {day, from}, {day, until}, round.people, all, 0}, 0});
  int number = static_cast<int>(plan.strips.size());
  std::size_t wiping = 0;  // the duty of the strip before
  const auto& strips = round.flow.strips;
  for (const auto& strip : strips) {
    ++number;
    const Unit& unit = work.units[strip.unit];
    const CoatWork& coat = unit.coats[static_cast<std::size_t>(strip.coat - 1)];
    const auto putSlot = [&](const std::string& task, const Slot& slot) {
      put(task, unit.deck, unit.part, strip.coat, slot.start, slot.end, slot.who, number);
    };
    if (strip.cutIn) putSlot(coat.cutInTask, *strip.cutIn);
    putSlot(coat.layTask, strip.lay);
    if (!strip.wipe) continue;
    const FlowStrip* before = &strip == strips.data() ? nullptr : &strip - 1;
    if (before && before->unit == strip.unit && before->wipe == strip.wipe) ++plan.duties[wiping].strips;
    else {
      wiping = plan.duties.size();
      putSlot(coat.wipeTask, *strip.wipe);
    }
  }
  plan.strips.insert(plan.strips.end(), strips.begin(), strips.end());
}

}  // namespace

DayPlan withRound(const DayPlan* begun, base::Date day, const Round& round, const Work& work,
                  const Calendar& calendar, int last) {
  DayPlan plan = begun ? *begun : DayPlan{};
  if (!begun) {
    plan.date = day;
    plan.people = round.people;
    plan.arrive = round.begun() - calendar.morning();
  } else if (plan.strips.empty()) later(plan, round.begun() - (plan.home - calendar.evening()));
  addDuties(plan, round, work);
  int fit = 0;
  for (const auto& item : round.items) {
    for (const auto& span : item.open) fit = std::max(fit, span.until);
  }
  const int soaking = round.flow.end - round.flow.lastStroke;
  const int stroke = std::min(fit, calendar.day().until - last - soaking) / 5 * 5;
  plan.lastStroke = std::max(stroke, round.flow.lastStroke);
  plan.lastStart = *plan.lastStroke - (round.flow.lastStroke - round.flow.firstStroke);
  plan.home = round.end() + calendar.evening();
  return plan;
}

}  // namespace schedule
