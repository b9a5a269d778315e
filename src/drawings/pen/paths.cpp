#include "drawings/pen/paths.h"

#include <algorithm>
#include <stdexcept>

namespace drawings {

namespace {

using Kind = typeset::Step::Kind;

ShapedText measured(const Pen& pen, const typeset::StyledText& span) {
  ShapedText w;
  w.shaped = typeset::shape(pen.fonts, span);
  w.width = w.shaped.width;
  const auto& face = *pen.fonts.faces[pen.fonts.byRole.at(span.face)];
  const auto& m = face.metrics();
  w.height = {base::mulDiv(span.size.raw, m.capHeight, m.unitsPerEm, base::Round::HalfUp)};
  return w;
}

}  // namespace

Rect grown(const Rect& r, Dim by) {
  return {{r.at.x - by, r.at.y - by}, {r.size.w + by * 2, r.size.h + by * 2}};
}

Rect around(const Rect& a, const Rect& b) {
  const Point from = {std::min(a.at.x, b.at.x), std::min(a.at.y, b.at.y)};
  return {from, {std::max(right(a), right(b)) - from.x, std::max(bottom(a), bottom(b)) - from.y}};
}

bool overlap(const Rect& a, const Rect& b) {
  return a.at.x < right(b) && b.at.x < right(a) && a.at.y < bottom(b) && b.at.y < bottom(a);
}

void moveTo(Path& path, Point to) { path.steps.push_back({Kind::Move, {}, {}, to}); }
void lineTo(Path& path, Point to) { path.steps.push_back({Kind::Line, {}, {}, to}); }

void addEllipse(Path& path, Point c, Dim rx, Dim ry) {
  // 4/3 (root 2 - 1): where the controls of a quarter circle lie.
  const auto part = [](Dim r) { return Dim{base::mulDiv(r.raw, 552'285, 1'000'000, base::Round::HalfUp)}; };
  const Dim kx = part(rx), ky = part(ry);
  moveTo(path, {c.x + rx, c.y});
  const auto curve = [&](Point a, Point b, Point to) { path.steps.push_back({Kind::Curve, a, b, to}); };
  curve({c.x + rx, c.y + ky}, {c.x + kx, c.y + ry}, {c.x, c.y + ry});
  curve({c.x - kx, c.y + ry}, {c.x - rx, c.y + ky}, {c.x - rx, c.y});
  curve({c.x - rx, c.y - ky}, {c.x - kx, c.y - ry}, {c.x, c.y - ry});
  curve({c.x + kx, c.y - ry}, {c.x + rx, c.y - ky}, {c.x + rx, c.y});
  path.steps.push_back({Kind::Close, {}, {}, {}});
}

Path line(Point a, Point b, Stroke stroke) {
  Path p;
  moveTo(p, a);
  lineTo(p, b);
  p.stroke = std::move(stroke);
  return p;
}

Path polygon(const std::vector<Point>& corners, std::optional<model::Colour> fill,
             std::optional<Stroke> stroke) {
  Path p;
  for (const auto& corner : corners) p.steps.empty() ? moveTo(p, corner) : lineTo(p, corner);
  p.steps.push_back({Kind::Close, {}, {}, {}});
  p.fill = fill;
  p.stroke = std::move(stroke);
  return p;
}

Path box(const Rect& r, std::optional<model::Colour> fill, std::optional<Stroke> stroke) {
  return polygon({r.at, {right(r), r.at.y}, {right(r), bottom(r)}, {r.at.x, bottom(r)}}, fill,
                 std::move(stroke));
}

Path circle(Point centre, Dim radius, std::optional<model::Colour> fill, std::optional<Stroke> stroke) {
  Path p;
  addEllipse(p, centre, radius, radius);
  p.fill = fill;
  p.stroke = std::move(stroke);
  return p;
}

model::Colour colour(const Pen& pen, const std::string& name) {
  const auto found = pen.theme.colours.find(name);
  if (found == pen.theme.colours.end())
    throw std::logic_error("internal error: the theme has no colour '" + name + "'");
  return found->second;
}

ShapedText words(const Pen& pen, const typeset::StyledText& span) { return measured(pen, span); }

ShapedText words(const Pen& pen, const std::string& style, const std::string& text) {
  return measured(pen, typeset::spanIn(pen.theme, style, text));
}

ShapedText boldWords(const Pen& pen, const std::string& style, const std::string& text) {
  typeset::StyledText span = typeset::spanIn(pen.theme, style, text);
  span.face = pen.theme.styles.at(style).strong;
  return measured(pen, span);
}

typeset::StyledText legibleSpan(const Pen& pen, const std::string& style, const std::string& text) {
  auto span = typeset::spanIn(pen.theme, style, text);
  span.size = std::max(span.size, Dim::pt(9));
  return span;
}

ShapedText legible(const Pen& pen, const std::string& style, const std::string& text, bool isBold) {
  auto span = legibleSpan(pen, style, text);
  if (isBold) span.face = model::Face::SansBold;
  return measured(pen, span);
}

ShapedText sized(const Pen& pen, Dim size, const std::string& text, bool isBold) {
  auto span = typeset::spanIn(pen.theme, "drawing", text);
  span.size = size;
  span.face = isBold ? model::Face::SansBold : model::Face::Sans;
  span.tabular = true;
  return measured(pen, span);
}

void put(Items& items, Path path) { items.push_back({std::move(path), typeset::artifact}); }

void put(Items& items, const ShapedText& w, Point at) {
  for (auto run : w.shaped.runs) {
    run.baseline = run.baseline + at;
    items.push_back({std::move(run), typeset::artifact});
  }
}

void putCentred(Items& items, const ShapedText& w, Point at) {
  put(items, w, {at.x - w.width / 2, at.y + w.height / 2});
}

void putUpwards(Items& items, const ShapedText& w, Point at) {
  for (auto run : w.shaped.runs) {
    run.isUpright = false;
    run.baseline = {at.x + w.height / 2, at.y + w.width / 2 - run.baseline.x};
    items.push_back({std::move(run), typeset::artifact});
  }
}

void shift(Items& items, Point by) {
  for (auto& item : items) {
    if (auto* run = std::get_if<typeset::TextRun>(&item.what)) run->baseline = run->baseline + by;
    if (auto* path = std::get_if<Path>(&item.what))
      for (auto& s : path->steps) s = {s.kind, s.a + by, s.b + by, s.to + by};
  }
}

std::vector<std::string> wrapped(const Pen& pen, typeset::StyledText span, Dim width, std::size_t most) {
  const std::string text = span.text;
  std::vector<std::string> lines;
  std::size_t from = 0;
  while (from < text.size()) {
    std::size_t to = text.find(' ', from);
    if (to == std::string::npos) to = text.size();
    const std::string word = text.substr(from, to - from);
    from = to + 1;
    if (word.empty()) continue;
    span.text = lines.empty() ? word : lines.back() + " " + word;
    const bool fits = typeset::width(pen.fonts, span) <= width;
    if (!lines.empty() && (fits || lines.size() == most)) lines.back() = span.text;
    else lines.push_back(word);
  }
  return lines;
}

std::vector<std::string> wrapped(const Pen& pen, const std::string& style, const std::string& text, Dim width,
                                 std::size_t most) {
  return wrapped(pen, typeset::spanIn(pen.theme, style, text), width, most);
}

}  // namespace drawings
