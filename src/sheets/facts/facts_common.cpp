#include "sheets/facts/facts_common.h"

#include "base/joined.h"
#include "model/lookup.h"
#include "model/names.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/facts_records.h"
#include "sheets/words/addresses.h"

#include <algorithm>
#include <map>
#include <set>

namespace sheets {
namespace {

/// On one line.
std::string unbroken(const std::string& words) {
  std::string s;
  for (const char c : words) c == ' ' ? s += "\u00A0" : s += c;
  return s;
}

Facts firmFacts(const model::Firm& b, const model::Dialling& dialling) {
  return {{"name", b.name},
          {"tagline", b.tagline},
          {"phone", unbroken(b.phone)},
          {"phone_link", phoneAddress(b.phone, dialling)},
          {"email", b.email},
          {"email_link", mailAddress(b.email)},
          {"web", webWords(b.web)},
          {"web_link", b.web.empty() ? "" : webAddress(b.web)}};
}

Facts productFacts(const model::JobResult& x, const Formatter& w) {
  const auto& p = *x.c.product;
  const bool wipes = !p.times.wipeOff.isZero();
  return {
      {"name", p.name},
      {"title", capitalised(p.name)},
      {"short", w(p.kind == model::ProductKind::FilmStain ? "product.stain" : "product.oil")},
      {"drying_oil", Fact::yes(p.isDryingOil)},
      {"film", Fact::yes(p.kind == model::ProductKind::FilmStain)},
      {"air_min", w.leastTemperature(p.limits.airMin)},
      {"air_max", w.mostTemperature(p.limits.airMax)},
      {"surface_max", w.mostTemperature(p.limits.surfaceMax)},
      {"humidity", w.share(p.limits.humidityMax)},
      {"moisture", w.share(p.limits.moistureMax)},
      {"wipes", Fact::yes(wipes)},
      {"wipe_off", p.times.wipeOff == base::Hours::whole(1) ? w("waits.an_hour") : w.wait(p.times.wipeOff)}};
}

/// A tin stays at the house, or nobody has counted the tins yet.
bool tinStays(const model::Job& job) {
  return job.left.empty() ||
         std::any_of(job.left.begin(), job.left.end(), [](const auto& tin) { return tin.isWithCustomer; });
}

Facts siteFacts(const model::Site& s, const Formatter& w) {
  return {
      {"address", lines(s.address)},
      {"address_line", oneLine(s.address, w)},
      {"coastal", Fact::yes(s.exposure == model::Exposure::Coastal)},
  };
}

Facts workFacts(const model::Job& job) {
  const auto has = [&](model::Work k) { return Fact::yes(model::asksFor(job.work, k)); };
  return {{"wash", has(model::Work::Wash)},
          {"fix", has(model::Work::Fix)},
          {"sand", has(model::Work::Sand)},
          {"oil", has(model::Work::Oil)}};
}

Facts authorityFacts(const Formatter& w) {
  Facts f;
  for (const char* about : {"safety", "waste", "lead", "treated"}) {
    f.emplace_back(about, authorityOf(w, about));
  }
  return f;
}

std::string gritWords(const std::vector<int>& grits, const Formatter& w) {
  std::string s;
  for (std::size_t i = 0; i < grits.size(); ++i) {
    const auto grit = std::to_string(grits[i]);
    s = i == 0 ? grit
               : w(i + 1 == grits.size() ? "lists.then" : "lists.more", {{"before", s}, {"word", grit}});
  }
  return s;
}

std::string idealWords(const model::ProductTimes& t, const Formatter& w) {
  return w.waitRange(t.recoatIdealFrom, t.recoatIdealTo);
}

/// 'one or two coats', 'one to three coats'.
std::string fewToMany(const CoatCounts& coats, const Formatter& w) {
  const auto fewest = w.spelled(coats.fewest), most = w.counted("coats.count", coats.most);
  return coats.fewest + 1 == coats.most ? w("numbers.either", {{"a", fewest}, {"b", most}})
                                        : w.range(fewest, most);
}

/// 'two coats; one coat on Veranda and Fascia': what most decks get needs no names.
std::string coatsOnDecks(const model::JobResult& x, const Formatter& w) {
  std::map<int, std::vector<std::string>> decks;  // by the number of their coats
  for (std::size_t deck = 0; deck < x.c.job.areas.size(); ++deck) {
    const auto coats = std::count_if(x.estimate.coats.begin(), x.estimate.coats.end(),
                                     [&](const auto& coat) { return coat.deck == deck; });
    if (coats > 0) decks[static_cast<int>(coats)].push_back(x.c.job.areas[deck].name);
  }
  const auto most = std::max_element(decks.begin(), decks.end(), [](const auto& a, const auto& b) {
    return a.second.size() < b.second.size();
  });
  if (most == decks.end()) return "";
  std::string all = w.counted("coats.count", most->first);
  for (const auto& [coats, names] : decks) {
    if (coats == most->first) continue;
    all += "; " + w("coats.on", {{"coats", w.counted("coats.count", coats)}, {"decks", w.joined(names)}});
  }
  return all;
}

void addCoats(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto coats = coatCounts(x);
  const bool isSame = coats.fewest == coats.most;
  std::vector<base::Date> dates;
  for (const auto& e : x.plan.events) {
    if (e.what == model::Moment::CoatEnd && (dates.empty() || dates.back() != e.at.day))
      dates.push_back(e.at.day);
  }
  std::string words;
  if (dates.size() == 2) words = w.joined({w.shortDate(dates[0]), w.shortDate(dates[1])});
  else if (!dates.empty())
    words = dates.size() > 1 ? w.range(w.shortDate(dates.front()), w.shortDate(dates.back()))
                             : w.shortDate(dates.front());
  f.emplace_back("coats",
                 Facts{{"words", isSame ? w.counted("coats.count", coats.most) : fewToMany(coats, w)},
                       {"on_decks", isSame ? w.counted("coats.count", coats.most) : coatsOnDecks(x, w)},
                       {"several", Fact::yes(coats.most > 1)},
                       {"differ", Fact::yes(!isSame)},
                       {"apart", w.waitRange(x.c.product->times.recoatMin, x.c.product->times.recoatMax)},
                       {"dates", words}});
}

Facts dateFacts(base::LocalTime at, const Formatter& w) {
  return {
      {"day", w.weekdayDate(at.day)},
      {"short", w.shortDate(at.day)},
      {"short_year", w.shortDateYear(at.day)},
      {"month", w.month(at.day)},
      {"year", w.year(at.day)},
      {"clock", w.clock(at.minutes)},
      {"day_clock", w("dates.day_clock", {{"day", w.weekdayDate(at.day)}, {"time", w.clock(at.minutes)}})}};
}

/// The same names, without words.
Facts noDate(const Formatter& w) {
  Facts facts = dateFacts({}, w);
  for (auto& [name, fact] : facts) fact = "";
  return facts;
}

void addDays(Facts& f, const model::JobResult& x, const Formatter& w) {
  const auto& days = x.plan.days;
  const auto first = days.empty() ? x.c.job.start : days.front().date,
             last = days.empty() ? x.c.job.start : days.back().date;
  const bool isOneDay = first == last;
  f.emplace_back("days", Facts{{"count", w.counted("waits.days", static_cast<std::int64_t>(days.size()))},
                               {"span", isOneDay ? w.longDate(first)
                                                 : w("dates.span", {{"from", w.shortDate(first)},
                                                                    {"to", w.shortDate(last)},
                                                                    {"year", w.year(last)}})},
                               {"between", isOneDay ? "" : w.range(w.dayMonth(first), w.dayMonth(last))}});
  f.emplace_back(
      "start",
      Facts{{"short", w.shortDate(first)}, {"long", w.longDate(first)}, {"day", w.weekdayDate(first)}});
  const auto done = isAllLaid(x) ? x.plan.finished : upToHalfHour(x.plan.finished);
  base::Date walk = last;
  Facts dates;
  for (const auto& e : x.plan.events) {
    if (e.coat > 0) continue;
    const base::LocalTime at = upToHalfHour(e.at);
    if (e.what == model::Moment::Walk) walk = at.day;
    dates.emplace_back(model::nameOf(e.what), dateFacts(at, w));
  }
  using model::Moment;
  for (const auto moment :
       {Moment::Walk, Moment::Furniture, Moment::Rugs, Moment::FirstWash, Moment::Maintenance}) {
    const char* name = model::nameOf(moment);
    if (find(dates, name) == nullptr) dates.emplace_back(name, noDate(w));  // no coat
  }
  f.emplace_back("dates", std::move(dates));
  f.emplace_back("finish", Facts{{"short", w.shortDate(last)},
                                 {"long", w.longDate(done.day)},
                                 {"date", w.dayMonthYear(done.day)},
                                 {"clock", w.clock(done.minutes)},
                                 {"is_one_day", Fact::yes(first == walk)},
                                 {"walk_day", w.shortDate(walk)}});
  f.emplace_back("day_before", Facts{{"short", w.shortDate(first - std::chrono::days{1})}});
}

/// Rounded away from the window that was missed, so that the words do not deny it.
base::Hours wholeHours(const model::WindowViolation& m) {
  return base::Hours::whole(
      base::divide(m.gap.millionths, 1'000'000, m.isLate ? base::Round::Up : base::Round::Down));
}

void addMisses(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList misses;
  for (const auto& m : x.plan.misses) {
    misses.push_back({{"coat", w("coats.ordinals." + std::to_string(m.coat))},
                      {"deck", deckLetter(m.deck) + " " + x.c.job.areas[m.deck].name},
                      {"gap", w.wait(wholeHours(m))},
                      {"late", Fact::yes(m.isLate)},
                      {"ideal", idealWords(x.c.product->times, w)},
                      {"past_max", Fact::yes(m.isPastMax)},
                      {"days_off", Fact::yes(m.why == model::WindowViolation::Why::DaysOff)},
                      {"coating_hours", Fact::yes(m.why == model::WindowViolation::Why::CoatingHours)},
                      {"large_deck", Fact::yes(m.why == model::WindowViolation::Why::LargeDeck)},
                      {"weather", Fact::yes(m.why == model::WindowViolation::Why::Weather)},
                      {"unfit", Fact::yes(m.isUnfit)},
                      {"nearest", m.nearest ? w.longDate(*m.nearest) : ""},
                      {"hours", w.range(w.clock(x.plan.coatingFrom), w.clock(x.plan.coatingUntil))}});
  }
  f.emplace_back("has_misses", Fact::yes(!misses.empty()));
  f.emplace_back("misses", std::move(misses));
}

std::string timberWords(const model::JobResult& x, const Formatter& w) {
  std::vector<std::string> names;
  for (const auto& deck : x.c.job.areas) {
    const auto& name = timberOf(x, deck).name;
    base::addOnce(names, name);
  }
  return w.joined(names);
}

std::string authorityLine(const Formatter& w) {
  std::string s;
  for (const auto& a : w.region().authorities)
    s += (s.empty() ? "" : "; ") + w("authorities.about." + a.about) + " – " + a.name;
  return s;
}

}  // namespace

std::string authorityOf(const Formatter& w, const std::string& about) {
  const std::string* name = model::authorityFor(w.region(), about);
  return name ? *name : w("authorities.local");
}

std::string deckNames(const model::Job& job, const Formatter& w) {
  constexpr std::size_t mostNamed = 3;
  if (job.areas.size() > mostNamed)
    return w.counted("title.decks", static_cast<std::int64_t>(job.areas.size()));
  std::vector<std::string> names;
  for (const auto& deck : job.areas) names.push_back(deck.name);
  return w.joined(names);
}

std::string namesOfDecks(const model::JobResult& x) {
  return capitalised(deckNames(x.c.job, Formatter(*x.c.region, x.language)));
}

std::string titleOf(const model::JobResult& x) {
  const auto& job = x.c.job;
  if (!job.title.empty()) return job.title;
  const Formatter w(*x.c.region, x.language);
  std::vector<std::string> done;
  if (model::asksFor(job.work, model::Work::Wash)) done.push_back(w("title.washed"));
  if (model::asksFor(job.work, model::Work::Fix) && !model::asksFor(job.work, model::Work::Sand))
    done.push_back(w("title.fixed"));
  if (model::asksFor(job.work, model::Work::Sand)) done.push_back(w("title.sanded"));
  if (model::asksFor(job.work, model::Work::Oil)) {
    const auto coats = coatCounts(x);
    const bool isStain = x.c.product->kind == model::ProductKind::FilmStain;
    if (coats.most > 1 && coats.fewest == coats.most)
      done.push_back(
          w(isStain ? "title.stained_times" : "title.oiled_times", {{"times", w.times(coats.most)}}));
    else done.push_back(w(isStain ? "title.stained" : "title.oiled"));
  }
  return w("title.job", {{"decks", namesOfDecks(x)}, {"work", w.joined(done)}});
}

FactList sentences(const std::vector<std::string>& words) {
  FactList list;
  for (const auto& s : words) list.push_back({{"words", s}});
  return list;
}

std::string oneLine(const std::vector<std::string>& parts, const Formatter& w) {
  std::string s;
  for (const auto& part : parts) s = s.empty() ? part : w("lists.more", {{"before", s}, {"word", part}});
  return s;
}

std::string lines(const std::vector<std::string>& words) {
  std::string s;
  for (const auto& line : words) s += (s.empty() ? "" : "\n") + line;
  return s;
}

Facts commonFacts(const model::JobResult& x, const Formatter& w) {
  const auto& job = x.c.job;
  Facts f{{"title", titleOf(x)},
          {"short_title", x.c.job.title.empty() ? namesOfDecks(x) : x.c.job.title},
          {"ref", job.ref},
          {"colour", job.colour},
          {"quoted", w.date(job.quoted)},
          {"contact", x.c.firm.contact},
          {"is_metric", Fact::yes(w.isMetric())},
          {"say", Facts{{"outlet", w("say.outlet")},
                        {"tap", w("say.tap")},
                        {"timber", w("say.timber")},
                        {"colour", w("say.colour")},
                        {"licences", w("say.licences")}}},
          {"cutout", x.c.region->powerCutout},
          {"emergency", x.c.region->emergencyNumber},
          {"emergency_link", phoneAddress(x.c.region->emergencyNumber, x.c.region->dialling)}};
  f.emplace_back("reference_temperature", w.temperature(base::Temperature::whole(20)));  // of the data sheet
  f.emplace_back("firm", firmFacts(x.c.firm, x.c.region->dialling));
  f.emplace_back("product", productFacts(x, w));
  f.emplace_back("tin_stays", Fact::yes(tinStays(job)));
  f.emplace_back("touches_up", Fact::yes(tinStays(job) && !x.c.product->times.wipeOff.isZero()));
  f.emplace_back("site", siteFacts(job.site, w));
  f.emplace_back("work", workFacts(job));
  f.emplace_back("sanding", Facts{{"grits", gritWords(job.sanding, w)}});
  f.emplace_back("authority", authorityFacts(w));
  f.emplace_back("authorities", authorityLine(w));
  f.emplace_back("crew",
                 Facts{{"words", w.counted("crew.people", job.crew.people)}, {"leader", job.crew.leader}});
  f.emplace_back("area", w.roundArea(x.estimate.all.area));
  f.emplace_back("timbers", timberWords(x, w));
  // Strips, screens and areas measured by others have no place on a plan.
  const bool isDrawn = std::any_of(job.areas.begin(), job.areas.end(), [](const model::Deck& deck) {
    return !std::holds_alternative<model::Strip>(deck.shape) &&
           !std::holds_alternative<model::Screen>(deck.shape) &&
           !std::holds_alternative<model::Measured>(deck.shape);
  });
  f.emplace_back("has_plan", Fact::yes(isDrawn));
  f.emplace_back("has_coats", Fact::yes(!x.estimate.coats.empty()));
  f.emplace_back("decks", deckFacts(x, w));
  const auto& need = x.resources.product;
  f.emplace_back(
      "litres",
      Facts{{"low", w.volume(need.low)}, {"likely", w.volume(need.likely)}, {"high", w.volume(need.high)}});
  addCoats(f, x, w);
  addDays(f, x, w);
  addMisses(f, x, w);
  return f;
}

}  // namespace sheets
