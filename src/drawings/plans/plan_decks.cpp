// Decks on a plan: fill, boards at their true pitch, treads, cut-outs, edges.
#include "drawings/plans/plan_parts.h"

namespace drawings {

namespace {

void addLoop(Path& path, const PlanSheet& sheet, const Loop& loop) {
  if (loop.isCircle()) {
    addEllipse(path, sheet.on(loop.centre), sheet.on(loop.radius), sheet.on(loop.radius));
    return;
  }
  moveTo(path, sheet.on(loop.corners[0]));
  for (std::size_t i = 1; i < loop.corners.size(); ++i) lineTo(path, sheet.on(loop.corners[i]));
  path.steps.push_back({typeset::Step::Kind::Close, {}, {}, {}});
}

Path loopPath(const PlanSheet& sheet, const Loop& loop, std::optional<model::Colour> fill,
              std::optional<Stroke> s) {
  Path path;
  addLoop(path, sheet, loop);
  path.fill = fill;
  path.stroke = std::move(s);
  return path;
}

void drawHoles(PlanSheet& sheet, const Outline& outline, const Stroke& edge, bool isOpen) {
  const auto fill = colour(sheet.pen, isOpen ? "white" : "tint");
  for (const auto& hole : outline.holes) {
    put(sheet.items, loopPath(sheet, hole.edge, fill, edge));
    drawHoles(sheet, hole, edge, !isOpen);
  }
}

void drawBoards(PlanSheet& sheet, const PlacedDeck& deck, const model::Boards& boards) {
  const Dim pitch = sheet.on(boards.width + boards.gap);
  if (pitch.raw <= 0) return;
  const Dim closest = hundredthsPt(128);  // 0.45 mm
  const std::int64_t every = base::divide(closest.raw, pitch.raw, base::Round::Up);
  Path lines;
  for (const auto& seam : seams(deck.outline, boards, every)) {
    moveTo(lines, sheet.on(seam.from));
    lineTo(lines, sheet.on(seam.to));
  }
  lines.stroke = Stroke{colour(sheet.pen, "wood"), hundredthsPt(25), {}, false};
  if (!lines.steps.empty()) put(sheet.items, std::move(lines));
}

/// Treads across the way up, and an arrow along it.
void drawTreads(PlanSheet& sheet, const PlacedDeck& deck, const model::Stairs& stairs, bool isKey) {
  const Rect r = sheet.on(deck.extent);
  const bool isLying = deck.up == Side::Left || deck.up == Side::Right;
  const auto ink = colour(sheet.pen, "ink");
  const Stroke thin = {ink, hundredthsPt(60), {}, false};
  Path treads;
  const bool isReadable = sheet.on(stairs.going) >= tenths(7);  // closer ones run into a blot
  for (int i = 1; isReadable && i < stairs.steps; ++i) {
    const Dim at = sheet.on((isLying ? deck.extent.from.x : deck.extent.from.y) + stairs.going * i);
    moveTo(treads, isLying ? Point{at, r.at.y} : Point{r.at.x, at});
    lineTo(treads, isLying ? Point{at, bottom(r)} : Point{right(r), at});
  }
  treads.stroke = thin;
  if (!treads.steps.empty()) put(sheet.items, std::move(treads));
  if (isKey) return;

  const Dim inset = tenths(8), head = Dim::mm(2), half = tenths(8);
  const Dim length = isLying ? r.size.w : r.size.h;
  if (length < head * 2) return;
  const Point middle = {r.at.x + r.size.w / 2, r.at.y + r.size.h / 2};
  // 'along' counts from the middle towards the top step.
  const auto at = [&](Dim along, Dim across) -> Point {
    switch (deck.up) {
      case Side::Left:
        return {middle.x - along, middle.y + across};
      case Side::Right:
        return {middle.x + along, middle.y + across};
      case Side::Top:
        return {middle.x + across, middle.y - along};
      case Side::Bottom:
        return {middle.x + across, middle.y + along};
    }
    throw std::logic_error("internal error: no such side");
  };
  const Dim tip = length / 2 - inset;
  put(sheet.items, line(at(-tip, {}), at(tip - head, {}), thin));
  put(sheet.items, polygon({at(tip, {}), at(tip - head, half), at(tip - head, -half)}, ink, std::nullopt));
}

}  // namespace

void drawDeckLines(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, bool isKey) {
  const Stroke edge = {colour(sheet.pen, "ink"), hundredthsPt(isKey ? 80 : 100), {}, false};
  if (deck.boards && !isKey && !placed.isStairs) drawBoards(sheet, placed, *deck.boards);
  if (const auto* stairs = std::get_if<model::Stairs>(&deck.shape)) drawTreads(sheet, placed, *stairs, isKey);
  drawHoles(sheet, placed.outline, edge, true);
  put(sheet.items, loopPath(sheet, placed.outline.edge, std::nullopt, edge));
}

void drawDecks(PlanSheet& sheet, const std::vector<model::Deck>& decks, bool isKey) {
  for (const auto& placed : sheet.placed) {
    const auto fill = colour(sheet.pen, placed.isStairs ? "white" : "tint");
    put(sheet.items, loopPath(sheet, placed.outline.edge, fill, std::nullopt));
    drawDeckLines(sheet, placed, decks[placed.index], isKey);
  }
}

}  // namespace drawings
