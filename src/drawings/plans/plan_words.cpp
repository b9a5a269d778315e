#include "drawings/plans/plan_words.h"

#include "base/quantity_words.h"
#include "model/outline.h"

namespace drawings {

bool isUs(const Pen& pen) { return pen.region.units == model::UnitSystem::UsCustomary; }

namespace {

std::string twoPlaces(const Pen& pen, std::int64_t millionths) {
  return base::decimal(millionths, 2, pen.region.numbers.decimal, pen.region.numbers.group);
}

/// '12.40 by 6.20 m'.
std::string twoSizes(const Pen& pen, base::Length a, base::Length b) {
  return pen.language("plan.by", {{"x", sizeText(pen, a)}, {"y", sizeWithUnit(pen, b)}});
}

}  // namespace

std::string sizeText(const Pen& pen, base::Length l) {
  return isUs(pen) ? base::feetAndInches(l) : twoPlaces(pen, base::inMetres(l));
}

std::string sizeWithUnit(const Pen& pen, base::Length l) {
  return sizeText(pen, l) + (isUs(pen) ? "" : "\u00a0" + pen.language("units.m"));
}

std::string areaText(const Pen& pen, base::Area a) {
  const auto& form = pen.region.numbers;
  return base::roundArea(isUs(pen) ? base::inSquareFeet(a) : base::inSquareMetres(a), form.decimal,
                         form.group) +
         "\u00a0" + pen.language(isUs(pen) ? "units.ft2" : "units.m2");
}

std::string acrossText(const Pen& pen, const std::string& size) {
  return pen.language("shape.circle", {{"across", size}});
}

std::string unbroken(const std::string& words) {
  constexpr std::size_t most = 60;  // bytes: they stay narrower than any plan
  if (words.size() > most) return words;
  std::string text;
  for (const char c : words) c == ' ' ? text += "\u00a0" : text += c;
  return text;
}

std::string cutOutSize(const Pen& pen, const model::Shape& shape) {
  if (const auto* c = std::get_if<model::Circle>(&shape)) return acrossText(pen, sizeText(pen, c->diameter));
  if (const auto* r = std::get_if<model::Ring>(&shape)) return acrossText(pen, sizeText(pen, r->outer));
  if (const auto* r = std::get_if<model::Rectangle>(&shape))
    return sizeText(pen, r->x) + " × " + sizeText(pen, r->y);
  return {};
}

std::string cutOutText(const Pen& pen, const model::CutOut& cut) {
  const std::string size = cutOutSize(pen, cut.shape);
  return cut.name + (cut.name.empty() || size.empty() ? "" : ", ") + size;
}

std::string shapeText(const Pen& pen, const model::Shape& shape) {
  struct Teller {
    const Pen& pen;
    std::string operator()(const model::Rectangle& r) const { return twoSizes(pen, r.x, r.y); }
    std::string operator()(const model::Polygon& p) const {
      const model::Extent e = extentOf(*outlineOf(model::Shape{p}));
      return pen.language("plan.within", {{"size", twoSizes(pen, e.width(), e.height())}});
    }
    std::string operator()(const model::Circle& c) const {
      return acrossText(pen, sizeWithUnit(pen, c.diameter));
    }
    std::string operator()(const model::Ring& r) const {
      return pen.language("plan.ring",
                          {{"outer", sizeWithUnit(pen, r.outer)}, {"inner", sizeWithUnit(pen, r.inner)}});
    }
    std::string operator()(const model::Triangle& t) const {
      return pen.language(
          "plan.triangle",
          {{"sides", pen.language.joined({sizeText(pen, t.a), sizeText(pen, t.b), sizeWithUnit(pen, t.c)})}});
    }
    std::string operator()(const model::Stairs& s) const {
      return pen.language.counted("plan.stairs", s.steps, {{"width", sizeWithUnit(pen, s.width)}});
    }
    std::string operator()(const model::Strip& s) const { return sizeWithUnit(pen, s.length); }
    std::string operator()(const model::Screen& s) const { return twoSizes(pen, s.width, s.height); }
    std::string operator()(const model::Measured& m) const { return areaText(pen, m.area); }
  };
  return std::visit(Teller{pen}, shape);
}

}  // namespace drawings
