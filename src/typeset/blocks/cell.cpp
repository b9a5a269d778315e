#include "typeset/blocks/cell.h"

namespace typeset {

Style resized(LayoutContext& context, const std::string& name, Dim size, Dim leading, Dim baseline) {
  Style style = context.style(name);
  style.plain.size = size;
  style.leading = leading;
  style.baseline = baseline;
  return style;
}

Style closer(Style style) {
  style.leading = style.leading * 9 / 10;
  style.baseline = style.baseline * 9 / 10;
  return style;
}

void addWords(LayoutContext& context, Fragment& fragment, const markup::Inlines& words, const Style& style,
              Column place, Dim& y, int tag, markup::Align align) {
  Text text(context, words, style);
  if (text.isEmpty()) return;
  for (Fragment& line : listOf(context, text.lines(place.width, tag), place, align)) {
    for (Item& item : line.items) {
      move(item, {}, y);
      fragment.items.push_back(std::move(item));
    }
    y += line.height;
  }
}

Dim heightOfWords(LayoutContext& context, const markup::Inlines& words, const Style& style, Dim width) {
  Text text(context, words, style);
  if (text.isEmpty()) return {};
  return style.leading * static_cast<std::int64_t>(text.lines(width, artifact).size());
}

Dim addSign(LayoutContext& context, Fragment& fragment, const markup::Inline& picture, Point at, Dim height,
            int parent) {
  const Drawing* known = context.drawing(picture.figure);
  if (!known) return height;
  const Drawing drawing = scaled(*known, height);
  const int tag = context.tag(Role::Figure, parent);
  context.out.tags.back().alt = picture.text.empty() ? drawing.alt : picture.text;
  for (Item item : drawing.items) {
    move(item, at.x, at.y);
    item.tag = tag;
    fragment.items.push_back(std::move(item));
  }
  return drawing.size.w;
}

Fragment fullRule(LayoutContext& context, RuleKind kind, Column place, Dim weight, const char* colour) {
  return ruleFragment(kind, place.x, place.width, weight, context.colour(colour));
}

int headTag(LayoutContext& context, const markup::Heading* heading, int parent) {
  return heading ? context.tag(Role::H2, parent) : 0;
}

void addHeadLine(LayoutContext& context, VerticalList& out, const markup::Heading* heading, int tag,
                 Fragment&& line, Column place) {
  const Grid& grid = context.grid;
  out.push_back(fullRule(context, RuleKind::Open, place, Dim::pt(1), "ink"));
  out.push_back(space(grid.unit));
  if (heading) {
    Dim y;
    addWords(context, line, heading->text, context.style("head"), {grid.left, grid.side + grid.gutter, false},
             y, tag);
    line.height = std::max(line.height, y);
    line.bookmarks.push_back({plainWords(heading->text), 0, {}, 2});
  }
  line.baseline = context.style("head").baseline;
  line.keepWithNext = true;
  out.push_back(std::move(line));
  out.push_back(space(grid.unit));
  out.push_back(fullRule(context, RuleKind::Close, place, Dim::pt(1) / 2, "ink"));
  out.back().keepWithNext = true;
}

}  // namespace typeset
