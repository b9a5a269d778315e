#include "sheets/facts/day_strips.h"

#include "sheets/facts/day_work.h"

#include <algorithm>

namespace sheets {
namespace {

/// Times of twelve hours and gallons are wider.
std::size_t columnsOf(const Formatter& w) { return w.region().monthFirst ? 3 : 4; }

/// 'second coat, 5 strips of 6 boards'; the coat is told where the deck has two on that day.
std::string noteOf(const DayCoat& coat, const Day& day, const model::JobResult& x, const Formatter& w) {
  const auto strips = stripsText(coat, x, w);
  const bool isAlone = std::count_if(day.coats.begin(), day.coats.end(),
                                     [&](const auto& c) { return c.deck == coat.deck; }) == 1;
  if (isAlone) return strips;
  return w("strips.of_coat", {{"coat", w("coats.names." + std::to_string(coat.coat))}, {"strips", strips}});
}

}  // namespace

std::string stripLitres(std::int64_t steps, const Formatter& w) {
  return steps > 0 ? litresText(steps, w) : "<" + litresText(1, w);
}

std::vector<StripRow> stripRows(const Day& day, const model::JobResult& x, const Formatter& w) {
  std::vector<StripRow> rows;
  for (const auto& coat : day.coats) {
    std::string half;  // of the day, told where it begins
    for (std::size_t i = 0; i < coat.strips.size(); ++i) {
      if (i == 0) rows.push_back({deckName(x, coat.deck), noteOf(coat, day, x, w), {}});
      else if (i % columnsOf(w) == 0) rows.emplace_back();
      const auto& strip = coat.strips[i];
      std::string time = w.clock(strip.start);
      if (const auto end = time.find("\u00A0"); end != std::string::npos) {  // before 'am' or 'pm'
        const auto own = time.substr(end);
        if (own == half) time.resize(end);
        half = own;
      }
      rows.back().strips.push_back({std::to_string(strip.strip->number), time, stripLitres(strip.litres, w)});
    }
  }
  return rows;
}

FactList stripRowFacts(const Day& day, const model::JobResult& x, const Formatter& w) {
  FactList list;
  for (const auto& row : stripRows(day, x, w)) {
    FactList strips;
    for (const auto& s : row.strips)
      strips.push_back({{"number", s.number}, {"time", s.time}, {"litres", s.litres}});
    list.push_back({{"deck", row.deck}, {"note", row.note}, {"strips", std::move(strips)}});
  }
  return list;
}

FactList stripColumns(const Formatter& w) {
  FactList columns;
  for (std::size_t i = 0; i < columnsOf(w); ++i)
    columns.push_back({{"head", i == 0 ? w("strips.head") : ""}});
  return columns;
}

}  // namespace sheets
