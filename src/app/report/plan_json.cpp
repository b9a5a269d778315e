#include "app/report/figures_json.h"
#include "app/report/plan_site_json.h"
#include "app/report/plan_text.h"
#include "model/crew_time.h"
#include "model/lookup.h"
#include "model/names.h"
#include "model/wiping.h"
#include "schedule/crew/calendar.h"
#include "schedule/crew/coat_flow.h"
#include "schedule/crew/schedule.h"
#include "schedule/crew/search.h"
#include "schedule/site/walks.h"
#include "schedule/weather/zone.h"

#include <cmath>
#include <map>

namespace app {
namespace {

using nlohmann::ordered_json;

/// Physics is told to a hundredth.
double hundredths(double v) { return std::round(v * 100) / 100; }

std::string sourceId(model::WeatherSource source) {
  switch (source) {
    case model::WeatherSource::None:
      return "none";
    case model::WeatherSource::Forecast:
      return "forecast";
    case model::WeatherSource::Normals:
      return "normals";
  }
  return {};
}

std::string missId(model::WindowViolation::Why why) {
  switch (why) {
    case model::WindowViolation::Why::Weather:
      return "weather";
    case model::WindowViolation::Why::DaysOff:
      return "days_off";
    case model::WindowViolation::Why::CoatingHours:
      return "coating_hours";
    case model::WindowViolation::Why::LargeDeck:
      return "large_area";
    case model::WindowViolation::Why::Access:
      return "access";
  }
  return {};
}

double inHours(base::Hours h) { return static_cast<double>(h.millionths) / 1e6; }

struct Json {
  const PlanReport& r;

  const model::Job& job() const { return r.x.c.job; }
  const model::Plan& plan() const { return r.x.plan; }
  double inMoney(base::Money m) const {
    return static_cast<double>(m.minor) / std::pow(10, r.x.c.region->currencyDigits);
  }
  static ordered_json orNull(int n) { return n > 0 ? ordered_json(n) : ordered_json(nullptr); }
  std::string area(std::size_t deck) const { return job().areas[deck].name; }
  std::string at(base::LocalTime t) const {
    return isoWithOffset(t, schedule::utcOffset(job().site.timezone, t));
  }
  ordered_json maybe(const std::optional<base::LocalTime>& t) const {
    return t ? ordered_json(at(*t)) : ordered_json(nullptr);
  }

  ordered_json hour(const model::Hour& h) const {
    ordered_json j{{"at", at(h.at)}, {"area", area(h.deck)}, {"fit", h.isFit}};
    j["reasons"] = ordered_json::array();
    for (const auto gate : h.reasons) j["reasons"].push_back(model::nameOf(gate));
    j["source"] = sourceId(h.source);
    const bool isKnown = h.source != model::WeatherSource::None;
    const auto put = [&](const char* name, double value) {
      j[name] = isKnown ? ordered_json(hundredths(value)) : ordered_json(nullptr);
    };
    put("air_c", h.air.celsius);
    put("rh_pct", h.air.humidity);
    put("cloud_pct", h.air.cloud * 100);
    put("wind_ms", h.air.wind);
    put("rain_mm", h.air.rain);
    put("dew_point_c", h.dewPoint);
    put("emc_pct", h.woodMoisture);
    put("surface_c", h.surface);
    j["sun_elevation_deg"] = hundredths(h.sunElevation);
    return j;
  }

  ordered_json names(const std::vector<std::size_t>& who) const {
    auto list = ordered_json::array();
    for (const auto person : who) list.push_back(model::personName(job().crew, person));
    return list;
  }
  std::string place(const schedule::Where& where) const { return where ? area(*where) : "ground"; }

  ordered_json crew() const {
    const auto& c = job().crew;
    return {{"from", base::isoClock(c.startMinutes)},
            {"until", base::isoClock(c.endMinutes)},
            {"break_minutes", c.breakMinutes}};
  }

  ordered_json rules() const {
    const auto& t = r.x.c.product->times;
    const int wait = model::wipeOffMinutes(t);
    return {{"open_minutes", base::divide(base::Wide{r.x.c.product->openTime.millionths} * 60, 1'000'000,
                                          base::Round::HalfUp)},
            {"wipe_after_minutes", wait},
            {"wipe_by_minutes", 2 * wait},
            {"reach_m", schedule::poleReach},
            {"coat_within_days", schedule::coatWithinDays},
            {"touch_dry_h", inHours(t.touchDry)},
            {"recoat_min_h", inHours(t.recoatMin)},
            {"recoat_max_h", inHours(t.recoatMax)},
            {"walk_h", inHours(t.walk)},
            {"least_piece_minutes", schedule::leastPiece}};
  }

