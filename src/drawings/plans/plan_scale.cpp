// What tells the reader how large and which way round a plan is: scale bar, caption, north, notes.
#include "base/quantity_words.h"
#include "drawings/pen/turn.h"
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>

namespace drawings {

namespace {

constexpr int barParts = 5;

struct ScaleBar {
  base::Length part;
  std::int64_t partMillionths = 0;  // in the unit below
  int places = 0;
  std::string unit;
  Dim partWidth;
};

/// The smallest round part that is at least 6 mm on paper.
ScaleBar scaleBar(const PlanSheet& sheet) {
  static constexpr std::int64_t tenthsOfUnit[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000};
  const bool us = isUs(sheet.pen);
  ScaleBar bar;
  for (const std::int64_t t : tenthsOfUnit) {
    if (us && t < 10) continue;  // tenths of a foot are nobody's measure
    bar = {{t * (us ? 30'480'000 : 100'000'000)},
           t * 100'000,
           t < 10 ? 1 : 0,
           sheet.pen.language(us ? "units.ft" : "units.m"),
           {}};
    bar.partWidth = sheet.on(bar.part);
    if (bar.partWidth >= Dim::mm(6)) break;
  }
  return bar;
}

std::vector<std::string> captionLines(const PlanSheet& sheet, Dim width) {
  const auto& w = sheet.pen.language;
  const std::string scale = w(isUs(sheet.pen) ? "plan.scale_feet" : "plan.scale_metres",
                              {{"scale", std::to_string(sheet.scale())}});
  auto lines = wrapped(sheet.pen, "note", scale, width, 3);
  if (isUs(sheet.pen)) return lines;
  // The ticks of the head line stand 10 mm apart.
  const auto tick = base::inMetres(sheet.onSite(Dim::mm(10)));
  const int places = sheet.scale() % 100 == 0 ? 0 : sheet.scale() % 10 == 0 ? 1 : 2;
  const auto& form = sheet.pen.region.numbers;
  const std::string metres = base::decimal(tick, places, form.decimal, form.group);
  for (auto& line : wrapped(sheet.pen, "note", w("plan.tick", {{"metres", metres}}), width, 3))
    lines.push_back(std::move(line));
  return lines;
}

/// Left edge of the decks: what stands below the plan lines up with it.
Dim decksLeft(const PlanSheet& sheet) {
  Dim left = right(sheet.bounds());
  for (const auto& deck : sheet.placed) left = std::min(left, sheet.on(deck.extent.from.x));
  return left;
}

void putBar(PlanSheet& sheet, const ScaleBar& bar, Point at) {
  const auto ink = colour(sheet.pen, "ink");
  const auto& form = sheet.pen.region.numbers;
  const Dim high = tenths(14), top = at.y + tenths(34);
  for (int i = 0; i <= barParts; ++i) {
    const Dim x = at.x + bar.partWidth * i;
    const std::int64_t value = bar.partMillionths * i;
    const int places = value % 1'000'000 == 0 ? 0 : bar.places;
    const ShapedText w = words(sheet.pen, "drawing", base::decimal(value, places, form.decimal, form.group));
    put(sheet.items, w, {x - w.width / 2, at.y + w.height});
    if (i == barParts) {
      put(sheet.items, words(sheet.pen, "drawing", bar.unit), {x + Dim::mm(2), top + high});
      break;
    }
    const auto fill = i % 2 == 0 ? ink : colour(sheet.pen, "white");
    put(sheet.items, box({{x, top}, {bar.partWidth, high}}, fill, Stroke{ink, hundredthsPt(50), {}, false}));
  }
}

}  // namespace

void drawScale(PlanSheet& sheet, Dim width) {
  const ScaleBar bar = scaleBar(sheet);
  const Dim lead = Dim::milli(sheet.pen.theme.styles.at("note").leading);
  const Dim baseline = Dim::milli(sheet.pen.theme.styles.at("note").baseline);
  // Half a figure hangs over the zero; the unit stands behind the bar.
  const Dim over = tenths(12);
  const Size barSize = {over + bar.partWidth * barParts + Dim::mm(6), tenths(50)};

  const auto writeCaption = [&](const std::vector<std::string>& lines, Point at) {
    for (std::size_t i = 0; i < lines.size(); ++i)
      put(sheet.items, words(sheet.pen, "note", lines[i]),
          {at.x, at.y + baseline + lead * static_cast<std::int64_t>(i)});
  };
  const Dim column = Dim::mm(60);
  const auto narrow = captionLines(sheet, column);
  const Size block = {std::max(barSize.w, column),
                      barSize.h + tenths(20) + lead * static_cast<std::int64_t>(narrow.size())};
  if (const auto spot = sheet.freeSpot(block, tenths(30))) {
    putBar(sheet, bar, {spot->x + over, spot->y});
    writeCaption(narrow, {spot->x, spot->y + barSize.h + tenths(20)});
    sheet.take({*spot, block});
    return;
  }
  const Point at = {decksLeft(sheet) - over, bottom(sheet.bounds()) + tenths(50)};
  putBar(sheet, bar, {at.x + over, at.y});
  const Dim indent = barSize.w + Dim::mm(4);
  width -= at.x - sheet.bounds().at.x;
  const bool isBeside = width - indent >= Dim::mm(40);
  const Dim room = isBeside ? width - indent : width;
  const auto lines = captionLines(sheet, room);
  const Point text =
      isBeside ? Point{at.x + indent, at.y - tenths(8)} : Point{at.x, at.y + barSize.h + tenths(15)};
  writeCaption(lines, text);
  Dim longest;
  for (const auto& l : lines) longest = std::max(longest, words(sheet.pen, "note", l).width);
  const Rect barRoom = {at, barSize};
  sheet.take(around(barRoom, {text, {longest, lead * static_cast<std::int64_t>(lines.size())}}));
}

bool drawNorth(PlanSheet& sheet, int degrees, bool onlyInCorner) {
  const Dim size = Dim::mm(10), margin = tenths(15);
  const Rect b = sheet.bounds();
  const Point corners[] = {b.at, {right(b) - size, b.at.y}, {b.at.x, bottom(b) - size}};
  const auto corner = std::find_if(std::begin(corners), std::end(corners), [&](Point p) {
    return sheet.isFree(grown({p, {size, size}}, margin));
  });
  Point at = {b.at.x, b.at.y - size - tenths(20)};
  if (corner != std::end(corners)) at = *corner;
  else if (onlyInCorner) return false;
  else if (const auto spot = sheet.freeSpot({size, size}, margin)) at = *spot;
  const Point centre = {at.x + size / 2, at.y + size / 2};
  const Turn turn = turnBy(degrees);
  // In hundredths of the size, from the centre, north up; turned clockwise as seen on paper.
  const auto on = [&](std::int64_t x, std::int64_t y) -> Point {
    const auto part = [&](std::int64_t a, std::int64_t b2) {
      return Dim{base::divide(base::Wide{a} * size.raw * turn.cos + base::Wide{b2} * size.raw * turn.sin,
                              base::Wide{100} * Turn::unit, base::Round::HalfUp)};
    };
    return {centre.x + part(x, -y), centre.y + part(y, x)};
  };
  const auto ink = colour(sheet.pen, "ink");
  const Stroke thin = {ink, hundredthsPt(50), {}, true};
  put(sheet.items, circle(centre, size * 30 / 100, std::nullopt, thin));
  put(sheet.items, polygon({on(0, -48), on(-14, 12), on(0, 0)}, colour(sheet.pen, "white"), thin));
  put(sheet.items, polygon({on(0, -48), on(14, 12), on(0, 0)}, ink, thin));
  sheet.take({at, {size, size}});
  return true;
}

void writeNotes(PlanSheet& sheet, Dim width) {
  if (sheet.notes.empty()) return;
  std::string text;
  for (const auto& n : sheet.notes) text += (text.empty() ? "" : "; ") + n;
  const Dim lead = Dim::milli(sheet.pen.theme.styles.at("note").leading);
  const Dim baseline = Dim::milli(sheet.pen.theme.styles.at("note").baseline);
  const Point at = {decksLeft(sheet), bottom(sheet.bounds()) + tenths(25)};
  Dim y = at.y, longest;
  for (const auto& l : wrapped(sheet.pen, "note", text, width - (at.x - sheet.bounds().at.x), 6)) {
    const ShapedText w = words(sheet.pen, "note", l);
    put(sheet.items, w, {at.x, y + baseline});
    longest = std::max(longest, w.width);
    y += lead;
  }
  sheet.take({at, {longest, y - at.y}});
}

}  // namespace drawings
