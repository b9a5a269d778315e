#include "schedule/crew/stands.h"

#include <algorithm>

namespace schedule {
namespace {

bool isReached(const Row& row, const FlowStrip& strip, BoardSpan dry) {
  if ((dry.high - dry.low + 1) * static_cast<double>(row.pitch.millionths) / 1e9 < footing) return false;
  const int near = std::clamp(strip.fromBoard, dry.low, dry.high);
  return isReachedFromBoard(row, strip.fromBoard, strip.boards, near);
}

/// The boards of a unit of this round that are dry once so many strips are laid.
std::optional<BoardSpan> dryBoards(const RoundSoFar& round, std::size_t item, std::size_t laid) {
  if (item >= round.firstStrips.size()) return round.items[item].unit->boards();
  const bool isLast = item + 1 == round.firstStrips.size();
  const std::size_t next = std::max(laid, round.firstStrips[item]);
  const std::size_t end = isLast ? round.strips.size() : round.firstStrips[item + 1];
  if (next >= end) return {};
  return round.strips[next].dry;
}

bool isReachedFromBoards(const Waiting& waiting, const RoundSoFar& round, std::size_t laid) {
  const auto& strip = round.strips[waiting.strip];
  const Unit& unit = *round.items[waiting.item].unit;
  for (std::size_t item = waiting.item; item < round.items.size(); ++item) {
    if (round.items[item].unit->deck != unit.deck) continue;
    const auto dry = dryBoards(round, item, laid);
    if (dry && isReached(*unit.row, strip, *dry)) return true;
  }
  const auto beside = round.rules.dryBoardsBeside(round.items[waiting.item].index, waiting.due);
  return beside && isReached(*unit.row, strip, *beside);
}

/// Whether nobody may stand on a deck once so many strips are laid.
bool isShut(const RoundSoFar& round, std::size_t deck, std::size_t laid, int minute) {
  bool isToday = false;
  for (std::size_t item = 0; item < round.items.size(); ++item) {
    if (round.items[item].unit->deck != deck) continue;
    isToday = true;
    const bool isBegun = item < round.firstStrips.size() && round.firstStrips[item] < laid;
    if (isBegun || minute < round.items[item].notBefore) return true;
  }
  return !isToday && round.rules.isWet(deck, minute);
}

}  // namespace

std::optional<model::Stand> standFor(const Waiting& strip, const RoundSoFar& round, std::size_t laid,
                                     int minute) {
  using On = model::Stand::On;
  if (strip.isReachedFromGround) return model::Stand{On::Ground, 0};
  if (isReachedFromBoards(strip, round, laid)) return model::Stand{On::Boards, 0};
  const auto shut = [&](std::size_t deck) { return isShut(round, deck, laid, minute); };
  for (const auto deck : strip.decks) {
    if (!shut(deck) && round.rules.graph->path(deck, {}, shut)) return model::Stand{On::Deck, deck};
  }
  return {};
}

}  // namespace schedule