  /// The public holidays on which the crew stays at home, by date.
  std::map<base::Date, std::string> holidays() const {
    std::map<base::Date, std::string> names;
    if (r.light.empty()) return names;
    const base::Date first = r.light.front().date, last = r.light.back().date;
    const auto yearOf = [](base::Date d) { return int{std::chrono::year_month_day{d}.year()}; };
    for (int year = yearOf(first); year <= yearOf(last); ++year) {
      for (const auto& h : model::holidaysOff(job(), *r.x.c.region, year)) {
        if (h.date >= first && h.date <= last) names.emplace(h.date, h.rule->name);
      }
    }
    return names;
  }

  ordered_json heldBy(const model::DayHold& hold) const {
    return {{"why", model::nameOf(hold.why)},
            {"until", maybe(hold.until)},
            {"gate", hold.gate ? ordered_json(model::nameOf(*hold.gate)) : ordered_json(nullptr)}};
  }

  /// The first so many of the crew.
  ordered_json people(int count) const {
    auto names = ordered_json::array();
    for (int p = 0; p < count; ++p)
      names.push_back(model::personName(r.x.c.job.crew, static_cast<std::size_t>(p)));
    return names;
  }

  ordered_json day(const model::SunDay& d, const schedule::Calendar& calendar,
                   const std::map<base::Date, std::string>& holidays) const {
    ordered_json j{
        {"date", base::isoDate(d.date)}, {"sunrise", maybe(d.sunrise)}, {"sunset", maybe(d.sunset)}};
    const auto there =
        std::find_if(plan().days.begin(), plan().days.end(), [&](const auto& s) { return s.date == d.date; });
    const bool isWorked = there != plan().days.end();
    const std::optional<base::LocalTime> none;
    j["people"] = isWorked ? people(there->people) : ordered_json::array();
    j["arrive"] = maybe(isWorked ? std::optional(there->arrive) : none);
    j["home"] = maybe(isWorked ? std::optional(there->home) : none);
    j["last_start"] = maybe(isWorked ? there->lastStart : none);
    j["last_stroke"] = maybe(isWorked ? there->lastStroke : none);
    j["held_by"] = isWorked && there->heldBy ? heldBy(*there->heldBy) : ordered_json(nullptr);
    j["tighter_minutes"] = isWorked ? there->tighter : 0;
    j["off"] = !calendar.isWorkday(d.date);
    const auto holiday = holidays.find(d.date);
    j["holiday"] = holiday == holidays.end() ? ordered_json(nullptr) : ordered_json(holiday->second);
    return j;
  }

  ordered_json task(const model::Duty& d) const {
    const auto& s = d.shift;
    const bool isTask = d.what == model::Duty::What::Task;
    const auto* task = isTask ? &model::taskOf(r.content, s.task) : nullptr;
    const bool isCoat = isTask && (task->isPerCoat || task->isForLateCoat);
    ordered_json j{{"task", isTask                              ? s.task
                            : d.what == model::Duty::What::Rest ? "rest"
                                                                : "wait"},
                   {"area", s.deck ? ordered_json(area(*s.deck)) : ordered_json(nullptr)},
                   {"coat", isCoat ? ordered_json(s.pass) : ordered_json(nullptr)},
                   {"part", orNull(s.part)}};
    if (!isCoat && s.pass > 0) j["grit"] = s.pass;
    j["start"] = at(s.start);
    j["end"] = at(s.end);
    j["people"] = names(s.who);
    if (d.strip > 0) j["strips"] = {d.strip, d.strip + d.strips - 1};
    return j;
  }

  ordered_json step(const std::optional<model::StripWork>& s, bool isStoodOn) const {
    if (!s) return nullptr;
    std::string from = isStoodOn ? "boards" : "ground";
    if (s->from.on == model::Stand::On::Ground) from = "ground";
    if (s->from.on == model::Stand::On::Deck) from = area(s->from.deck);
    if (s->from.on == model::Stand::On::Strip) from = "strip";
    return {{"start", at(s->start)}, {"end", at(s->end)}, {"people", names(s->who)}, {"from", from}};
  }

