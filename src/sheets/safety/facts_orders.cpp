// Five orders with a number: noise, vibration, heat, sun, people. A number whose source is from memory is not
// printed.
#include "model/lookup.h"
#include "sheets/safety/day_values.h"
#include "sheets/safety/facts_safety.h"

#include <algorithm>
#include <cmath>

namespace sheets {
namespace {

const model::Hazard* applying(const model::JobResult& x, model::Condition condition) {
  for (std::size_t i = 0; i < x.hazards.size(); ++i) {
    const auto& hazard = x.content.hazards[i];
    const auto& all = hazard.when.all;
    if (x.hazards[i].applies && hazard.tasks.empty() && all.size() == 1 && all[0].condition == condition)
      return &hazard;
  }
  return nullptr;
}

std::string controlsOf(const model::JobResult& x, const model::Hazard* hazard, std::size_t most,
                       const Formatter& w) {
  return hazard ? firstControls(hazardFacts(x, *hazard, w), most) : "";
}

/// Down to the full five minutes: '1 h 25'.
std::string hoursAndMinutes(const Formatter& w, double minutes) {
  const int whole = static_cast<int>(std::floor(minutes / 5)) * 5;
  const std::string rest = std::to_string(whole % 60);
  const std::string padded = (rest.size() < 2 ? "0" : "") + rest;
  if (whole < 60) return rest + "\u00A0" + w("units.minute");
  return std::to_string(whole / 60) + "\u00A0" + w("units.hour") + "\u00A0" + padded;
}

Facts order(const std::string& label, const std::string& words, const std::string& more) {
  return {{"label", label}, {"order", words}, {"more", more}};
}

std::string protectorWords(const model::Protector& p, const Formatter& w) {
  const std::string n = std::to_string(p.least);
  if (p.isBeyond) return w("leaf.noise.ask");
  if (p.isBoth) return w("leaf.noise.both");
  switch (p.rule) {
    case model::ProtectorRule::Class:
      return w("leaf.noise.class", {{"n", n}});
    case model::ProtectorRule::Snr:
      return w("leaf.noise.snr", {{"n", n}, {"most", std::to_string(p.most)}});
    case model::ProtectorRule::Nrr:
      return w("leaf.noise.nrr", {{"n", n}});
  }
  return "";
}

void addNoise(FactList& list, const model::JobResult& x, const Formatter& w) {
  const auto& days = x.exposure.noise;
  if (days.empty()) return;
  const auto& limits = x.exposure.limits.noise;
  const int loudest = hardest(days, [](const auto& day) { return day.loudest; })->loudest;
  const auto& protector = x.exposure.protector;
  const std::string level = w("leaf.noise.level", {{"level", std::to_string(loudest)}});
  if (!protector.isNeeded) return list.push_back(order(w("leaf.noise.label"), w("leaf.noise.none"), level));
  list.push_back(order(w("leaf.noise.label"),
                       isTold(limits.source) ? protectorWords(protector, w) : w("leaf.noise.ask"),
                       w("leaf.noise.more") + (isTold(limits.source) ? " " + level : "")));
}

/// What is left of the hardest day for the tool that shakes most, when the day's other tools are used as
/// planned.
void addVibration(FactList& list, const model::JobResult& x, const Formatter& w) {
  const auto& days = x.exposure.vibration;
  if (days.empty()) return;
  const auto& day = *hardest(days, [](const auto& d) { return d.a8; });
  const auto& limits = x.exposure.limits.vibration;
  const auto& tool = day.tools.front();
  constexpr double workday = 8 * 60;
  const std::string label = w("leaf.vibration.label");
  if (!limits.action || !isTold(limits.source))
    return list.push_back(order(label, w("leaf.vibration.swap"), w("leaf.vibration.swap_more")));
  const double left = day.minutesLeft;
  if (left >= workday || left < 5)
    return list.push_back(order(label, w(left < 5 ? "leaf.vibration.share" : "leaf.vibration.swap"),
                                w(left < 5 ? "leaf.vibration.share_more" : "leaf.vibration.swap_more")));
  std::string name = tool.tool;
  for (const auto& t : x.content.tools) {
    if (t.id == tool.tool) name = t.name;
  }
  list.push_back(order(label, w("leaf.vibration.each", {{"time", hoursAndMinutes(w, left)}}),
                       w("leaf.vibration.more", {{"tool", name}, {"day", w.shortDay(day.date)}})));
}

void addHeat(FactList& list, const model::JobResult& x, const Formatter& w, Room room) {
  const auto& e = x.exposure;
  const auto* hottest = hardest(e.heat, [](const auto& day) { return day.celsius; });
  const std::string label = w("leaf.heat.label");
  if (!hottest) return list.push_back(order(label, w("leaf.heat.cup"), w("leaf.heat.unknown")));
  const std::string felt =
      std::to_string(std::lround(inDegrees(w, hottest->celsius))) + "\u00A0" + degreeSign(w);
  const bool isInSun = hottest->isInSun && !e.limits.heat.usesHeatIndex;
  std::string more =
      w(isInSun ? "leaf.heat.sun" : "leaf.heat.shade", {{"day", w.shortDay(hottest->date)}, {"felt", felt}});
  const auto* hazard = applying(x, model::Condition::HotDay);
  if (!hazard) return list.push_back(order(label, w("leaf.heat.hourly"), more));
  if (room < Room::Few)
    more += " " + w("leaf.heat.new", {{"time", hoursAndMinutes(w, e.newToHeatHours * 60)}});
  if (hottest->band >= model::HeatBand::Danger) more += " " + w("leaf.heat.stop");
  list.push_back(order(label, w("leaf.heat.cup"), more + " " + controlsOf(x, hazard, 1, w)));
}

void addSun(FactList& list, const model::JobResult& x, const Formatter& w) {
  if (!applying(x, model::Condition::InSun)) return;
  std::string more = w("leaf.sun.more", {{"pause", w.clock(model::breakOf(x.c.job.crew).from)}});
  if (const auto* hot = applying(x, model::Condition::BoardsAbove)) more += " " + controlsOf(x, hot, 1, w);
  list.push_back(order(w("leaf.sun.label"), w("leaf.sun.order"), more));
}

void addPeople(FactList& list, const model::JobResult& x, const Formatter& w, Room room) {
  std::string more;
  for (const auto condition : {model::Condition::Public, model::Condition::Children}) {
    const std::string words = controlsOf(x, applying(x, condition), room < Room::Few ? 2 : 1, w);
    if (!words.empty()) more += (more.empty() ? "" : " ") + words;
  }
  list.push_back(
      order(w("leaf.people.label"), w("leaf.people.order"), more.empty() ? w("leaf.people.more") : more));
}

}  // namespace

void addOrders(Facts& f, const model::JobResult& x, const Formatter& w, Room room) {
  FactList list;
  addNoise(list, x, w);
  addVibration(list, x, w);
  addHeat(list, x, w, room);
  addSun(list, x, w);
  addPeople(list, x, w, room);
  f.emplace_back("orders", std::move(list));
}

}  // namespace sheets
