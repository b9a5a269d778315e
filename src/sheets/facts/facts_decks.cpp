#include "sheets/facts/facts_decks.h"

#include "base/match.h"

#include <algorithm>

namespace sheets {
namespace {

using base::Match;

std::string shapeWords(const model::Shape& shape, const Formatter& w) {
  return std::visit(
      Match{
          [&](const model::Rectangle& s) {
            return w("shape.rectangle", {{"x", w.length(s.x)}, {"y", w.length(s.y)}});
          },
          [&](const model::Polygon& s) {
            return w.counted("shape.polygon", static_cast<std::int64_t>(s.points.size()));
          },
          [&](const model::Circle& s) {
            return w("shape.circle", {{"across", w.length(s.diameter)}});
          },
          [&](const model::Ring& s) {
            return w("shape.ring", {{"outer", w.length(s.outer)}, {"inner", w.length(s.inner)}});
          },
          [&](const model::Triangle& s) {
            return w("shape.triangle", {{"sides", w.joined({w.length(s.a), w.length(s.b), w.length(s.c)})}});
          },
          [&](const model::Stairs& s) {
            return w.counted(
                "shape.stairs", s.steps,
                {{"width", w.length(s.width)}, {"going", w.size(s.going)}, {"rise", w.size(s.rise)}});
          },
          [&](const model::Strip& s) {
            return w("shape.strip", {{"length", w.length(s.length)}, {"girth", w.size(s.girth)}});
          },
          [&](const model::Screen& s) {
            return w.counted("shape.screen", s.sides,
                             {{"width", w.length(s.width)}, {"height", w.length(s.height)}});
          },
          [&](const model::Measured&) { return w("shape.measured"); }},
      shape);
}

void addState(Facts& f, model::State state) {
  f.emplace_back("state", Facts{{"new", Fact::yes(state == model::State::New)},
                                {"weathered", Fact::yes(state == model::State::Weathered)},
                                {"sanded", Fact::yes(state == model::State::Sanded)},
                                {"oiled", Fact::yes(state == model::State::Oiled)},
                                {"film", Fact::yes(state == model::State::Film)}});
}

void addUptake(Facts& f, std::optional<model::Uptake> uptake) {
  f.emplace_back("has_uptake", Fact::yes(uptake.has_value()));
  f.emplace_back("uptake", Facts{{"tight", Fact::yes(uptake == model::Uptake::Tight)},
                                 {"medium", Fact::yes(uptake == model::Uptake::Medium)},
                                 {"open", Fact::yes(uptake == model::Uptake::Open)},
                                 {"thirsty", Fact::yes(uptake == model::Uptake::Thirsty)}});
}

/// The row of the product's table a deck's coats are from; nothing where the job brings its own figures.
std::optional<model::Uptake> uptakeOf(const model::JobResult& x, std::size_t deck) {
  for (const auto& coat : x.estimate.coats) {
    if (coat.deck == deck) return coat.uptake;
  }
  return {};
}

}  // namespace

const model::Timber& timberOf(const model::JobResult& x, const model::Deck& deck) {
  return x.content.timbers.at(deck.timber);
}

std::string sizeWords(const model::Deck& deck, const Formatter& w) {
  std::vector<std::pair<std::string, int>> cuts;  // alike ones together
  for (const auto& cut : deck.without) {
    const std::string shape = shapeWords(cut.shape, w);
    const std::string words =
        cut.name.empty() ? shape : w("shape.named", {{"name", cut.name}, {"shape", shape}});
    if (!cuts.empty() && cuts.back().first == words) ++cuts.back().second;
    else cuts.emplace_back(words, 1);
  }
  std::string s = shapeWords(deck.shape, w);
  for (const auto& [words, count] : cuts)
    s += "\n" + w("shape.less", {{"shape", (count > 1 ? std::to_string(count) + " × " : "") + words}});
  return s;
}

CoatCounts coatCounts(const model::JobResult& x) {
  std::vector<int> counts(x.c.job.areas.size());
  for (const auto& coat : x.estimate.coats) counts[coat.deck] = std::max(counts[coat.deck], coat.coat);
  std::erase(counts, 0);
  if (counts.empty()) return {};
  const auto [fewest, most] = std::minmax_element(counts.begin(), counts.end());
  return {*fewest, *most};
}

std::vector<std::vector<std::int64_t>> printedLitres(const model::JobResult& x, const Formatter& w) {
  std::vector<std::int64_t> needs;
  for (const auto& coat : x.estimate.coats)
    needs.push_back(base::increased(coat.litres, x.c.job.loss).millionths);
  auto steps = apportioned(needs, w.volumeStep().millionths);
  for (auto& n : steps) n = std::max<std::int64_t>(n, 1);  // nobody lays 0.0 L
  std::vector<std::vector<std::int64_t>> table(x.c.job.areas.size());
  for (std::size_t i = 0; i < steps.size(); ++i) table[x.estimate.coats[i].deck].push_back(steps[i]);
  return table;
}

FactList deckFacts(const model::JobResult& x, const Formatter& w) {
  FactList list;
  const auto litres = printedLitres(x, w);
  for (std::size_t i = 0; i < x.c.job.areas.size(); ++i) {
    const auto& deck = x.c.job.areas[i];
    const auto& timber = timberOf(x, deck);
    Facts f{{"letter", deckLetter(i)},    {"name", deck.name},
            {"size", sizeWords(deck, w)}, {"area", w.roundArea(x.estimate.decks[i].area)},
            {"timber", timber.name},      {"note", deck.note}};
    addState(f, deck.state);
    f.emplace_back("treated", Fact::yes(timber.mayBeTreated));
    addUptake(f, uptakeOf(x, i));
    f.emplace_back("has_boards", Fact::yes(deck.boards.has_value()));
    const model::Boards b = deck.boards.value_or(model::Boards{});
    f.emplace_back("boards", Facts{{"width", w.size(b.width)},
                                   {"gap", w.size(b.gap)},
                                   {"reeded", Fact::yes(b.face == model::BoardFace::Reeded)}});
    f.emplace_back("has_coats", Fact::yes(!litres[i].empty()));
    FactList coats;
    for (std::size_t n = 0; n < litres[i].size(); ++n) {
      coats.push_back({{"first", Fact::yes(n == 0)},
                       {"alone", Fact::yes(litres[i].size() == 1)},
                       {"second", Fact::yes(n == 1)},
                       {"third", Fact::yes(n == 2)},
                       {"fourth", Fact::yes(n == 3)},
                       {"litres", w.volumeNumber(litres[i][n]) + "\u00A0" + w.volumeUnit()}});
    }
    f.emplace_back("coats", std::move(coats));
    list.push_back(std::move(f));
  }
  return list;
}

void addLitreTable(Facts& facts, const model::JobResult& x, const Formatter& w) {
  const auto litres = printedLitres(x, w);
  const auto coats = static_cast<std::size_t>(coatCounts(x).most);
  std::vector<std::int64_t> totals(coats);
  std::int64_t all = 0;
  FactList heads, rows, sums;
  for (std::size_t n = 0; n < coats; ++n)
    heads.push_back({{"words", coats == 1 ? w("coats.only") : w("coats.names." + std::to_string(n + 1))}});
  for (std::size_t i = 0; i < litres.size(); ++i) {
    FactList cells;
    std::int64_t row = 0;
    for (std::size_t n = 0; n < coats; ++n) {
      const bool has = n < litres[i].size();
      cells.push_back({{"litres", has ? w.volumeNumber(litres[i][n]) : "–"}});
      row += has ? litres[i][n] : 0;
      totals[n] += has ? litres[i][n] : 0;
    }
    if (litres[i].empty()) continue;
    all += row;
    rows.push_back({{"deck", deckLetter(i) + "\u00A0\u00A0" + x.c.job.areas[i].name},
                    {"coats", std::move(cells)},
                    {"together", w.volumeNumber(row)}});
  }
  for (const auto t : totals) sums.push_back({{"litres", w.volumeNumber(t)}});
  facts.emplace_back("has_litres", Fact::yes(!rows.empty()));
  facts.emplace_back("has_together", Fact::yes(coats > 1));
  facts.emplace_back("coat_heads", std::move(heads));
  facts.emplace_back("deck_litres", std::move(rows));
  facts.emplace_back("coat_totals", std::move(sums));
  facts.emplace_back("litres_together", w.volumeNumber(all));
  facts.emplace_back("litres_unit", w.volumeUnit());
}

}  // namespace sheets