  ordered_json strips(const schedule::AccessGraph& graph) const {
    struct One {
      const model::BoardStrip* strip;
      double litres;
    };
    std::vector<One> all;
    for (const auto& edge : plan().edges) {
      double litres = 0, area = 0;
      for (const auto& need : r.x.estimate.coats) {
        if (need.deck == edge.deck && need.coat == edge.coat)
          litres = static_cast<double>(base::increased(need.litres, job().loss).millionths) / 1e9;
      }
      for (const auto& s : edge.strips) area += static_cast<double>(s.area.millionths);
      for (const auto& s : edge.strips)
        all.push_back({&s, area > 0 ? litres * static_cast<double>(s.area.millionths) / area : 0});
    }
    std::sort(all.begin(), all.end(), [](const One& a, const One& b) {
      return std::pair{a.strip->lay.start.day, a.strip->number} <
             std::pair{b.strip->lay.start.day, b.strip->number};
    });
    const SiteJson site(job());
    auto list = ordered_json::array();
    for (const auto& [s, litres] : all) {
      const bool isStoodOn = graph.areas()[s->deck].isStoodOn;
      list.push_back({{"n", s->number},
                      {"date", base::isoDate(s->lay.start.day)},
                      {"area", area(s->deck)},
                      {"coat", s->coat},
                      {"part", orNull(s->part)},
                      {"outline", site.outlineOf(*s)},
                      {"boards", s->boards > 0 ? ordered_json{s->fromBoard + 1, s->fromBoard + s->boards}
                                               : ordered_json(nullptr)},
                      {"litres", std::round(litres * 1000) / 1000},
                      {"open_minutes", s->openMinutes},
                      {"too_long", s->isTooLong},
                      {"meets", s->goesOn ? ordered_json(s->number - 1) : ordered_json(nullptr)},
                      {"cut_in", step(s->cutIn, isStoodOn)},
                      {"lay", step(s->lay, isStoodOn)},
                      {"wipe", step(s->wipe, isStoodOn)}});
    }
    return list;
  }

  ordered_json coats() const {
    auto list = ordered_json::array();
    for (const auto& c : plan().coats)
      list.push_back({{"area", area(c.deck)},
                      {"coat", c.coat},
                      {"part", orNull(c.part)},
                      {"start", at(c.start)},
                      {"end", at(c.end)},
                      {"touch_dry", at(c.touchDry)},
                      {"recoat_from", at(c.recoatFrom)},
                      {"recoat_until", at(c.recoatUntil)},
                      {"walk", at(c.walk)}});
    return list;
  }

  ordered_json walks(const schedule::AccessGraph& graph) const {
    auto list = ordered_json::array();
    for (const auto& w : schedule::walksOf(plan(), graph)) {
      auto over = ordered_json::array();
      for (const auto deck : w.over) over.push_back(area(deck));
      list.push_back({{"person", model::personName(job().crew, w.person)},
                      {"start", at(w.start)},
                      {"from", place(w.from)},
                      {"to", place(w.to)},
                      {"over", over}});
    }
    return list;
  }

  ordered_json cost() const {
    const auto& c = plan().cost;
    return {{"site_days", c.siteDays},
            {"person_minutes", c.personMinutes},
            {"visits", inMoney(c.visits)},
            {"paid_hours", inMoney(c.paidHours)},
            {"extra_passes", inMoney(c.extraPasses)},
            {"total", inMoney(c.total())},
            {"per_visit", inMoney(r.x.c.rates.travelPerDay)},
            {"per_person_hour", inMoney(r.x.c.rates.labourCostPerHour)}};
  }

  ordered_json work() const {
    auto list = ordered_json::array();
    for (const auto& line : r.x.resources.labour) {
      const auto& task = model::taskOf(r.content, line.task);
      if (task.measure == model::Measure::Day) continue;
      const bool isCoat = task.isPerCoat || task.isForLateCoat;
      ordered_json j{{"task", line.task},
                     {"area", line.deck ? ordered_json(area(*line.deck)) : ordered_json(nullptr)},
                     {"coat", isCoat ? ordered_json(line.pass) : ordered_json(nullptr)}};
      if (!isCoat && line.pass > 0) j["grit"] = line.pass;
      j["person_minutes"] = static_cast<double>(line.hours.millionths) * 60 / 1e6;
      list.push_back(j);
    }
    return list;
  }

