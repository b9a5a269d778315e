#include "app/report/plan_text.h"

#include "app/pack/weather_file.h"
#include "model/names.h"
#include "schedule/weather/hours.h"
#include "sheets/facts/day_answers.h"
#include "sheets/facts/day_people.h"
#include "sheets/facts/day_strips.h"

#include <algorithm>
#include <map>
#include <sstream>

namespace app {
namespace {

using model::WeatherLimit;

std::string words(model::WindowViolation::Why why) {
  switch (why) {
    case model::WindowViolation::Why::Weather:
      return "no hour of the window is fit";
    case model::WindowViolation::Why::DaysOff:
      return "nobody works on the day it was due";
    case model::WindowViolation::Why::CoatingHours:
      return "it falls outside the hours for coating";
    case model::WindowViolation::Why::LargeDeck:
      return "the area takes more than one day's hours for coating";
    case model::WindowViolation::Why::Access:
      return "the way to it, or the day's hours, leave no room for it sooner";
  }
  return {};
}

std::string weekday(base::Date d) {
  constexpr const char* names[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  return names[std::chrono::weekday{d}.c_encoding()];
}

std::string dateWords(base::Date d) { return weekday(d) + " " + base::isoDate(d); }
std::string timeWords(base::LocalTime t) { return dateWords(t.day) + " " + base::isoClock(t.minutes); }

/// '07:00-12:00', midnight as 24:00.
std::string spanWords(int from, int until) {
  return base::isoClock(from) + "-" + (until == 24 * 60 ? "24:00" : base::isoClock(until));
}

/// Words of the documents without their fixed spaces.
std::string plain(std::string text) {
  const std::string fixed = "\u00A0";
  for (std::size_t at = text.find(fixed); at != std::string::npos; at = text.find(fixed, at))
    text.replace(at, fixed.size(), " ");
  return text;
}

std::string words(WeatherLimit gate, const base::Language& language) {
  return plain(language("hours_chart.reasons." + std::string(model::nameOf(gate))));
}

std::string words(const model::DayHold& hold, const base::Language& language) {
  switch (hold.why) {
    case model::DayHold::Why::DaysOff:
      return "days off before";
    case model::DayHold::Why::BoardsDry:
      return "washed boards dry until " + timeWords(*hold.until);
    case model::DayHold::Why::CoatDry:
      return "the coat below dries until " + timeWords(*hold.until);
    case model::DayHold::Why::Weather:
      return words(*hold.gate, language) + " before";
    case model::DayHold::Why::BeforeCoat:
      return "just before the coat, so that no boards stand bare";
  }
  return {};
}

bool isDark(const model::Hour& h) {
  return std::find(h.reasons.begin(), h.reasons.end(), WeatherLimit::Dark) != h.reasons.end();
}

/// Dew and rain that fall now are not told again for later, nor that rain wets.
std::string why(const model::Hour& h, const base::Language& language) {
  const auto& r = h.reasons;
  const auto has = [&](WeatherLimit gate) { return std::find(r.begin(), r.end(), gate) != r.end(); };
  std::string all;
  for (const WeatherLimit gate : r) {
    if (gate == WeatherLimit::DewBefore && has(WeatherLimit::Dew)) continue;
    if ((gate == WeatherLimit::RainBefore || gate == WeatherLimit::Wet) && has(WeatherLimit::Rain)) continue;
    all += (all.empty() ? "" : ", ") + words(gate, language);
  }
  return all;
}

/// '10:00-16:00; not 08:00-10:00 dew' for the light hours of one deck on one day.
std::string hoursLine(const std::vector<const model::Hour*>& hours, const base::Language& language) {
  std::string fit, unfit;
  for (std::size_t i = 0; i < hours.size();) {
    std::size_t j = i + 1;
    while (j < hours.size() && hours[j]->reasons == hours[i]->reasons &&
           hours[j]->at.minutes == hours[j - 1]->at.minutes + 60)
      ++j;
    const std::string span = spanWords(hours[i]->at.minutes, hours[j - 1]->at.minutes + 60);
    if (hours[i]->isFit) fit += (fit.empty() ? "" : ", ") + span;
    else if (!isDark(*hours[i])) unfit += (unfit.empty() ? "" : "; ") + span + " " + why(*hours[i], language);
    i = j;
  }
  return (fit.empty() ? "no hour" : fit) + (unfit.empty() ? "" : "; not " + unfit);
}

struct Text {
  const PlanReport& r;
  sheets::Formatter w;
  std::vector<sheets::Day> days;
  std::ostringstream out;

  const std::string& deckName(std::size_t deck) const { return r.x.c.job.areas[deck].name; }

  void head() {
    const auto& c = r.x.c;
    out << c.job.ref << "  " << c.job.customer.name << "\n";
    const auto& forecast = c.job.forecast;
    if (!forecast.steps.empty()) out << "weather: " << weatherWords(c.job) << "\n";
    if (!c.job.normals.months.empty())
      out << (forecast.steps.empty() ? "weather: " : "beyond it: ")
          << "usual for the month, not a forecast, and no rain in it (" << c.job.normals.source << ")\n";
    if (forecast.steps.empty() && c.job.normals.months.empty())
      out << "weather: none given, so any hour of light counts as fit\n";
    if (c.job.site.latitudeMicro == 0 && c.job.site.longitudeMicro == 0)
      out << "the site has no latitude and longitude: neither sun nor weather are judged\n";
  }

  void lines(const sheets::Day& day) {
    for (const auto& line : sheets::workLines(day, r.x, w))
      out << "  " << spanWords(line.from, line.until) << "  " << plain(line.what)
          << (line.where.empty() ? "" : ", " + line.where) << " (" << plain(line.who) << ")\n";
  }

  /// The answers of the day plan's page, its people and strips.
  void people(const sheets::Day& day) {
    sheets::Facts facts;
    sheets::addAnswers(facts, day, r.x, w);
    for (const auto& answer : std::get<sheets::FactList>(sheets::find(facts, "answers")->value)) {
      const auto word = [&](const char* name) {
        return plain(std::get<std::string>(sheets::find(answer, name)->value));
      };
      out << "  " << word("label") << " " << word("time") << " (" << word("note") << ")\n";
    }
    for (const auto& person : sheets::rowTexts(sheets::peopleOf(day, r.x, w), r.x, w))
      out << "  " << plain(person.name) << ": " << plain(person.text) << "\n";
    for (const auto& coat : sheets::coatTexts(day, r.x, w)) {
      out << "  " << plain(coat.name) << ":";
      for (const auto& strip : coat.strips)
        out << (&strip == &coat.strips.front() ? " " : ", ") << strip.number << " " << plain(strip.lay) << " "
            << plain(strip.amount + " " + w.volumeUnit());
      for (const auto& more : {coat.note, coat.steps})
        if (!more.empty()) out << "; " << plain(more);
      out << "\n";
    }
  }

  void fitHours(base::Date day) {
    std::map<std::size_t, std::vector<const model::Hour*>> decks;
    for (const auto& h : r.hours) {
      if (h.at.day == day) decks[h.deck].push_back(&h);
    }
    // Decks with the same hours share a line, in the order of the first.
    std::vector<std::pair<std::string, std::string>> lines;
    for (const auto& [deck, hours] : decks) {
      const std::string line = hoursLine(hours, r.x.language);
      const auto same =
          std::find_if(lines.begin(), lines.end(), [&](const auto& l) { return l.second == line; });
      if (same == lines.end()) lines.push_back({deckName(deck), line});
      else same->first += ", " + deckName(deck);
    }
    for (const auto& [names, line] : lines)
      out << "  fit for coating, " << (lines.size() == 1 && decks.size() > 1 ? "every area" : names) << ": "
          << line << "\n";
  }

  void day(const model::SunDay& sun) {
    out << "\n" << dateWords(sun.date);
    if (sun.sunrise) out << "  sunrise " << base::isoClock(sun.sunrise->minutes);
    if (sun.sunset) out << "  sunset " << base::isoClock(sun.sunset->minutes);
    out << "\n";
    for (const auto& there : r.x.plan.days) {
      if (there.date == sun.date && there.heldBy)
        out << "  not sooner: " << words(*there.heldBy, r.x.language) << "\n";
      if (there.date == sun.date && there.tighter > 0)
        out << "  " << there.tighter << " min less than reckoned, rather than come again or stay on\n";
    }
    const auto work =
        std::find_if(days.begin(), days.end(), [&](const auto& d) { return d.date == sun.date; });
    if (work == days.end()) out << "  no work\n";
    else if (work->coats.empty()) lines(*work);
    else people(*work);
    fitHours(sun.date);
  }

  void miss(const model::WindowViolation& m) {
    if (m.isUnfit) {
      out << "  " << deckName(m.deck) << ", coat " << m.coat << ": no hour of the coming weeks is fit";
      if (m.gate) out << ", mostly for " << words(*m.gate, r.x.language);
      out << "; it goes by the clock\n";
      if (m.nearest) out << "    the nearest day that would do: " << dateWords(*m.nearest) << "\n";
      return;
    }
    const auto hours = base::divide(base::Wide{m.gap.millionths}, 1'000'000, base::Round::HalfUp);
    out << "  " << deckName(m.deck) << ", coat " << m.coat << ": " << hours << " h after the coat before, "
        << (m.isLate ? "later" : "sooner") << " than ideal: " << words(m.why) << "\n";
    if (m.gate && !m.isUnfit) out << "    mostly for " << words(*m.gate, r.x.language) << "\n";
    if (m.isPastMax) out << "    past the longest wait: sand in between\n";
  }

  void alternative(const model::Alternative& a) {
    using Why = model::Alternative::Why;
    const std::map<Why, const char*> reasons = {{Why::Cost, "dearer"},
                                                {Why::Later, "no cheaper, and later"},
                                                {Why::Order, "no cheaper"},
                                                {Why::Weather, "the weather"},
                                                {Why::Window, "a coat outside the ideal window"}};
    out << "  first coat " << timeWords(a.start) << ", done " << timeWords(a.finished) << ": "
        << reasons.at(a.why);
    const auto more = a.cost - r.x.plan.cost.total();
    if (more.minor > 0) {
      std::int64_t coin = 1;
      for (int i = 0; i < r.x.c.region->currencyDigits; ++i) coin *= 10;
      out << ", " << base::divide(more.minor, coin, base::Round::HalfUp) << " " << r.x.c.region->currency
          << " more";
    }
    out << "\n";
  }
};

}  // namespace

PlanReport reportPlan(const model::JobResult& x, const model::Content& content,
                      const schedule::Bounds& bounds) {
  PlanReport r{x, content, {}, {}, {}, {}};
  const auto& days = x.plan.days;
  r.from = bounds.from.value_or(days.empty() ? x.c.job.start : days.front().date);
  base::Date last = std::max(days.empty() ? r.from : days.back().date, x.plan.finished.day);
  if (bounds.by) last = std::max(last, *bounds.by);
  r.until = std::max(r.from, last) + std::chrono::days{1};
  r.hours = schedule::fitHours(x.c, r.from, r.until);
  r.light = schedule::daylightOf(x.c.job.site, r.from, r.until);
  return r;
}

std::string planText(const PlanReport& report) {
  const sheets::Formatter w(*report.x.c.region, report.x.language);
  Text text{report, w, sheets::daysOf(report.x, w), {}};
  text.head();
  for (const auto& sun : report.light) text.day(sun);
  const auto& plan = report.x.plan;
  if (!plan.misses.empty()) text.out << "\noutside the ideal window or fit hours\n";
  for (const auto& m : plan.misses) text.miss(m);
  if (!plan.alternatives.empty()) text.out << "\nother days\n";
  for (const auto& a : plan.alternatives) text.alternative(a);
  return text.out.str();
}

}  // namespace app
