// What lies where on the plan: ways out, areas over one another, sizes that are hardly meant.
#include "base/quantity_words.h"
#include "input/job/shape.h"
#include "model/outline.h"

#include <algorithm>

namespace input {
namespace {

using base::Length;
using base::Wide;
using model::Outline;

/// The area two outlines share, holes left out: measured along 100 lines across it.
base::Area shared(const Outline& a, const Outline& b) {
  constexpr std::int64_t lines = 100;
  const model::Extent p = model::extentOf(a), q = model::extentOf(b);
  const Length top = std::max(p.from.y, q.from.y), bottom = std::min(p.to.y, q.to.y);
  if (bottom <= top || p.to.x <= q.from.x || q.to.x <= p.from.x) return {};
  const Wide height = (bottom - top).millionths;
  Length sum;
  for (std::int64_t i = 0; i < lines; ++i) {
    const Length y = top + Length{static_cast<std::int64_t>(height * (2 * i + 1) / (2 * lines))};
    for (const auto& one : model::stretches(a, y, true)) {
      for (const auto& other : model::stretches(b, y, true))
        sum += std::max(Length{}, std::min(one.to, other.to) - std::max(one.from, other.from));
    }
  }
  return {static_cast<std::int64_t>(height * sum.millionths / lines / 1'000'000)};
}

std::string squareMetres(base::Area a, int places) {
  return base::decimal(base::inSquareMetres(a), places, ".", "") + " m2";
}

/// What lies flat on the plan; stairs are drawn where they lean and may reach below a deck.
std::optional<Outline> flatOutline(const model::Deck& deck) {
  if (std::holds_alternative<model::Stairs>(deck.shape)) return {};
  return model::outlineOf(deck);
}

void checkSize(const model::Deck& deck, const Outline& outline, const Field& field) {
  const model::Extent e = model::extentOf(outline);
  const auto [shorter, longer] = std::minmax({e.width(), e.height()});
  const bool isPolygon =
      std::holds_alternative<model::Polygon>(deck.shape);  // other shapes tell by their sides
  constexpr base::Area most = base::squareMetres(500);
  const bool mayBeLarge = Wide{shorter.millionths} * longer.millionths / 1'000'000 > most.millionths;
  const base::Area area = mayBeLarge ? shared(outline, outline) : base::Area{};
  if (isPolygon && (shorter < base::millimetres(300) || longer > base::metres(100)))
    field.warn("the outline of '" + deck.name + "' is " +
                   base::decimal(base::inMetres(e.width()), 2, ".", "") + " m by " +
                   base::decimal(base::inMetres(e.height()), 2, ".", "") + " m",
               "usually from 0.3 m to 100 m; check numbers and units");
  else if (area > most)
    field.warn("'" + deck.name + "' covers " + squareMetres(area, 0),
               "usually to 500 m2 (5400 ft2); check numbers and units");
}

}  // namespace

void checkWayOut(const model::Deck& deck, const Field& way) {
  constexpr Length near = base::millimetres(100);
  const auto outline = model::outlineOf(deck);
  if (!outline || !deck.wayOut || model::touches(*deck.wayOut, *outline, near)) return;
  const model::Extent e = model::extentOf(*outline);
  if (e.width().isZero()) return;  // its shape has its error already
  const bool isInHole = model::touches(*deck.wayOut, {outline->edge, {}}, near);
  way.error(isInHole ? "the way out lies in a cut-out" : "the way out does not lie on the deck",
            "measure to the right and down from the deck's upper left corner; its lower right corner is [" +
                base::decimal(base::inMetres(e.to.x), 2, ".", "") + " m, " +
                base::decimal(base::inMetres(e.to.y), 2, ".", "") + " m]");
}

void checkPlan(const std::vector<model::Deck>& decks, const std::vector<Field>& fields) {
  std::vector<std::optional<Outline>> placed;
  for (std::size_t i = 0; i < decks.size(); ++i) {
    auto outline = flatOutline(decks[i]);
    if (outline) checkSize(decks[i], *outline, fields[i]);
    if (outline && decks[i].at) outline = model::moved(*outline, *decks[i].at);
    else outline.reset();
    for (std::size_t k = 0; k < i && outline; ++k) {
      if (!placed[k]) continue;
      const base::Area common = shared(*outline, *placed[k]);
      if (common < base::Area{100'000'000'000}) continue;  // 0.1 m2
      const base::Area smaller = std::min(shared(*outline, *outline), shared(*placed[k], *placed[k]));
      if (common.millionths < smaller.millionths / 50) continue;  // a tape is not that exact
      fields[i].warn("'" + decks[i].name + "' lies over " + squareMetres(common, 1) + " of area " +
                         std::to_string(k + 1) + ", '" + decks[k].name + "'",
                     "check 'at' of both; it is right where one is above the other");
    }
    placed.push_back(std::move(outline));
  }
}

}  // namespace input