  /// Hour after hour from the first day told to the last, and on to the last coat's 'walk'.
  ordered_json drying() const {
    auto list = ordered_json::array();
    base::LocalTime until{r.until, 0};
    for (const auto& c : plan().coats) until = std::max(until, c.walk);
    schedule::DryingClock clock(r.x.c);
    const auto& zone = job().site.timezone;
    for (auto t = schedule::localToUtc(zone, {r.from, 0}); t < schedule::localToUtc(zone, until);
         t += std::chrono::hours{1}) {
      const auto local = schedule::utcToLocal(zone, t);
      const auto offset = std::chrono::sys_seconds{local.day} + std::chrono::minutes{local.minutes} - t;
      const auto minutes = std::chrono::duration_cast<std::chrono::minutes>(offset).count();
      list.push_back({{"at", isoWithOffset(local, static_cast<int>(minutes))},
                      {"dries", std::round(clock.dries(local) * 1e6) / 1e6}});
    }
    return list;
  }

  ordered_json misses() const {
    auto list = ordered_json::array();
    for (const auto& m : plan().misses)
      list.push_back(
          {{"area", area(m.deck)},
           {"coat", m.coat},
           {"gap_h", inHours(m.gap)},
           {"late", m.isLate},
           {"past_max", m.isPastMax},
           {"why", missId(m.why)},
           {"gate", m.gate ? ordered_json(model::nameOf(*m.gate)) : ordered_json(nullptr)},
           {"unfit", m.isUnfit},
           {"nearest", m.nearest ? ordered_json(base::isoDate(*m.nearest)) : ordered_json(nullptr)}});
    return list;
  }
};

}  // namespace

std::string planJson(const PlanReport& report) {
  const Json write{report};
  const auto& job = report.x.c.job;
  const auto& plan = report.x.plan;
  const schedule::AccessGraph graph(job);
  const schedule::Calendar calendar(job, report.x.c.region, 0, 0);
  ordered_json j;
  j["ref"] = job.ref;
  j["weather"] = {
      {"forecast", job.forecast.steps.empty() ? ordered_json(nullptr) : ordered_json(job.forecast.file)},
      {"usual", job.normals.months.empty() ? ordered_json(nullptr) : ordered_json(job.normals.source)}};
  j["currency"] = report.x.c.region->currency;
  j["people"] = write.people(job.crew.people);
  j["crew"] = write.crew();
  j["rules"] = write.rules();
  const SiteJson site(job);
  const auto holidays = write.holidays();
  j["areas"] = site.areas(graph);
  const auto list = [&](const char* name, const auto& items, auto told) {
    j[name] = ordered_json::array();
    for (const auto& item : items) j[name].push_back(told(item));
  };
  list("days", report.light, [&](const auto& d) { return write.day(d, calendar, holidays); });
  list("tasks", plan.duties, [&](const auto& d) { return write.task(d); });
  j["coats"] = write.coats();
  j["strips"] = write.strips(graph);
  j["walks"] = write.walks(graph);
  j["cost"] = write.cost();
  list("runners_up", plan.alternatives, [&](const auto& a) {
    return ordered_json{{"first_coat", base::isoDate(a.start.day)},
                        {"finished", write.at(a.finished)},
                        {"cost", write.inMoney(a.cost)},
                        {"reason", model::nameOf(a.why)}};
  });
  list("extra_passes", plan.extraPasses, [&](const auto& p) {
    const bool isBare = p.coat == 1;
    return ordered_json{{"area", write.area(p.deck)}, {"coat", p.coat}, {"why", isBare ? "bare" : "late"}};
  });
  list("holidays", holidays, [](const auto& h) {
    return ordered_json{{"date", base::isoDate(h.first)}, {"name", h.second}};
  });
  list("assumed", graph.assumed(),
       [&](auto deck) { return job.areas[deck].name + " is left over its longest edge"; });
  j["work"] = write.work();
  list("boards_dry", plan.washed, [&](const auto& w) {
    return ordered_json{
        {"area", write.area(w.deck)}, {"washed", write.at(w.washed)}, {"dry", write.at(w.dry)}};
  });
  j["drying"] = write.drying();
  j["misses"] = write.misses();
  list("hours", report.hours, [&](const auto& h) { return write.hour(h); });
  return j.dump(2) + "\n";
}

}  // namespace app
