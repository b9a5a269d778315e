// Where the crew leaves a deck that is wet behind it.
#include "schedule/strips/ways_out.h"

#include <algorithm>
#include <tuple>

namespace schedule {
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

/// The middle of the longest part of a side that lies against another deck, or the end of it that touches the
/// deck. Its outline counts: an L embraces decks that it does not touch.
std::optional<Place> contact(const Side& side, const model::Outline& other) {
  std::optional<Place> best;
  Length longest;
  for (const Length beside : {side.at - touching, side.at + touching}) {
    for (const auto& [from, to] : model::stretches(other, beside, side.alongX)) {
      const Length start = std::max(side.from, from), end = std::min(side.to, to);
      if (start < end) {
        if (best && end - start <= longest) continue;
        best = side.place(between(start, end));
        longest = end - start;
      } else if (!best && !side.isBeside) {
        if (from <= side.to + touching && side.to <= to) best = side.place(side.to);
        else if (side.from - touching <= to && from <= side.from) best = side.place(side.from);
      }
    }
  }
  return best;
}

/// The better first.
enum Rank { toNextDeck, offTheTimber, overDryDeck, overHighEdge, overWetDeck };

struct Exit {
  Place at;
  Rank rank = toNextDeck;
  Length edge;
};

std::optional<Exit> bestExit(const std::vector<model::Deck>& decks, const std::vector<model::PlacedDeck>& all,
                             const model::PlacedDeck& own, const std::vector<std::size_t>& wet,
                             const std::vector<std::size_t>& next) {
  constexpr Length highEdge = base::millimetres(500);  // nobody steps off it with a pole in hand
  const auto& deck = decks[own.index];
  const bool isHigh = deck.edgeHeight && *deck.edgeHeight > highEdge;
  const auto holds = [](const std::vector<std::size_t>& list, std::size_t index) {
    return std::find(list.begin(), list.end(), index) != list.end();
  };
  std::optional<Exit> best;
  for (const auto& side : sidesOf(own, deck)) {
    std::optional<Place> toNext, toWet, toOther;
    for (const auto& other : all) {
      if (other.index == own.index || !deck.at || !decks[other.index].at) continue;
      const auto met = contact(side, other.outline);
      if (!met) continue;
      (holds(wet, other.index) ? toWet : holds(next, other.index) ? toNext : toOther) = met;
    }
    Exit exit{side.middle(), isHigh ? overHighEdge : offTheTimber, side.to - side.from};
    if (toNext) exit = {*toNext, toNextDeck, exit.edge};
    else if (toWet) exit = {*toWet, overWetDeck, exit.edge};
    else if (toOther) exit = {*toOther, overDryDeck, exit.edge};
    if (side.isBeside) exit.rank = std::max(exit.rank, overHighEdge);
    const auto isLess = [](const Exit& a, const Exit& b) {
      return std::tuple(-a.rank, a.edge, a.at.y, a.at.x) < std::tuple(-b.rank, b.edge, b.at.y, b.at.x);
    };
    const bool isFoot = own.isStairs && best && best->rank == exit.rank;  // the foot came first
    if (!best || (!isFoot && isLess(*best, exit))) best = exit;
  }
  return best;
}

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
  const auto best = bestExit(decks, all, *own, wet, next);
  if (!best) return {};
  const auto drawn = model::extentOf(*model::outlineOf(decks[deck])).from;
  const auto& corner = own->extent.from;
  return Place{best->at.x - corner.x + drawn.x, best->at.y - corner.y + drawn.y};
}

std::vector<std::vector<bool>> leadsOnto(const std::vector<model::Deck>& decks) {
  std::vector<std::vector<bool>> leads(decks.size(), std::vector<bool>(decks.size()));
  if (std::count_if(decks.begin(), decks.end(), [](const auto& d) { return d.at.has_value(); }) < 2)
    return leads;
  const auto all = placedAsGiven(decks);
  for (const auto& from : all) {
    const auto& deck = decks[from.index];
    if (!deck.at) continue;
    std::optional<Place> out;
    if (deck.wayOut) {
      const auto drawn = model::extentOf(*model::outlineOf(deck)).from;
      out =
          Place{deck.wayOut->x - drawn.x + from.extent.from.x, deck.wayOut->y - drawn.y + from.extent.from.y};
    }
    const auto free = bestExit(decks, all, from, {}, {});
    for (const auto& to : all) {
      if (to.index == from.index || !decks[to.index].at) continue;
      if (out) {
        leads[from.index][to.index] = model::touches(*out, to.outline, touching);
      } else if (free) {
        const int rank = bestExit(decks, all, from, {to.index}, {})->rank;
        leads[from.index][to.index] = rank >= overHighEdge && rank > free->rank;
      }
    }
  }
  return leads;
}

}  // namespace schedule
