#include "typeset/lines/words.h"

#include "base/fixed.h"
#include "base/letters.h"

#include <algorithm>

namespace typeset {

char32_t letterAt(const TextRun& run, std::size_t glyph) {
  if (glyph >= run.glyphs.size()) return 0;
  std::size_t at = run.glyphs[glyph].cluster;
  return at < run.text.size() ? base::nextLetter(run.text, at) : 0;
}

bool isLetter(char32_t c) { return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c >= 0xC0; }

PlacedWords placeWords(LayoutContext& context, const Style& style, const std::string& words, Point at,
                       int tag) {
  StyledText span = style.plain;
  span.text = words;
  Shaped shaped = shape(context.in.fonts, span, [&](char32_t c) { context.missing(c); });
  PlacedWords set;
  set.width = shaped.width;
  for (TextRun& run : shaped.runs) {
    run.baseline.x += at.x;
    run.baseline.y += at.y;
    set.items.push_back({std::move(run), tag});
  }
  return set;
}

VerticalList listOf(const LayoutContext& context, std::vector<TextLine>&& lines, Column place,
                    markup::Align align) {
  VerticalList out;
  for (TextLine& line : lines) {
    Fragment fragment;
    fragment.height = line.height;
    fragment.baseline = line.baseline;
    fragment.line = context.line;
    const Dim rest = place.width - line.width;
    const Dim x = place.x + (align == markup::Align::Right    ? rest
                             : align == markup::Align::Centre ? rest / 2
                                                              : Dim{});
    for (Item& item : line.items) {
      move(item, x, {});
      fragment.items.push_back(std::move(item));
    }
    out.push_back(std::move(fragment));
  }
  if (out.size() > 1) {
    out.front().keepWithNext = true;
    out[out.size() - 2].keepWithNext = true;
  }
  return out;
}

std::string shortened(const std::string& text, const std::function<bool(const std::string&)>& fits) {
  if (fits(text)) return text;
  std::vector<std::size_t> ends = {0};  // of the letters, in bytes
  for (std::size_t at = 0; at < text.size();) {
    base::nextLetter(text, at);
    ends.push_back(at);
  }
  const auto cut = [&](std::size_t end) {
    std::string s = text.substr(0, end);
    while (!s.empty() && (s.back() == ' ' || s.back() == ',')) s.pop_back();
    return s + "\u2026";
  };
  std::size_t most = 0, tooMany = ends.size() - 1;
  while (most + 1 < tooMany) {
    const std::size_t middle = (most + tooMany) / 2;
    (fits(cut(ends[middle])) ? most : tooMany) = middle;
  }
  if (most < 2) return {};
  const std::size_t space = text.rfind(' ', ends[most]);
  const bool isNear = space != std::string::npos && space * 2 >= ends[most];
  return cut(isNear ? space : ends[most]);
}

std::string shortened(const LayoutContext& context, const Style& style, const std::string& text, Dim room) {
  StyledText span = style.plain;
  return shortened(text, [&](const std::string& s) {
    span.text = s;
    return width(context.in.fonts, span) <= room;
  });
}

std::string plainWords(const markup::Inlines& words) {
  std::string text;
  for (const markup::Inline& part : words)
    if (part.figure.empty()) text += part.text;
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

bool isAll(const markup::Inlines& words, markup::Inline::Style style) {
  bool isAny = false;
  for (const markup::Inline& part : words) {
    if (part.figure.empty() && part.text.find_first_not_of(" \n") == std::string::npos) continue;
    if (part.style != style || !part.figure.empty()) return false;
    isAny = true;
  }
  return isAny;
}

markup::Inlines plain(markup::Inlines words) {
  for (markup::Inline& part : words) part.style = markup::Inline::Style::Plain;
  return words;
}

Item scaledItem(Item item, Dim to, Dim from) {
  if (to == from || from <= Dim{}) return item;
  const auto scale = [&](Dim& d) { d.raw = base::mulDiv(d.raw, to.raw, from.raw, base::Round::HalfUp); };
  const auto scalePoint = [&](Point& p) {
    scale(p.x);
    scale(p.y);
  };
  if (auto* run = std::get_if<TextRun>(&item.what)) {
    scalePoint(run->baseline);
    scale(run->size);
    scale(run->width);
    scale(run->tracking);
  }
  if (auto* image = std::get_if<PlacedImage>(&item.what)) {
    scalePoint(image->box.at);
    scale(image->box.size.w);
    scale(image->box.size.h);
  }
  if (auto* path = std::get_if<Path>(&item.what)) {
    for (Step& s : path->steps) {
      scalePoint(s.a);
      scalePoint(s.b);
      scalePoint(s.to);
    }
    if (path->stroke) {
      scale(path->stroke->width);
      for (Dim& d : path->stroke->dash) scale(d);
    }
  }
  return item;
}

Drawing scaled(const Drawing& drawing, Dim height) {
  Drawing out;
  out.alt = drawing.alt;
  const Dim from = drawing.size.h;
  out.size = {from > Dim{} ? Dim{base::mulDiv(drawing.size.w.raw, height.raw, from.raw, base::Round::HalfUp)}
                           : drawing.size.w,
              from > Dim{} ? height : from};
  for (const Item& item : drawing.items) out.items.push_back(scaledItem(item, height, from));
  return out;
}

}  // namespace typeset
