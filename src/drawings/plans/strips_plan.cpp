// Plan of the decks coated on one day: strips in their order, where to start and where to leave.
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"
#include "drawings/plans/strip_drawer.h"
#include "drawings/plans/strip_list.h"

#include <algorithm>
#include <memory>

namespace drawings {

namespace {

using base::Length;

/// Decks that lie beside each other, and the room they take together.
struct Group {
  std::vector<PlacedDeck> decks;
  Extent extent;
};

bool areNear(const Extent& a, const Extent& b) {
  constexpr Length near = base::metres(1);
  return a.from.x <= b.to.x + near && b.from.x <= a.to.x + near && a.from.y <= b.to.y + near &&
         b.from.y <= a.to.y + near;
}

Extent together(const Extent& a, const Extent& b) {
  return {{std::min(a.from.x, b.from.x), std::min(a.from.y, b.from.y)},
          {std::max(a.to.x, b.to.x), std::max(a.to.y, b.to.y)}};
}

std::vector<Group> groupsOf(const std::vector<PlacedDeck>& decks) {
  std::vector<Group> groups;
  for (const auto& deck : decks) {
    Group own{{deck}, deck.extent};
    for (auto g = groups.begin(); g != groups.end();) {
      const bool touches = std::any_of(g->decks.begin(), g->decks.end(),
                                       [&](const auto& d) { return areNear(d.extent, deck.extent); });
      if (!touches) {
        ++g;
        continue;
      }
      own.decks.insert(own.decks.end(), g->decks.begin(), g->decks.end());
      own.extent = together(own.extent, g->extent);
      g = groups.erase(g);
    }
    groups.push_back(std::move(own));
  }
  return groups;
}

/// The decks of the day; stairs still lean against those that are not coated. Groups that lie apart on the
/// site stand side by side, 'gap' apart, in rows: how far they are from each other does not matter here.
std::vector<PlacedDeck> placedOf(const model::JobInputs& c, const std::vector<StripDeck>& decks, Length gap,
                                 Length rowWidth) {
  const auto isToday = [&](std::size_t index) {
    return std::any_of(decks.begin(), decks.end(), [&](const auto& d) { return d.edge.deck == index; });
  };
  auto all = placeDecks(c.job.areas, gap, rowWidth);
  std::erase_if(all, [&](const auto& d) { return !isToday(d.index); });
  std::vector<PlacedDeck> out;
  Length x, y, rowHeight;
  for (const auto& group : groupsOf(all)) {
    if (x.millionths > 0 && x + group.extent.width() > rowWidth) {
      x = {};
      y += rowHeight + gap;
      rowHeight = {};
    }
    const model::Place by = {x - group.extent.from.x, y - group.extent.from.y};
    for (auto deck : group.decks) {
      deck.outline = model::moved(deck.outline, by);
      deck.extent = model::extentOf(deck.outline);
      out.push_back(std::move(deck));
    }
    x += group.extent.width() + gap;
    rowHeight = std::max(rowHeight, group.extent.height());
  }
  return out;
}

/// Decks that were moved together still lie among what is around them.
struct Moved {
  model::Place by;
  Rect rim;  // a little beyond them
};

std::vector<Moved> movesOf(const PlanSheet& sheet, const std::vector<model::Deck>& areas) {
  std::vector<Moved> moves;
  const bool hasPlaces =
      std::any_of(areas.begin(), areas.end(), [](const auto& deck) { return deck.at.has_value(); });
  for (const auto& deck : sheet.placed) {
    // Where no deck has a place, the first lies where the site is measured from.
    auto at = areas[deck.index].at;
    if (!hasPlaces && deck.index == 0) at = model::Place{};
    if (!at) continue;
    const auto own = model::extentOf(*model::outlineOf(areas[deck.index])).from;
    const model::Place by = {deck.extent.from.x - at->x - own.x, deck.extent.from.y - at->y - own.y};
    const auto same = std::find_if(moves.begin(), moves.end(), [&](const auto& m) { return m.by == by; });
    const Rect r = grown(sheet.on(deck.extent), Dim::mm(3));
    if (same == moves.end()) moves.push_back({by, r});
    else same->rim = drawings::around(same->rim, r);
  }
  return moves;
}

/// 'A Landing: strip 1, 9 boards, from 09:30, 1.6 L; ...'
std::string altText(const model::JobInputs& c, const std::vector<StripDeck>& decks, const Pen& pen) {
  std::string text = pen.language("strips.alt");
  for (std::size_t i = 0; i < decks.size(); ++i) {
    const auto& edge = decks[i].edge;
    text += (i == 0 ? " " : "; ") + decks[i].name;
    bool isFirst = true;
    for (std::size_t k = 0; k < edge.strips.size() && k < decks[i].strips.size(); ++k) {
      const auto& strip = decks[i].strips[k];
      if (strip.lay.empty()) continue;
      const bool isStairs = std::holds_alternative<model::Stairs>(c.job.areas[edge.deck].shape);
      const base::Values values = {
          {"strip", strip.number}, {"time", strip.lay}, {"litres", decks[i].amountOf(strip)}};
      text += (isFirst ? ": " : ", ") +
              (edge.strips[k].boards == 0
                   ? pen.language("strips.alt_whole", values)
                   : pen.language.counted(isStairs ? "strips.alt_treads" : "strips.alt_boards",
                                          edge.strips[k].boards, values));
      isFirst = false;
    }
    if (!decks[i].steps.empty()) text += ", " + decks[i].steps;
  }
  return text + ".";
}

/// A coat of each deck that has a place on the plan; the first where it has two.
std::vector<StripDeck> drawnOf(const model::JobInputs& c, const std::vector<StripDeck>& decks) {
  std::vector<StripDeck> drawn;
  for (const auto& deck : decks) {
    const bool isDrawn =
        std::any_of(drawn.begin(), drawn.end(), [&](const auto& d) { return d.edge.deck == deck.edge.deck; });
    if (!isDrawn && model::outlineOf(c.job.areas[deck.edge.deck].shape)) drawn.push_back(deck);
  }
  return drawn;
}

/// The plan at one scale; the coats whose strips tell their times on it, by deck.
struct PlanOfStrips {
  Items items;
  Size size;
  std::vector<std::size_t> told;
};

Length onSite(Dim d, std::int64_t scale) {
  return Length{base::mulDiv(d.raw, 1000 * scale, 36, base::Round::HalfUp)};
}

std::vector<PlacedDeck> placedAt(const model::JobInputs& c, const std::vector<StripDeck>& decks, Dim width,
                                 std::int64_t scale) {
  return placedOf(c, decks, onSite(Dim::mm(14), scale), onSite(width - Dim::mm(14), scale));
}

/// Whether no deck is wider than the page leaves room for.
bool fitsWidth(const model::JobInputs& c, const std::vector<StripDeck>& decks, Dim width,
               std::int64_t scale) {
  const auto placed = placedAt(c, decks, width, scale);
  return std::all_of(placed.begin(), placed.end(), [&](const auto& deck) {
    return deck.extent.to.x <= onSite(width - Dim::mm(14), scale);
  });
}

/// Numbers may be missing on the plan only where all this height does not help.
constexpr Dim enough = Dim::mm(150);

std::optional<PlanOfStrips> planAt(const model::JobInputs& c, const std::vector<StripDeck>& decks,
                                   const Pen& pen, Size box, std::int64_t scale) {
  PlanSheet sheet(pen, scale, placedAt(c, decks, box.w, scale));
  const auto tooLarge = [&] { return sheet.bounds().size.w > box.w || sheet.bounds().size.h > box.h; };
  const auto moves = movesOf(sheet, c.job.areas);
  for (const auto& m : moves) makeRoomAround(sheet, c.job.around, m.by, m.rim);
  if (tooLarge()) return std::nullopt;
  std::vector<std::unique_ptr<StripsDrawer>> drawers;
  for (const auto& placed : sheet.placed) {
    const auto deck =
        std::find_if(decks.begin(), decks.end(), [&](const auto& d) { return d.edge.deck == placed.index; });
    drawers.push_back(std::make_unique<StripsDrawer>(sheet, placed, c.job.areas[placed.index], *deck));
  }
  for (auto& d : drawers) d->fill();
  for (auto& d : drawers) d->drawWayOut();
  // Decks of many strips find room for their numbers first.
  std::stable_sort(drawers.begin(), drawers.end(),
                   [](const auto& a, const auto& b) { return a->count() > b->count(); });
  PlanOfStrips plan;
  std::vector<StripsDrawer*> numbered;
  for (auto& d : drawers) {
    if (d->tell()) plan.told.push_back(d->deck());
    else numbered.push_back(d.get());
  }
  std::vector<Rect> numbers;
  bool isClear = true;
  for (auto* d : numbered) isClear = d->number(numbers) && isClear;
  if (!isClear && box.h < enough) return std::nullopt;
  for (auto& d : drawers) d->name();
  for (const auto& placed : sheet.placed)
    drawEdges(sheet, placed, c.job.areas[placed.index], c.job.site.north);
  for (const auto& m : moves)
    drawAround(sheet, c.job.around, m.by, moves.size() == 1 ? sheet.bounds() : m.rim);
  if (c.job.site.north) drawNorth(sheet, *c.job.site.north, true);
  const auto& unit = decks.front().unit;
  auto note = pen.language("strips.note", {{"scale", std::to_string(scale)}});
  if (!unit.empty() && plan.told.size() < decks.size())
    note += " " + pen.language("strips.list_note", {{"unit", unit}});
  sheet.notes.push_back(std::move(note));
  writeNotes(sheet, box.w);
  if (tooLarge()) return std::nullopt;
  plan.items = std::move(sheet.items);
  plan.size = sheet.bounds().size;
  shift(plan.items, {-sheet.bounds().at.x, -sheet.bounds().at.y});
  return plan;
}

/// The coats below the plan: the second of a deck is told there though the first is told on the plan. Under a
/// plan that lists any deck its note has the unit.
std::vector<ListedDeck> listOf(const std::vector<StripDeck>& decks, std::vector<std::size_t> told,
                               bool hasUnits) {
  std::vector<ListedDeck> list;
  for (const auto& deck : decks) {
    const auto found = std::find(told.begin(), told.end(), deck.edge.deck);
    const bool isTold = found != told.end();
    if (isTold) told.erase(found);
    if (isTold && deck.note.empty()) continue;
    list.push_back({&deck, isTold, hasUnits});
  }
  return list;
}

}  // namespace

typeset::Drawing stripsPlan(const model::JobInputs& c, const std::vector<StripDeck>& decks, const Pen& pen,
                            Size box) {
  typeset::Drawing out;
  if (decks.empty()) return out;
  out.alt = altText(c, decks, pen);
  const auto drawn = drawnOf(c, decks);
  const auto withList = [&](PlanOfStrips&& plan) {
    const Dim from = plan.size.h + (plan.size.h > Dim{} ? Dim::mm(2) : Dim{});
    const bool hasUnits = plan.told.size() == drawn.size();
    const Dim list = putStripList(plan.items, listOf(decks, plan.told, hasUnits), pen, box.w, from);
    out.items = std::move(plan.items);
    out.size = {box.w, from + list};
    return out.size.h <= box.h;
  };
  if (drawn.empty()) {
    withList({});
    return out;
  }
  constexpr std::int64_t largest = 72;    // a stair alone on a page would look like a poster
  constexpr std::int64_t readable = 200;  // or half of what the page could show
  std::int64_t widest = 0;                // the largest scale that the width of the page allows
  for (const std::int64_t scale : scalesOf(pen)) {
    if (scale < largest) continue;
    if (widest == 0 && fitsWidth(c, drawn, box.w, scale)) widest = scale;
    if (widest > 0 && scale > std::max(widest * 2, readable)) break;
    auto plan = planAt(c, drawn, pen, box, scale);
    if (plan && withList(std::move(*plan))) return out;
  }
  out.items.clear();
  out.size = {};
  return out;
}

}  // namespace drawings
