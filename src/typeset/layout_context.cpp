// Looks up styles, colours and drawings, and tells what is missing.
#include "typeset/layout_context.h"

#include "base/nearest.h"

#include <stdexcept>

namespace typeset {

Size paperSize(model::Paper paper) {
  switch (paper) {
    case model::Paper::A4:
      return {Dim::mm(210), Dim::mm(297)};
    case model::Paper::Letter:
      return {Dim::pt(612), Dim::pt(792)};
  }
  throw std::logic_error("internal error: unknown paper");
}

namespace {

Grid gridOf(const model::Theme& theme, model::Paper paper) {
  Grid g;
  g.paper = paperSize(paper);
  g.side = Dim::milli(theme.sideWidth);
  g.gutter = Dim::milli(theme.gutter);
  g.text = Dim::milli(theme.textWidth);
  g.full = g.side + g.gutter + g.text;
  // The theme's margin is meant for A4; what another paper is wider or narrower is shared by both margins.
  g.left = Dim::milli(theme.marginLeft) + (g.paper.w - paperSize(model::Paper::A4).w) / 2;
  g.textX = g.left + g.side + g.gutter;
  g.right = g.left + g.full;
  g.unit = Dim::milli(theme.unit);
  g.line = g.unit * 4;
  g.snap = g.unit * theme.snap;
  g.top = Dim::milli(theme.top);
  g.letterheadTop = Dim::milli(theme.letterheadTop);
  const Dim height = g.paper.h - Dim::milli(theme.bottom) - g.top;
  g.bottom = g.top + g.unit * ((height + g.unit / 2).raw / g.unit.raw);  // the nearest whole unit
  return g;
}

std::string codePoint(char32_t letter) {
  static constexpr char digits[] = "0123456789ABCDEF";
  std::string hex;
  for (auto rest = static_cast<std::uint32_t>(letter); rest > 0 || hex.size() < 4; rest /= 16)
    hex.insert(hex.begin(), digits[rest % 16]);
  return "U+" + hex;
}

}  // namespace

LayoutContext::LayoutContext(const LayoutInput& input, const model::Theme& look, Document& document,
                             base::Diagnostics& diagnostics)
    : in(input), theme(look), out(document), grid(gridOf(look, input.paper)), messages_(diagnostics) {}

const Style& LayoutContext::style(const std::string& name) {
  if (isSmall && (name == "table" || name == "rowHead")) return smallStyle(name);
  const auto known = styles_.find(name);
  if (known != styles_.end()) return known->second;
  const StyledText plain = spanIn(theme, name, "");
  const model::TextStyle& s = theme.styles.at(name);
  const bool mayDivide = name == "body" || name == "table" || name == "note";
  return styles_[name] = {plain,         s.strong, s.emphasis, Dim::milli(s.leading), Dim::milli(s.baseline),
                          s.isJustified, mayDivide};
}

const Style& LayoutContext::smallStyle(const std::string& name) {
  const std::string key = name + ", small";
  if (const auto known = styles_.find(key); known != styles_.end()) return known->second;
  isSmall = false;
  Style small = style(name);
  const Style& note = style("note");
  isSmall = true;
  small.plain.size = note.plain.size;
  small.leading = note.leading;
  small.baseline = note.baseline;
  return styles_[key] = small;
}

Colour LayoutContext::colour(const std::string& name) const {
  const auto found = theme.colours.find(name);
  if (found == theme.colours.end()) throw std::logic_error("internal error: no colour '" + name + "'");
  return found->second;
}

int LayoutContext::tag(Role role, int parent) {
  Tag tag;
  tag.role = role;
  tag.parent = parent;
  out.tags.push_back(std::move(tag));
  return static_cast<int>(out.tags.size()) - 1;
}

const Drawing* LayoutContext::drawing(const std::string& name) {
  const DrawingRequest* found = request(name);
  return found ? &found->best() : nullptr;
}

const DrawingRequest* LayoutContext::request(const std::string& name) {
  const auto found = in.drawings.find(name);
  if (found != in.drawings.end()) return &found->second;
  if (!unknown_.insert(name).second) return nullptr;
  std::vector<std::string> names;
  for (const auto& [known, drawing] : in.drawings) names.push_back(known);
  const std::string nearest = base::nearest(name, names);
  std::string known;
  for (const std::string& one : names) known += (known.empty() ? "known: " : ", ") + one;
  messages_.error(base::placeOf(in.lines, line), {},
                  "'" + name + "' is not a known drawing" + base::didYouMean(nearest),
                  nearest.empty() ? known : "write figure:" + nearest);
  return nullptr;
}

void LayoutContext::warn(const std::string& what, const std::string& hint) {
  messages_.warn(base::placeOf(in.lines, line), {}, what, hint);
}

void LayoutContext::missing(char32_t letter) {
  if (missing_.insert(letter).second)
    warn("no face has the letter " + codePoint(letter),
         "name a font that has it among the theme's 'fallback' faces");
}

}  // namespace typeset
