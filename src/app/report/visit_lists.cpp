#include "app/report/visit_lists.h"

#include "app/report/csv.h"
#include "app/report/text_table.h"
#include "base/joined.h"
#include "base/quantity_words.h"
#include "base/units.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

namespace app {
namespace {

using model::Progress;
using records::Visit;
using Row = TextRow;

const char* groupOf(const Visit& v) {
  switch (v.progress) {
    case Progress::Done:
      return "write";
    case Progress::Quoted:
      return "waiting";
    case Progress::Accepted:
      return "booked";
    case Progress::Declined:
      return "lost";
  }
  throw std::logic_error("internal error: a visit of no group");
}

std::string daysWaiting(const Visit& v, base::Date today) {
  return std::to_string(std::max<std::int64_t>(0, (today - v.quoted).count()));
}

/// As exact as it is printed, with a point whatever the region writes.
std::string amountOf(const Visit& v, const sheets::Formatter& w) {
  const int places = w.isMetric() ? 1 : 2;
  const std::int64_t step = w.isMetric() ? 100'000 : 10'000;
  return base::decimal(
      base::divide(v.litres.millionths, w.volumeStep().millionths, base::Round::HalfUp) * step, places, ".",
      "");
}

std::string dayOf(const std::optional<base::Date>& day) { return day ? base::isoDate(*day) : ""; }

std::string lastCoatOf(const Visit& v) {
  return v.progress == Progress::Done ? base::isoDate(v.lastCoat) : "";
}

struct Group {
  Progress progress;
  const char* heading;
  Row columns;
  std::function<Row(const Visit&, const sheets::Formatter&)> row;
};

std::vector<Group> groups(base::Date today) {
  const auto where = [](const Visit& v) { return base::joined(v.address); };
  return {{Progress::Done,
           "Write to, the yearly visit falls due",
           {"due", "job", "customer", "address", "product", "colour", "batches", "last coat took"},
           [=](const Visit& v, const sheets::Formatter& w) {
             return Row{base::isoDate(v.due),
                        v.ref,
                        v.customer,
                        where(v),
                        v.product,
                        v.colour,
                        base::joined(v.batches),
                        w.volume(v.litres) + (v.isRecorded ? "" : " (planned)")};
           }},
          {Progress::Quoted,
           "Quoted, no answer yet",
           {"quoted", "days", "valid until", "start", "job", "customer", "phone", "address"},
           [=](const Visit& v, const sheets::Formatter&) {
             return Row{base::isoDate(v.quoted),
                        daysWaiting(v, today),
                        base::isoDate(v.validUntil),
                        base::isoDate(v.due),
                        v.ref,
                        v.customer,
                        v.phone,
                        where(v)};
           }},
          {Progress::Accepted,
           "Booked",
           {"start", "accepted", "job", "customer", "phone", "address", "product", "takes"},
           [=](const Visit& v, const sheets::Formatter& w) {
             return Row{
                 base::isoDate(v.due), dayOf(v.accepted), v.ref, v.customer, v.phone, where(v), v.product,
                 w.volume(v.litres)};
           }},
          {Progress::Declined,
           "Declined, not to write to",
           {"declined", "job", "customer", "address"},
           [=](const Visit& v, const sheets::Formatter&) {
             return Row{dayOf(v.declined), v.ref, v.customer, where(v)};
           }}};
}

/// In kilometres or miles, to one decimal.
std::string wayWords(double kilometres, const sheets::Formatter& w) {
  constexpr double mile = 1.609344;  // NIST SP 811 (2008), App. B.8: exact
  const auto tenths = std::llround(10 * kilometres / (w.isMetric() ? 1 : mile));
  return base::decimal(tenths * 100'000, 1, ".", "") + (w.isMetric() ? " km" : " mi");
}

std::string hourWords(base::Hours hours) {
  return base::decimal(base::divide(hours.millionths, 100'000, base::Round::HalfUp) * 100'000, 1, ".", "");
}

/// 'Round 2, due 2028-03-20 to 2028-03-29: 3 visits, 14.5 hours, 12.3 L of tern-oil, 7.9 km'.
std::string headingOf(const VisitRound& round, std::size_t number, const VisitList& list) {
  base::Hours hours;
  double way = 0;
  base::Date first = list.visits[round.stops.front().visit].due, last = first;
  std::map<std::string, base::Volume> litres;
  for (const auto& stop : round.stops) {
    const auto& v = list.visits[stop.visit];
    hours += stop.hours;
    way += stop.kilometres;
    first = std::min(first, v.due);
    last = std::max(last, v.due);
    litres[v.product] += stop.litres;
  }
  const auto w = list.formatterOf(list.visits[round.stops.front().visit]);
  const auto count = round.stops.size();
  std::string s = round.hasPlaces ? "Round " + std::to_string(number) : "No latitude and longitude";
  s += ", due " + base::isoDate(first) + (last > first ? " to " + base::isoDate(last) : "") + ": " +
       std::to_string(count) + (count == 1 ? " visit, " : " visits, ") + hourWords(hours) + " hours";
  for (const auto& [product, volume] : litres) s += ", " + w.volume(volume) + " of " + product;
  return s + (count > 1 && round.hasPlaces ? ", " + wayWords(way, w) + " between them" : "");
}

std::string roundText(const VisitRound& round, std::size_t number, const VisitList& list) {
  std::vector<Row> rows = {{"due", "job", "customer", "address", "way", "hours", "takes"}};
  for (const auto& stop : round.stops) {
    const auto& v = list.visits[stop.visit];
    const auto w = list.formatterOf(v);
    const bool isFirst = &stop == &round.stops.front();
    rows.push_back({base::isoDate(v.due), v.ref, v.customer, base::joined(v.address),
                    isFirst || !round.hasPlaces ? "" : wayWords(stop.kilometres, w), hourWords(stop.hours),
                    w.volume(stop.litres)});
  }
  return headingOf(round, number, list) + "\n" + textTable(rows);
}

}  // namespace

std::string visitsText(const VisitList& list) {
  std::string s;
  const auto add = [&](const std::string& text) { s += (s.empty() ? "" : "\n") + text; };
  std::set<std::size_t> driven;
  for (std::size_t i = 0; i < list.rounds.size(); ++i) {
    add(roundText(list.rounds[i], i + 1, list));
    for (const auto& stop : list.rounds[i].stops) driven.insert(stop.visit);
  }
  for (const auto& group : groups(list.today)) {
    std::vector<Row> rows = {group.columns};
    for (std::size_t i = 0; i < list.visits.size(); ++i) {
      const auto& v = list.visits[i];
      if (v.progress == group.progress && !driven.contains(i))
        rows.push_back(group.row(v, list.formatterOf(v)));
    }
    if (rows.size() > 1) add(group.heading + ("\n" + textTable(rows)));
  }
  return s.empty() ? "nobody falls due\n" : s;
}

std::string visitsCsv(const VisitList& list) {
  std::string s =
      byteOrderMark +
      csvLine({"group",   "due",          "job",         "customer", "phone",    "email",       "address",
               "product", "colour",       "batches",     "amount",   "unit",     "amount_from", "last_coat",
               "quoted",  "days_waiting", "valid_until", "accepted", "declined", "after",       "file"});
  for (const auto& v : list.visits) {
    const auto w = list.formatterOf(v);
    const bool isWaiting = v.progress == Progress::Quoted;
    s += csvLine({groupOf(v),
                  base::isoDate(v.due),
                  v.ref,
                  v.customer,
                  v.phone,
                  v.email,
                  base::joined(v.address),
                  v.product,
                  v.colour,
                  base::joined(v.batches),
                  amountOf(v, w),
                  w.volumeUnit(),
                  v.isRecorded ? "records" : "plan",
                  lastCoatOf(v),
                  base::isoDate(v.quoted),
                  isWaiting ? daysWaiting(v, list.today) : "",
                  base::isoDate(v.validUntil),
                  dayOf(v.accepted),
                  dayOf(v.declined),
                  v.after,
                  v.file});
  }
  return s;
}

std::string visitsJson(const VisitList& list) {
  auto json = nlohmann::ordered_json::array();
  for (const auto& v : list.visits) {
    json.push_back({{"group", groupOf(v)},
                    {"due", base::isoDate(v.due)},
                    {"job", v.ref},
                    {"after", v.after},
                    {"customer", v.customer},
                    {"phone", v.phone},
                    {"email", v.email},
                    {"address", v.address},
                    {"product", v.product},
                    {"colour", v.colour},
                    {"batches", v.batches},
                    {"litres", base::asLitres(v.litres)},
                    {"litres_from", v.isRecorded ? "records" : "plan"},
                    {"quoted", base::isoDate(v.quoted)},
                    {"valid_until", base::isoDate(v.validUntil)},
                    {"file", v.file}});
    auto& one = json.back();
    if (v.progress == Progress::Done) one["last_coat"] = base::isoDate(v.lastCoat);
    if (v.progress == Progress::Quoted) one["days_waiting"] = std::stoi(daysWaiting(v, list.today));
    if (v.accepted) one["accepted"] = base::isoDate(*v.accepted);
    if (v.declined) one["declined"] = base::isoDate(*v.declined);
  }
  // The name of a file may be any bytes.
  return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace app
