#include "model/placing.h"

#include <algorithm>

namespace model {

using base::Length;

namespace {

bool overlap(const Extent& a, const Extent& b) {
  return a.from.x < b.to.x && b.from.x < a.to.x && a.from.y < b.to.y && b.from.y < a.to.y;
}

/// The side on which 'a' leans against 'b'; nothing when they are apart or overlap.
std::optional<Side> touch(const Extent& a, const Extent& b) {
  constexpr Length near = base::millimetres(60);  // a gap for drainage still counts as touching
  const auto close = [&](Length p, Length q) { return p - q <= near && q - p <= near; };
  const bool sharesY = a.from.y < b.to.y && b.from.y < a.to.y,
             sharesX = a.from.x < b.to.x && b.from.x < a.to.x;
  if (sharesY && close(a.from.x, b.to.x)) return Side::Left;
  if (sharesY && close(a.to.x, b.from.x)) return Side::Right;
  if (sharesX && close(a.from.y, b.to.y)) return Side::Top;
  if (sharesX && close(a.to.y, b.from.y)) return Side::Bottom;
  return std::nullopt;
}

PlacedDeck put(std::size_t index, const Deck& deck, Outline outline, Place at) {
  PlacedDeck p{index, moved(outline, at), {}, std::holds_alternative<Stairs>(deck.shape), Side::Right};
  p.extent = extentOf(p.outline);
  return p;
}

/// Turns stairs by a quarter when only then they lean against a deck with their first or last step.
void turnStairs(PlacedDeck& stairs, const std::vector<PlacedDeck>& all) {
  const Extent lying = stairs.extent;
  const Extent standing = {lying.from, {lying.from.x + lying.height(), lying.from.y + lying.width()}};
  for (const bool turned : {false, true}) {
    const Extent& e = turned ? standing : lying;
    const auto others = [&](auto&& test) {
      return std::find_if(all.begin(), all.end(),
                          [&](const auto& d) { return d.index != stairs.index && test(d); });
    };
    if (others([&](const auto& d) { return overlap(e, d.extent); }) != all.end()) continue;
    const auto deck = others([&](const auto& d) {
      const auto side = touch(e, d.extent);
      return side && (*side == Side::Top || *side == Side::Bottom) == turned;
    });
    if (deck == all.end()) continue;
    stairs.up = *touch(e, deck->extent);
    stairs.extent = e;
    stairs.outline.edge.corners = {e.from, {e.to.x, e.from.y}, e.to, {e.from.x, e.to.y}};
    return;
  }
}

}  // namespace

std::vector<PlacedDeck> placeDecks(const std::vector<Deck>& decks, Length gap, Length rowWidth) {
  std::vector<PlacedDeck> out;
  for (std::size_t i = 0; i < decks.size(); ++i)
    if (const auto outline = outlineOf(decks[i]); outline && decks[i].at)
      out.push_back(put(i, decks[i], *outline, *decks[i].at));

  Length left, rowTop, bottom, right;
  bool isRowEmpty = true;
  for (const auto& p : out) {
    left = isRowEmpty ? p.extent.from.x : std::min(left, p.extent.from.x);
    rowTop = isRowEmpty ? p.extent.from.y : std::min(rowTop, p.extent.from.y);
    right = isRowEmpty ? p.extent.to.x : std::max(right, p.extent.to.x);
    bottom = isRowEmpty ? p.extent.to.y : std::max(bottom, p.extent.to.y);
    isRowEmpty = false;
  }
  for (std::size_t i = 0; i < decks.size(); ++i) {
    const auto outline = outlineOf(decks[i]);
    if (!outline || decks[i].at) continue;
    const Extent own = extentOf(*outline);
    if (!isRowEmpty && right + gap + own.width() - left > rowWidth) {
      rowTop = bottom + base::scaled(gap, 8, 5, base::Round::HalfUp);
      isRowEmpty = true;
    }
    const Place corner = {isRowEmpty ? left : right + gap, rowTop};
    out.push_back(put(i, decks[i], *outline, {corner.x - own.from.x, corner.y - own.from.y}));
    right = corner.x + own.width();
    bottom = std::max(bottom, corner.y + own.height());
    isRowEmpty = false;
  }
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.index < b.index; });
  for (auto& p : out)
    if (p.isStairs && decks[p.index].at) turnStairs(p, out);
  return out;
}

}  // namespace model
