// Names and sizes of cut-outs, in them or close beside them.
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>

namespace drawings {

namespace {

const Dim patchRim = tenths(10);

/// Cut-outs of a deck that are alike share one label.
struct Group {
  std::string text;
  std::vector<std::size_t> which;
};

std::vector<Group> groups(const Pen& pen, const std::vector<model::CutOut>& cuts) {
  std::vector<Group> out;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const std::string text = cutOutText(pen, cuts[i]);
    if (text.empty()) continue;
    const auto same = std::find_if(out.begin(), out.end(), [&](const auto& g) { return g.text == text; });
    if (same == out.end()) out.push_back({text, {i}});
    else same->which.push_back(i);
  }
  for (auto& g : out)
    if (g.which.size() > 1) g.text = std::to_string(g.which.size()) + " × " + g.text;
  return out;
}

/// In the hole where it has room, else beside it on the boards.
bool nameHole(PlanSheet& sheet, const PlacedDeck& deck, const Outline& outline, const ShapedText& w) {
  const Rect hole = sheet.on(extentOf(outline));
  const Point middle = {hole.at.x + hole.size.w / 2, hole.at.y + hole.size.h / 2};
  const Size size = {w.width, w.height};
  const Point centred = {middle.x - w.width / 2, middle.y - w.height / 2};
  // A hole has no boards of its own, so it is tested as a deck without any.
  const PlacedDeck asDeck = {deck.index, {outline.edge, {}}, extentOf(outline), false, Side::Right};
  if (outline.holes.empty() && sheet.isOnBoards(asDeck, grown({centred, size}, tenths(15)))) {
    put(sheet.items, w, {centred.x, centred.y + w.height});
    sheet.take(grown({centred, size}, patchRim));
    return true;
  }
  const Dim off = tenths(25);
  const Dim above = hole.at.y - off - w.height, below = bottom(hole) + off, flush = right(hole) - w.width;
  for (const Point at :
       {Point{centred.x, below}, Point{centred.x, above}, Point{right(hole) + off, centred.y},
        Point{hole.at.x - off - w.width, centred.y}, Point{hole.at.x, below}, Point{flush, below},
        Point{hole.at.x, above}, Point{flush, above}}) {
    const Rect patch = grown({at, size}, patchRim);
    if (!sheet.isOnBoards(deck, grown(patch, tenths(5)))) continue;
    put(sheet.items, box(patch, colour(sheet.pen, "tint"), std::nullopt));
    put(sheet.items, w, {at.x, at.y + w.height});
    sheet.take(patch);
    return true;
  }
  return false;
}

}  // namespace

void nameCutOuts(PlanSheet& sheet, const std::vector<model::Deck>& decks) {
  for (const auto& deck : sheet.placed)
    for (const auto& group : groups(sheet.pen, decks[deck.index].without)) {
      const ShapedText w = words(sheet.pen, "drawing", group.text);
      const bool isNamed = std::any_of(group.which.begin(), group.which.end(), [&](std::size_t i) {
        return nameHole(sheet, deck, deck.outline.holes.at(i), w);
      });
      if (!isNamed)
        sheet.notes.push_back(unbroken(
            sheet.pen.language("plan.cut_out_of", {{"deck", letterOf(deck.index)}, {"cuts", group.text}})));
    }
}

}  // namespace drawings
