// Plan of a job's decks: tries the usual scales, largest first, until the whole drawing fits its box.
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>

namespace drawings {

namespace {

bool hasPlace(const model::Deck& deck) { return outlineOf(deck.shape).has_value(); }

std::string notDrawn(const Pen& pen, const std::vector<model::Deck>& decks, bool isKey) {
  std::string text;
  for (std::size_t i = 0; i < decks.size(); ++i) {
    if (hasPlace(decks[i])) continue;
    const std::string size = isKey ? "" : " (" + shapeText(pen, decks[i].shape) + ")";
    text += (text.empty() ? "" : ", ") + unbroken(letterOf(i) + " " + decks[i].name + size);
  }
  return text.empty() ? "" : pen.language("plan.not_drawn", {{"decks", text}});
}

/// What those hear who cannot see the plan.
std::string altText(const model::JobInputs& c, const model::Estimate& e, const Pen& pen, std::int64_t scale,
                    bool isKey) {
  std::string text = pen.language("plan.alt", {{"scale", std::to_string(scale)}}) + " ";
  bool isFirst = true;
  for (std::size_t i = 0; i < c.job.areas.size(); ++i) {
    const auto& deck = c.job.areas[i];
    if (!hasPlace(deck)) continue;
    if (!isFirst) text += "; ";
    isFirst = false;
    text += letterOf(i) + " " + deck.name;
    if (isKey) continue;
    text += ", " + shapeText(pen, deck.shape) + ", " + areaText(pen, e.decks.at(i).area);
    if (deck.without.empty()) continue;
    std::string cuts;
    for (std::size_t k = 0; k < deck.without.size(); ++k)
      cuts += (k == 0 ? "" : "; ") + cutOutText(pen, deck.without[k]);
    text += ", " + pen.language(deck.without.size() == 1 ? "plan.with_cut_out" : "plan.with_cut_outs",
                                {{"cuts", cuts}});
  }
  const auto surroundings = isKey ? "" : aroundText(pen, c.job.around);
  if (!surroundings.empty()) text += "; " + surroundings;
  const std::string missing = notDrawn(pen, c.job.areas, isKey);
  return text + (missing.empty() ? "." : "; " + missing + ".");
}

/// Smaller ones tell nothing that the list of the decks does not.
constexpr std::int64_t smallestKey = 750;
/// White above it: no caption keeps it from the lines before.
constexpr Dim keyAir = tenths(20);

/// Draws everything; false where it grows beyond the box. 'mayGrow' is false where single sizes have to do
/// with the room there is.
bool drawPlan(PlanSheet& sheet, const model::JobInputs& c, const model::Estimate& e, Size box, bool isKey,
              bool mayGrow) {
  const auto& decks = c.job.areas;
  const auto fits = [&] { return sheet.bounds().size.w <= box.w && sheet.bounds().size.h <= box.h; };
  if (!isKey) makeRoomAround(sheet, c.job.around, {}, grown(sheet.bounds(), Dim::mm(6)));
  if (!fits()) return false;
  drawDecks(sheet, decks, isKey);
  const auto unnamed = nameDecksInside(sheet, decks, e, isKey);
  if (!isKey) {
    nameCutOuts(sheet, decks);
    dimensionDecks(sheet, mayGrow);
  }
  nameDecksOutside(sheet, unnamed, decks, e, isKey);
  if (!isKey) {
    drawAround(sheet, c.job.around, {}, sheet.bounds());
    const auto& north = c.job.site.north;
    const bool hasNorth = !north || drawNorth(sheet, *north, true);
    drawScale(sheet, std::max(sheet.bounds().size.w, std::min(box.w, Dim::mm(125))));
    if (!hasNorth) drawNorth(sheet, *north, false);
  }
  if (const auto missing = notDrawn(sheet.pen, decks, isKey); !missing.empty())
    sheet.notes.push_back(missing);
  writeNotes(sheet, box.w);
  return fits();
}

}  // namespace

std::vector<std::int64_t> scalesOf(const Pen& pen) {
  // After the usual ones come steps for boardwalks and jetties.
  if (isUs(pen)) return {24, 48, 72, 96, 120, 192, 240, 384, 480, 720, 960, 1920, 4800};
  return {20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000};
}

typeset::Drawing deckPlan(const model::JobInputs& c, const model::Estimate& e, const Pen& pen, Size box,
                          bool isKey) {
  const auto& decks = c.job.areas;
  typeset::Drawing out;
  if (std::none_of(decks.begin(), decks.end(), hasPlace)) {
    out.alt = notDrawn(pen, decks, isKey);
    return out;
  }
  const Dim above = isKey ? keyAir : Dim{};
  const Size room = {box.w, box.h - above};
  for (const std::int64_t scale : scalesOf(pen)) {
    if (isKey && scale > smallestKey) break;
    const auto onSite = [&](Dim d) {
      return base::Length{base::mulDiv(d.raw, 1000 * scale, 36, base::Round::HalfUp)};
    };
    const auto placed = placeDecks(decks, onSite(Dim::mm(isKey ? 6 : 15)), onSite(box.w - Dim::mm(14)));
    for (const bool mayGrow : {true, false}) {
      PlanSheet sheet(pen, scale, placed);
      if (!drawPlan(sheet, c, e, room, isKey, mayGrow)) continue;
      out.size = {sheet.bounds().size.w, sheet.bounds().size.h + above};
      out.items = std::move(sheet.items);
      shift(out.items, {-sheet.bounds().at.x, above - sheet.bounds().at.y});
      out.alt = altText(c, e, pen, scale, isKey);
      return out;
    }
  }
  out.alt = pen.language("plan.too_large");
  return out;
}

}  // namespace drawings
