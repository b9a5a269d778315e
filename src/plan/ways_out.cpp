// Where the crew leaves a deck that is wet behind it.
#include "model/placing.h"
#include "plan/strips.h"

#include <algorithm>
#include <tuple>

namespace plan {
namespace {

using base::Length;
using base::Wide;
using model::Place;

Length between(Length a, Length b) { return {(a.millionths + b.millionths) / 2}; }

/// A possible way out, and how long the edge is in whose middle it lies; a corner has none.
struct Exit {
  Place at;
  Length edge;
};

/// Corners and middles of the edges; of a circle the four points of the compass. Stairs are left by their
/// foot or top.
std::vector<Exit> exitsOf(const model::PlacedDeck& deck) {
  const auto& loop = deck.outline.edge;
  const auto& box = deck.extent;
  const Place middle = {between(box.from.x, box.to.x), between(box.from.y, box.to.y)};
  if (deck.isStairs) {
    const bool isLying = deck.up == model::Side::Left || deck.up == model::Side::Right;
    const Exit low =
        isLying ? Exit{{box.from.x, middle.y}, box.height()} : Exit{{middle.x, box.from.y}, box.width()};
    const Exit high =
        isLying ? Exit{{box.to.x, middle.y}, box.height()} : Exit{{middle.x, box.to.y}, box.width()};
    const bool isTopHigh = deck.up == model::Side::Right || deck.up == model::Side::Bottom;
    return isTopHigh ? std::vector{low, high} : std::vector{high, low};
  }
  if (loop.isCircle())
    return {{{middle.x, box.to.y}, box.width()},
            {{box.to.x, middle.y}, box.width()},
            {{middle.x, box.from.y}, box.width()},
            {{box.from.x, middle.y}, box.width()}};
  std::vector<Exit> exits;
  for (std::size_t i = 0; i < loop.corners.size(); ++i) {
    const Place a = loop.corners[i], b = loop.corners[(i + 1) % loop.corners.size()];
    exits.push_back({{between(a.x, b.x), between(a.y, b.y)}, model::distance(a, b)});
    exits.push_back({a, {}});
  }
  return exits;
}

/// The square of how far a place lies from a box; 0 inside it.
Wide farFrom(const model::Extent& box, Place p) {
  const auto beyond = [](Length at, Length from, Length to) {
    return std::max({Length{}, from - at, at - to}).millionths;
  };
  const Wide dx = beyond(p.x, box.from.x, box.to.x), dy = beyond(p.y, box.from.y, box.to.y);
  return dx * dx + dy * dy;
}

Exit nearest(const std::vector<Exit>& exits, const model::Extent& next) {
  return *std::min_element(exits.begin(), exits.end(), [&](const Exit& a, const Exit& b) {
    return farFrom(next, a.at) < farFrom(next, b.at);
  });
}

/// The longest edge that leads off the timber; of equals the lowest, then the rightmost.
Exit longestFree(const std::vector<Exit>& exits, const std::vector<model::PlacedDeck>& others) {
  constexpr std::int64_t near = 60'000'000;  // nm; a gap for drainage still counts as touching
  const auto isFree = [&](const Exit& e) {
    return std::none_of(others.begin(), others.end(),
                        [&](const auto& d) { return farFrom(d.extent, e.at) <= Wide{near} * near; });
  };
  const auto isWorse = [&](const Exit& a, const Exit& b) {
    if (isFree(a) != isFree(b)) return isFree(b);
    return std::tuple(a.edge, a.at.y, a.at.x) < std::tuple(b.edge, b.at.y, b.at.x);
  };
  return *std::max_element(exits.begin(), exits.end(), isWorse);
}

}  // namespace

std::vector<std::optional<Place>> waysOut(const std::vector<model::Deck>& decks) {
  std::vector<std::optional<Place>> ways(decks.size());
  const auto all = model::placeDecks(decks, base::metres(1), base::metres(1000));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const auto& deck = decks[all[i].index];
    if (deck.wayOut) {
      ways[all[i].index] = deck.wayOut;
      continue;
    }
    const auto exits = exitsOf(all[i]);
    std::vector<model::PlacedDeck> others;  // whose place the job gives
    std::optional<model::Extent> next;
    for (const auto& other : all) {
      if (other.index == all[i].index || !deck.at || !decks[other.index].at) continue;
      others.push_back(other);
      if (other.index > all[i].index && !next && decks[other.index].coats > 0) next = other.extent;
    }
    const Exit exit = next              ? nearest(exits, *next)
                      : all[i].isStairs ? exits.front()
                                        : longestFree(exits, others);
    const auto own = model::extentOf(*model::outlineOf(deck)).from;
    const auto& corner = all[i].extent.from;
    ways[all[i].index] = Place{exit.at.x - corner.x + own.x, exit.at.y - corner.y + own.y};
  }
  return ways;
}

}  // namespace plan
