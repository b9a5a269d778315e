// Where the crew leaves a deck that is wet behind it.
#include "plan/ways_out.h"

#include <algorithm>
#include <tuple>

namespace plan {
namespace {

using base::Length;
using base::Wide;
using model::Place;

constexpr Length touching = base::millimetres(60);  // a gap for drainage still counts
constexpr Length hair = base::millimetres(1);

Length between(Length a, Length b) { return {(a.millionths + b.millionths) / 2}; }

/// A piece of an outer edge beside the boards laid last, along x or y.
struct Side {
  bool alongX = true;
  Length at;              // across it
  Length from, to;        // along it
  bool isBeside = false;  // of stairs: not their foot or top

  Place middle() const { return place(between(from, to)); }
  Place place(Length along) const { return alongX ? Place{along, at} : Place{at, along}; }
};

/// Boards are laid strip by strip across their run: the last strip lies at one of two sides. Stairs are left
/// by their foot or top, at worst over a side.
std::vector<Side> sidesOf(const model::PlacedDeck& placed, const model::Deck& deck) {
  const auto& box = placed.extent;
  std::vector<Side> sides;
  const auto add = [&](bool alongX, bool isBeside) {
    const Length low = alongX ? box.from.y : box.from.x, high = alongX ? box.to.y : box.to.x;
    for (const bool isLow : {true, false})
      for (const auto& s : model::stretches(placed.outline, isLow ? low + hair : high - hair, alongX))
        sides.push_back({alongX, isLow ? low : high, s.from, s.to, isBeside});
  };
  if (placed.isStairs) {
    const bool risesAlongX = placed.up == model::Side::Left || placed.up == model::Side::Right;
    add(!risesAlongX, false);
    add(risesAlongX, true);
    // The foot first.
    const bool isTopLow = placed.up == model::Side::Left || placed.up == model::Side::Top;
    if (isTopLow) std::swap(sides[0], sides[1]);
    return sides;
  }
  add(!deck.boards || model::runsAlongX(box, deck.boards->run), false);
  return sides;
}

/// The middle of the part of a side that lies against a box, or the end of it that touches the box.
std::optional<Place> contact(const Side& side, const model::Extent& other) {
  const Length low = side.alongX ? other.from.y : other.from.x, high = side.alongX ? other.to.y : other.to.x;
  if (side.at < low - touching || side.at > high + touching) return {};
  const Length from = side.alongX ? other.from.x : other.from.y, to = side.alongX ? other.to.x : other.to.y;
  const Length start = std::max(side.from, from), end = std::min(side.to, to);
  if (start < end) return side.place(between(start, end));
  if (side.isBeside) return {};
  if (from <= side.to + touching && side.to <= to) return side.place(side.to);
  if (side.from - touching <= to && from <= side.from) return side.place(side.from);
  return {};
}

struct Exit {
  Place at;
  int rank = 0;  // the lower the better
  Length edge;
};

}  // namespace

std::vector<model::PlacedDeck> placedAsGiven(const std::vector<model::Deck>& decks) {
  return model::placeDecks(decks, base::metres(1), base::metres(1000));
}

std::optional<Place> wayOut(const std::vector<model::Deck>& decks, const std::vector<model::PlacedDeck>& all,
                            std::size_t deck, const std::vector<std::size_t>& wet,
                            const std::vector<std::size_t>& next) {
  const auto own = std::find_if(all.begin(), all.end(), [&](const auto& p) { return p.index == deck; });
  if (own == all.end()) return {};
  if (decks[deck].wayOut) return decks[deck].wayOut;
  constexpr Length highEdge = base::millimetres(500);  // nobody steps off it with a pole in hand
  const bool isHigh = decks[deck].edgeHeight && *decks[deck].edgeHeight > highEdge;
  const auto holds = [](const std::vector<std::size_t>& list, std::size_t index) {
    return std::find(list.begin(), list.end(), index) != list.end();
  };
  std::optional<Exit> best;
  for (const auto& side : sidesOf(*own, decks[deck])) {
    std::optional<Place> toNext, toWet, toOther;
    for (const auto& other : all) {
      if (other.index == deck || !decks[deck].at || !decks[other.index].at) continue;
      const auto met = contact(side, other.extent);
      if (!met) continue;
      (holds(wet, other.index) ? toWet : holds(next, other.index) ? toNext : toOther) = met;
    }
    Exit exit{side.middle(), isHigh ? 3 : 1, side.to - side.from};
    if (toNext) exit = {*toNext, 0, exit.edge};
    else if (toWet) exit = {*toWet, 4, exit.edge};
    else if (toOther) exit = {*toOther, 2, exit.edge};
    if (side.isBeside) exit.rank = std::max(exit.rank, 3);
    const auto isLess = [](const Exit& a, const Exit& b) {
      return std::tuple(-a.rank, a.edge, a.at.y, a.at.x) < std::tuple(-b.rank, b.edge, b.at.y, b.at.x);
    };
    const bool isFoot = own->isStairs && best && best->rank == exit.rank;  // the foot came first
    if (!best || (!isFoot && isLess(*best, exit))) best = exit;
  }
  if (!best) return {};
  const auto drawn = model::extentOf(*model::outlineOf(decks[deck])).from;
  const auto& corner = own->extent.from;
  return Place{best->at.x - corner.x + drawn.x, best->at.y - corner.y + drawn.y};
}

bool leadsOnto(const std::vector<model::Deck>& decks, std::size_t deck, std::size_t other) {
  if (!decks[deck].wayOut || !decks[deck].at || !decks[other].at) return false;
  const auto all = placedAsGiven(decks);
  const auto on = [&](std::size_t index) {
    return std::find_if(all.begin(), all.end(), [&](const auto& p) { return p.index == index; });
  };
  const auto from = on(deck), to = on(other);
  if (from == all.end() || to == all.end()) return false;
  const auto drawn = model::extentOf(*model::outlineOf(decks[deck])).from;
  const Place out = {decks[deck].wayOut->x - drawn.x + from->extent.from.x,
                     decks[deck].wayOut->y - drawn.y + from->extent.from.y};
  const auto& box = to->extent;
  return box.from.x - touching <= out.x && out.x <= box.to.x + touching && box.from.y - touching <= out.y &&
         out.y <= box.to.y + touching;
}

}  // namespace plan
