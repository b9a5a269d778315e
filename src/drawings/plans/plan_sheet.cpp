#include "drawings/plans/plan_sheet.h"

#include <algorithm>

namespace drawings {

using base::Length;

std::string letterOf(std::size_t index) {
  // After Z comes AA: nobody has so many decks, but a letter must not repeat.
  const std::string last(1, static_cast<char>('A' + index % 26));
  return index < 26 ? last : letterOf(index / 26 - 1) + last;
}

PlanSheet::PlanSheet(const Pen& p, std::int64_t scale, std::vector<PlacedDeck> decks)
    : pen(p), placed(std::move(decks)), scale_(scale) {
  for (std::size_t i = 0; i < placed.size(); ++i) {
    areas_.push_back(on(placed[i].extent));
    const Rect r = grown(areas_.back(), hundredthsPt(50));
    bounds_ = i == 0 ? r : around(bounds_, r);
  }
}

void PlanSheet::take(const Rect& r) {
  taken_.push_back(r);
  bounds_ = around(bounds_, r);
}

namespace {

constexpr std::int64_t scans = 10;  // lines across a rectangle that are tested

}  // namespace

void PlanSheet::takeThin(const Rect& r) {
  thin_.push_back(r);
  bounds_ = around(bounds_, r);
}

bool PlanSheet::isUntaken(const Rect& r) const {
  return std::none_of(taken_.begin(), taken_.end(), [&](const Rect& t) { return drawings::overlap(r, t); });
}

bool PlanSheet::isFree(const Rect& r, bool mayCrossThin) const {
  const auto overlaps = [&](const Rect& t) { return drawings::overlap(r, t); };
  if (!isUntaken(r)) return false;
  if (!mayCrossThin && std::any_of(thin_.begin(), thin_.end(), overlaps)) return false;
  for (std::size_t deck = 0; deck < placed.size(); ++deck)
    if (meets(deck, r)) return false;
  return true;
}

bool PlanSheet::meets(std::size_t deck, const Rect& r) const {
  if (!drawings::overlap(r, areas_[deck])) return false;
  // The lines run along the longer side, so that no narrow deck slips between them.
  const bool alongX = r.size.w >= r.size.h;
  const Length from = onSite(alongX ? r.at.x : r.at.y), to = onSite(alongX ? right(r) : bottom(r));
  const Dim first = alongX ? r.at.y : r.at.x, across = alongX ? r.size.h : r.size.w;
  for (std::int64_t i = 0; i <= scans; ++i)
    for (const auto& s : stretches(placed[deck].outline.edge, onSite(first + across * i / scans), alongX))
      if (s.from < to && from < s.to) return true;
  return false;
}

bool PlanSheet::meetsOther(const PlacedDeck& deck, const Rect& r) const {
  for (std::size_t i = 0; i < placed.size(); ++i)
    if (placed[i].index != deck.index && meets(i, r)) return true;
  return false;
}

std::vector<Stretch> PlanSheet::boardsAcross(const PlacedDeck& deck, const Rect& r) const {
  if (onSite(r.at.y) < deck.extent.from.y || deck.extent.to.y < onSite(bottom(r))) return {};
  const Length rounding = {2}, least = onSite(r.size.w) - rounding;  // narrower ones cannot hold it
  std::vector<Stretch> boards = {{deck.extent.from.x, deck.extent.to.x}};
  for (std::int64_t i = 0; i <= scans && !boards.empty(); ++i) {
    std::vector<Stretch> both;
    for (const auto& s : stretches(deck.outline, onSite(r.at.y + r.size.h * i / scans), true))
      for (const auto& b : boards) {
        const Stretch shared = {std::max(s.from, b.from), std::min(s.to, b.to)};
        if (shared.to - shared.from >= least) both.push_back(shared);
      }
    boards = std::move(both);
  }
  return boards;
}

bool PlanSheet::isOnBoards(const std::vector<Stretch>& boards, const Rect& r) const {
  const Length from = onSite(r.at.x), to = onSite(right(r));
  if (std::none_of(boards.begin(), boards.end(), [&](const auto& s) { return s.from <= from && to <= s.to; }))
    return false;
  return isUntaken(r);
}

bool PlanSheet::isOnBoards(const PlacedDeck& deck, const Rect& r) const {
  return isOnBoards(boardsAcross(deck, r), r);
}

std::optional<Point> PlanSheet::freeSpot(Size size, Dim margin) const {
  const Dim step = Dim::mm(2);
  for (Dim y = bottom(bounds_) - size.h; y >= bounds_.at.y + bounds_.size.h / 2; y -= step)
    for (Dim x = right(bounds_) - size.w; x >= bounds_.at.x; x -= step)
      if (isFree(grown({{x, y}, size}, margin))) return Point{x, y};
  return std::nullopt;
}

}  // namespace drawings
