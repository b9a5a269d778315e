// The diamonds of a product's data sheet in rows, and their words below.
#include "base/letters.h"
#include "drawings/pen/paths.h"

#include <algorithm>
#include <iterator>

namespace drawings {

namespace {

const Dim largest = Dim::mm(12), gap = Dim::mm(2);
constexpr std::int64_t perRow = 3;

/// What stands in for a picture nobody drew: the frame alone, in the proportions of the others.
typeset::Drawing emptyDiamond(const std::string& code, const Pen& pen, Dim size) {
  const Dim half = size / 2, edge = size * 46 / 100;
  typeset::Drawing d;
  d.size = {size, size};
  d.alt = code;
  put(d.items, polygon({{half, half - edge}, {half + edge, half}, {half, half + edge}, {half - edge, half}},
                       colour(pen, "white"), Stroke{colour(pen, "danger"), size * 5 / 100, {}, false}));
  return d;
}

}  // namespace

typeset::Drawing hazardDiamonds(const std::vector<std::string>& codes, const Pen& pen, Dim width) {
  typeset::Drawing out;
  if (codes.empty()) return out;
  const Dim size = std::min(largest, (width - gap * (perRow - 1)) / perRow);
  std::string names;
  Dim y;
  for (std::size_t i = 0; i < codes.size(); ++i) {
    const auto n = static_cast<std::int64_t>(i);
    auto drawn = sign(pen.signs, base::lowered(codes[i]), size);
    if (!drawn) drawn = emptyDiamond(codes[i], pen, size);
    shift(drawn->items, {(size + gap) * (n % perRow), (size + gap) * (n / perRow)});
    std::move(drawn->items.begin(), drawn->items.end(), std::back_inserter(out.items));
    const std::string key = "ghs." + base::lowered(codes[i]);
    names += (i == 0 ? "" : ", ") + (pen.language.has(key) ? pen.language(key) : drawn->alt);
    y = (size + gap) * (n / perRow) + size;
  }
  const auto& note = pen.theme.styles.at("note");
  y += Dim::milli(pen.theme.unit);
  for (const auto& l : wrapped(pen, "note", names, width, codes.size() * 2)) {
    put(out.items, words(pen, "note", l), {{}, y + Dim::milli(note.baseline)});
    y += Dim::milli(note.leading);
  }
  out.size = {width, y};
  out.alt = pen.language("ghs.alt", {{"names", names}});
  return out;
}

}  // namespace drawings
