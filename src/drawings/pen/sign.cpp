// Signs and pictograms, read from a small strict part of SVG.
#include "base/cache.h"
#include "base/fixed.h"
#include "drawings/pen/paths.h"
#include "drawings/pen/svg.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

namespace drawings {

namespace {

/// What an element hands down to those inside it.
struct Look {
  std::optional<model::Colour> fill = model::Colour{};  // black, as in SVG
  std::optional<model::Colour> stroke;
  Micro strokeWidth = micro;
  bool isRoundCap = false, isRoundJoin = false;
};

std::optional<model::Colour> readColour(const std::string& s, int line) {
  if (s == "none") return std::nullopt;
  const auto digit = [](char c) {
    return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
  };
  int v[6] = {};
  bool ok = s.size() == 7 && s[0] == '#';
  for (std::size_t i = 0; ok && i < 6; ++i) ok = (v[i] = digit(s[i + 1])) >= 0;
  if (!ok) throw SvgError(line, "'" + s + "' is not a colour; write '#rrggbb' in small letters, or 'none'");
  const auto byte = [&](int i) { return static_cast<std::uint8_t>(v[i] * 16 + v[i + 1]); };
  return model::Colour{byte(0), byte(2), byte(4)};
}

bool isRound(const Attribute& a, const char* plain, int line) {
  if (a.value != "round" && a.value != plain)
    throw SvgError(line, "'" + a.value + "' is not a " + a.name + "; write 'round' or '" + plain + "'");
  return a.value == "round";
}

/// Takes over an attribute every element may have.
bool readLook(Look& look, const Attribute& a, int line) {
  if (a.name == "fill") look.fill = readColour(a.value, line);
  else if (a.name == "stroke") look.stroke = readColour(a.value, line);
  else if (a.name == "stroke-width") look.strokeWidth = readNumber(a.value, line);
  else if (a.name == "stroke-linecap") look.isRoundCap = isRound(a, "butt", line);
  else if (a.name == "stroke-linejoin") look.isRoundJoin = isRound(a, "miter", line);
  else return false;
  return true;
}

/// The numbers among an element's attributes.
struct Sizes {
  const Element& e;

