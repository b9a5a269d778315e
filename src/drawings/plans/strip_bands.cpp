#include "drawings/plans/strip_bands.h"

#include <algorithm>

namespace drawings {

using base::Length;

namespace {

/// Every place across a band at which the sides of the outline bend; round ones bend everywhere.
void addBends(std::vector<Length>& bends, const PlanSheet& sheet, const Outline& outline, bool alongX) {
  const auto& edge = outline.edge;
  for (const auto& corner : edge.corners) bends.push_back(alongX ? corner.y : corner.x);
  if (edge.isCircle()) {
    const Length middle = alongX ? edge.centre.y : edge.centre.x;
    const Length step = sheet.onSite(tenths(4));
    for (Length off; off < edge.radius; off += step) {
      bends.push_back(middle + off);
      bends.push_back(middle - off);
    }
    bends.push_back(middle + edge.radius);
    bends.push_back(middle - edge.radius);
  }
  for (const auto& hole : outline.holes) addBends(bends, sheet, hole, alongX);
}

bool isFootLow(model::Side up) { return up == Side::Right || up == Side::Bottom; }

}  // namespace

StripBands bandsOf(const PlacedDeck& placed, const model::Deck& deck, const model::WetEdge& edge) {
  StripBands out;
  Length pitch;
  int count = 0;  // of treads counted from a foot that lies high
  out.startsLow = !edge.startsAtEnd;
  if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) {
    out.alongX = placed.up == Side::Top || placed.up == Side::Bottom;
    pitch = stairs->going;
    out.startsLow = isFootLow(placed.up) != edge.startsAtEnd;
    if (!isFootLow(placed.up)) count = stairs->steps;
  } else if (deck.boards) {
    out.alongX = model::runsAlongX(placed.extent, deck.boards->run);
    pitch = deck.boards->width + deck.boards->gap;
  }
  const Length low = out.alongX ? placed.extent.from.y : placed.extent.from.x;
  const Length high = out.alongX ? placed.extent.to.y : placed.extent.to.x;
  for (std::size_t i = 0; i < edge.strips.size(); ++i) {
    const auto& strip = edge.strips[i];
    if (strip.boards == 0) continue;
    const int first = count == 0 ? strip.fromBoard : count - strip.fromBoard - strip.boards;
    out.numbers.push_back(strip.number);
    out.strips.push_back(i);
    out.bands.push_back({low + pitch * first, std::min(low + pitch * (first + strip.boards), high)});
  }
  return out;
}

Path bandPath(const PlanSheet& sheet, const Outline& outline, const Band& band, bool alongX) {
  constexpr Length hair{1'000};  // nm: just inside a bend, where the outline is told on one side
  std::vector<Length> bends = {band.from, band.to};
  addBends(bends, sheet, outline, alongX);
  std::erase_if(bends, [&](Length bend) { return bend < band.from || bend > band.to; });
  std::sort(bends.begin(), bends.end());
  Path path;
  const auto at = [&](Length along, Length across) {
    return alongX ? Point{sheet.on(along), sheet.on(across)} : Point{sheet.on(across), sheet.on(along)};
  };
  for (std::size_t i = 0; i + 1 < bends.size(); ++i) {
    const Length from = bends[i], to = bends[i + 1];
    if (to - from <= hair * 2) continue;
    const auto near = model::stretches(outline, from + hair, alongX);
    const auto far = model::stretches(outline, to - hair, alongX);
    for (std::size_t k = 0; k < near.size() && k < far.size(); ++k) {
      moveTo(path, at(near[k].from, from));
      lineTo(path, at(near[k].to, from));
      lineTo(path, at(far[k].to, to));
      lineTo(path, at(far[k].from, to));
      path.steps.push_back({typeset::Step::Kind::Close, {}, {}, {}});
    }
  }
  return path;
}

}  // namespace drawings
