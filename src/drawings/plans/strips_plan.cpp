// Plan of the decks coated on one day: strips in their order, where to start and where to leave.
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"
#include "drawings/plans/strip_drawer.h"

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

std::string altText(const model::JobInputs& c, const std::vector<StripDeck>& decks, const Pen& pen) {
  std::string text = pen.language("strips.alt");
  for (std::size_t i = 0; i < decks.size(); ++i) {
    const auto& edge = decks[i].edge;
    text += (i == 0 ? " " : "; ") + letterOf(edge.deck) + " " + c.job.areas[edge.deck].name;
    bool isFirst = true;
    for (std::size_t k = 0; k < edge.strips.size() && k < decks[i].starts.size(); ++k) {
      if (decks[i].starts[k].empty()) continue;
      text += (isFirst ? ": " : ", ") +
              pen.language.counted(std::holds_alternative<model::Stairs>(c.job.areas[edge.deck].shape)
                                       ? "strips.alt_treads"
                                       : "strips.alt_boards",
                                   edge.strips[k].boards,
                                   {{"strip", std::to_string(edge.strips[k].number)},
                                    {"time", decks[i].starts[k]},
                                    {"litres", decks[i].litres[k]}});
      isFirst = false;
    }
  }
  return text + ".";
}

}  // namespace

typeset::Drawing stripsPlan(const model::JobInputs& c, const std::vector<StripDeck>& decks, const Pen& pen,
                            Size box) {
  typeset::Drawing out;
  out.alt = altText(c, decks, pen);
  const auto isDrawn = [&](const auto& d) {
    return model::outlineOf(c.job.areas[d.edge.deck].shape).has_value();
  };
  if (std::none_of(decks.begin(), decks.end(), isDrawn)) return out;
  constexpr std::int64_t largest = 72;  // a stair alone on a page would look like a poster
  for (const std::int64_t scale : scalesOf(pen)) {
    if (scale < largest) continue;
    const auto onSite = [&](Dim d) {
      return Length{base::mulDiv(d.raw, 1000 * scale, 36, base::Round::HalfUp)};
    };
    PlanSheet sheet(pen, scale, placedOf(c, decks, onSite(Dim::mm(14)), onSite(box.w - Dim::mm(14))));
    const auto tooLarge = [&] { return sheet.bounds().size.w > box.w || sheet.bounds().size.h > box.h; };
    if (tooLarge()) continue;
    std::vector<std::unique_ptr<StripsDrawer>> drawers;
    for (const auto& placed : sheet.placed) {
      const auto deck = std::find_if(decks.begin(), decks.end(),
                                     [&](const auto& d) { return d.edge.deck == placed.index; });
      drawers.push_back(std::make_unique<StripsDrawer>(sheet, placed, c.job.areas[placed.index], *deck));
    }
    for (auto& d : drawers) d->fill();
    for (auto& d : drawers) d->drawWayOut();
    // Decks of many strips find room for their numbers first.
    std::stable_sort(drawers.begin(), drawers.end(),
                     [](const auto& a, const auto& b) { return a->count() > b->count(); });
    std::vector<Rect> numbers;
    for (auto& d : drawers) d->number(numbers);
    for (auto& d : drawers) d->name();
    std::string note;
    for (const auto& deck : decks)
      if (!deck.note.empty()) note += deck.note + " ";
    sheet.notes.push_back(note + pen.language("strips.note", {{"scale", std::to_string(scale)}}));
    writeNotes(sheet, box.w);
    if (tooLarge()) continue;
    out.size = sheet.bounds().size;
    out.items = std::move(sheet.items);
    shift(out.items, {-sheet.bounds().at.x, -sheet.bounds().at.y});
    return out;
  }
  return out;
}

}  // namespace drawings
