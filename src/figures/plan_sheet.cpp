#include "figures/plan_sheet.h"

#include <algorithm>

namespace figures {

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

bool PlanSheet::isFree(const Rect& r, bool mayCrossThin) const {
  const auto meets = [&](const Rect& t) { return figures::overlap(r, t); };
  if (std::any_of(taken_.begin(), taken_.end(), meets)) return false;
  if (!mayCrossThin && std::any_of(thin_.begin(), thin_.end(), meets)) return false;
  const Length from = onSite(r.at.x), to = onSite(right(r));
  for (std::size_t deck = 0; deck < placed.size(); ++deck) {
    if (!figures::overlap(r, areas_[deck])) continue;
    for (std::int64_t i = 0; i <= scans; ++i)
      for (const auto& s : stretches(placed[deck].outline.edge, onSite(r.at.y + r.size.h * i / scans), true))
        if (s.from < to && from < s.to) return false;
  }
  return true;
}

bool PlanSheet::isOnBoards(const PlacedDeck& deck, const Rect& r) const {
  for (const auto& t : taken_)
    if (figures::overlap(r, t)) return false;
  const Length from = onSite(r.at.x), to = onSite(right(r));
  const Extent& all = deck.extent;  // most places fail here, before any line is scanned
  if (from < all.from.x || all.to.x < to || onSite(r.at.y) < all.from.y || all.to.y < onSite(bottom(r)))
    return false;
  for (std::int64_t i = 0; i <= scans; ++i) {
    const auto inside = stretches(deck.outline, onSite(r.at.y + r.size.h * i / scans), true);
    if (std::none_of(inside.begin(), inside.end(),
                     [&](const auto& s) { return s.from <= from && to <= s.to; }))
      return false;
  }
  return true;
}

std::optional<Point> PlanSheet::freeSpot(Size size, Dim margin) const {
  const Dim step = Dim::mm(2);
  for (Dim y = bottom(bounds_) - size.h; y >= bounds_.at.y + bounds_.size.h / 2; y -= step)
    for (Dim x = right(bounds_) - size.w; x >= bounds_.at.x; x -= step)
      if (isFree(grown({{x, y}, size}, margin))) return Point{x, y};
  return std::nullopt;
}

}  // namespace figures