  Micro at(const char* name) const {
    const auto* v = e.find(name);
    if (!v) throw SvgError(e.line, "'" + e.name + "' lacks '" + name + "'");
    return readNumber(*v, e.line);
  }
  Micro at(const char* name, Micro otherwise) const { return e.find(name) ? at(name) : otherwise; }
};

void addBox(Path& path, const Element& e, const Frame& f) {
  const Sizes s{e};
  const Micro x = s.at("x", 0), y = s.at("y", 0), w = s.at("width"), h = s.at("height");
  const Micro r = std::min({s.at("rx", 0), w / 2, h / 2});
  const auto to = [&](Micro px, Micro py) { lineTo(path, f.on(px, py)); };
  if (r == 0) {
    moveTo(path, f.on(x, y));
    to(x + w, y), to(x + w, y + h), to(x, y + h);
  } else {
    const Micro k = r - base::mulDiv(r, 552'285, micro, base::Round::HalfUp);
    const auto corner = [&](Micro ax, Micro ay, Micro bx, Micro by, Micro px, Micro py) {
      path.steps.push_back({typeset::Step::Kind::Curve, f.on(ax, ay), f.on(bx, by), f.on(px, py)});
    };
    moveTo(path, f.on(x + r, y));
    to(x + w - r, y);
    corner(x + w - k, y, x + w, y + k, x + w, y + r);
    to(x + w, y + h - r);
    corner(x + w, y + h - k, x + w - k, y + h, x + w - r, y + h);
    to(x + r, y + h);
    corner(x + k, y + h, x, y + h - k, x, y + h - r);
    to(x, y + r);
    corner(x, y + k, x + k, y, x + r, y);
  }
  path.steps.push_back({typeset::Step::Kind::Close, {}, {}, {}});
}

void addPolygon(Path& path, const Element& e, const Frame& f) {
  const auto* points = e.find("points");
  if (!points) throw SvgError(e.line, "'polygon' lacks 'points'");
  NumberReader in(*points, e.line);
  while (!in.isAtEnd()) {
    const Micro x = in.number(), y = in.number();
    path.steps.empty() ? moveTo(path, f.on(x, y)) : lineTo(path, f.on(x, y));
  }
  path.steps.push_back({typeset::Step::Kind::Close, {}, {}, {}});
}

class SignReader {
 public:
  explicit SignReader(Frame frame) : frame_(frame) {}

  void read(const Element& e, Look look) {
    static const std::map<std::string, std::set<std::string>> own = {
        {"g", {}},
        {"path", {"d"}},
        {"circle", {"cx", "cy", "r"}},
        {"ellipse", {"cx", "cy", "rx", "ry"}},
        {"rect", {"x", "y", "width", "height", "rx"}},
        {"line", {"x1", "y1", "x2", "y2"}},
        {"polygon", {"points"}}};
    const auto kind = own.find(e.name);
    if (kind == own.end()) throw SvgError(e.line, "'" + e.name + "' is not an element a sign may use");
    if (!e.text.empty()) throw SvgError(e.line, "'" + e.name + "' has text in it");
    for (const auto& a : e.attributes)
      if (!readLook(look, a, e.line) && !kind->second.count(a.name))
        throw SvgError(e.line,
                       "'" + e.name + "' has the attribute '" + a.name + "', which a sign may not use");
    if (e.name == "g") {
      for (const auto& child : e.children) read(child, look);
      return;
    }
    if (!e.children.empty()) throw SvgError(e.line, "'" + e.name + "' has elements in it");
    add(shape(e), look, e.line);
  }

  std::vector<typeset::Item> items() { return std::move(items_); }

 private:
  Path shape(const Element& e) const {
    const Sizes s{e};
    Path path;
    if (e.name == "path") {
      const auto* data = e.find("d");
      if (!data) throw SvgError(e.line, "'path' lacks 'd'");
      path.steps = readPathData(*data, e.line, frame_);
    } else if (e.name == "circle") {
      const Dim r = frame_.length(s.at("r"));
      addEllipse(path, frame_.on(s.at("cx"), s.at("cy")), r, r);
    } else if (e.name == "ellipse") {
      addEllipse(path, frame_.on(s.at("cx"), s.at("cy")), frame_.length(s.at("rx")),
                 frame_.length(s.at("ry")));
    } else if (e.name == "rect") {
      addBox(path, e, frame_);
    } else if (e.name == "line") {
      moveTo(path, frame_.on(s.at("x1"), s.at("y1")));
      lineTo(path, frame_.on(s.at("x2"), s.at("y2")));
    } else {
      addPolygon(path, e, frame_);
    }
    return path;
  }

  void add(Path path, const Look& look, int line) {
    path.fill = look.fill;
    if (look.stroke) {
      if (look.isRoundCap != look.isRoundJoin)
        throw SvgError(line, "caps and joins are not both round or both plain");
      path.stroke = Stroke{*look.stroke, frame_.length(look.strokeWidth), {}, look.isRoundCap};
    }
    if (path.fill || path.stroke) put(items_, std::move(path));
  }

  Frame frame_;
  std::vector<typeset::Item> items_;
};

typeset::Drawing readSign(const std::string& text, Dim height) {
  const Element svg = readElements(text);
  if (svg.name != "svg") throw SvgError(svg.line, "'" + svg.name + "' is not a drawing");
  Look look;
  for (const auto& a : svg.attributes)
    if (a.name != "xmlns" && a.name != "viewBox" && !readLook(look, a, svg.line))
      throw SvgError(svg.line, "'svg' has the attribute '" + a.name + "', which a sign may not use");
  const auto* viewBox = svg.find("viewBox");
  if (!viewBox) throw SvgError(svg.line, "'svg' lacks 'viewBox'");
  NumberReader in(*viewBox, svg.line);
  const Micro left = in.number(), top = in.number(), w = in.number(), h = in.number();
  if (w <= 0 || h <= 0 || !in.isAtEnd()) throw SvgError(svg.line, "'" + *viewBox + "' is not a viewBox");

  typeset::Drawing out;
  const Frame frame{left, top, h, height};
  SignReader reader(frame);
  for (const auto& child : svg.children) {
    if (child.name == "title") out.alt = child.text;
    else reader.read(child, look);
  }
  out.size = {frame.length(w), height};
  out.items = reader.items();
  return out;
}

bool isPlainName(const std::string& name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
}

}  // namespace

namespace {

std::optional<typeset::Drawing> readSignFile(const std::filesystem::path& file, Dim height) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return std::nullopt;
  std::ostringstream text;
  text << in.rdbuf();
  try {
    return readSign(text.str(), height);
  } catch (const SvgError& e) {
    throw std::runtime_error(file.string() + ":" + std::to_string(e.line) + ": " + e.what());
  } catch (const std::overflow_error&) {
    throw std::runtime_error(file.string() + ": its numbers are too large for its viewBox");
  }
}

}  // namespace

std::optional<typeset::Drawing> sign(const std::string& folder, const std::string& name, Dim height) {
  if (!isPlainName(name)) return std::nullopt;
  const auto file = std::filesystem::path(folder) / (name + ".svg");
  std::error_code isMissing;
  const auto saved = std::filesystem::last_write_time(file, isMissing).time_since_epoch().count();
  if (isMissing) return std::nullopt;
  // Read once in the process, and again when the file was saved meanwhile.
  static base::Cache<std::tuple<std::string, std::int64_t, Dim>, std::optional<typeset::Drawing>> shelf(1000);
  return *shelf.getOrMake({file.string(), saved, height}, [&] { return readSignFile(file, height); });
}

}  // namespace drawings
