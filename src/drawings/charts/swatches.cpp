// Colours of a product as boards that are laid with it.
#include "base/joined.h"
#include "drawings/pen/paths.h"

#include <algorithm>

namespace drawings {

namespace {

constexpr std::int64_t perRow = 4, boards = 3;
const Dim gutter = Dim::mm(5), board = tenths(34), seam = tenths(4),
          field = board * boards + seam * (boards - 1);
const Dim tick = tenths(34);

void putBoards(Items& items, const Rect& r, model::Colour fill, const Pen& pen) {
  const Dim high = (r.size.h - seam * (boards - 1)) / boards;
  for (std::int64_t i = 0; i < boards; ++i)
    put(items, box({{r.at.x, r.at.y + (high + seam) * i}, {r.size.w, high}}, fill,
                   Stroke{colour(pen, "rule"), hundredthsPt(25), {}, false}));
}

}  // namespace

typeset::Drawing swatches(const std::vector<model::NamedColour>& colours, const Pen& pen, Dim width) {
  typeset::Drawing out;
  if (colours.empty()) return out;
  const auto& style = pen.theme.styles.at("table");
  const Dim lead = Dim::milli(style.leading), baseline = Dim::milli(style.baseline),
            beside = tick + tenths(20);
  const Dim column = (width - gutter * (perRow - 1)) / perRow;
  std::vector<std::string> names;
  Dim top, y;
  for (std::size_t i = 0; i < colours.size(); ++i) {
    const auto n = static_cast<std::int64_t>(i) % perRow;
    if (i > 0 && n == 0) top = y + tenths(20);
    const Dim x = (column + gutter) * n;
    putBoards(out.items, {{x, top}, {column, field}}, colours[i].colour, pen);
    Dim line = top + field + tenths(12);
    put(out.items, box({{x, line + (lead - tick) / 2}, {tick, tick}}, colour(pen, "white"),
                       Stroke{colour(pen, "ink"), hundredthsPt(80), {}, false}));
    for (const auto& words : wrapped(pen, "table", colours[i].name, column - beside, 2)) {
      put(out.items, drawings::words(pen, "table", words), {x + beside, line + baseline});
      line += lead;
    }
    y = std::max(y, line);
    names.push_back(colours[i].name);
  }
  out.size = {width, y};
  out.alt = pen.language("swatches.alt", {{"names", base::joined(names)}});
  return out;
}

typeset::Drawing swatch(const model::NamedColour& one, const Pen& pen) {
  typeset::Drawing out;
  const Dim side = field;
  putBoards(out.items, {{}, {side, side}}, one.colour, pen);
  out.size = {side, side};
  out.alt = pen.language("swatches.one", {{"name", one.name}});
  return out;
}

}  // namespace drawings
