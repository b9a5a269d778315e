#include "typeset/pages/fit.h"

#include "base/fixed.h"

#include <algorithm>

namespace typeset {

namespace {

void setAs(model::TextStyle& style, const model::TextStyle& other) {
  style.size = other.size;
  style.leading = other.leading;
  style.baseline = other.baseline;
}

}  // namespace

std::vector<model::Theme> tighter(const model::Theme& theme) {
  constexpr int steps = 3;
  std::vector<model::Theme> out;
  for (int i = 1; i <= steps; ++i) {
    const std::int64_t less = base::mulDiv(std::int64_t{theme.unit} * i, theme.shrink.millionths,
                                           steps * base::Share::whole(100).millionths, base::Round::Down);
    // Hundredths of a point are whole counts of Dim, so that lines stay whole multiples of the unit.
    const auto unit = static_cast<model::Millipoint>((theme.unit - less) / 10 * 10);
    if (unit >= (out.empty() ? theme.unit : out.back().unit)) continue;
    model::Theme next = theme;
    next.unit = unit;
    for (auto& [name, style] : next.styles) {
      style.leading = style.leading / theme.unit * unit;
      style.baseline =
          static_cast<model::Millipoint>(std::int64_t{style.baseline} * unit / theme.unit / 10 * 10);
    }
    out.push_back(std::move(next));
  }
  if (out.empty()) return out;
  out.push_back(closedUp(out.back()));
  return out;
}

std::vector<model::Theme> closer(model::Theme theme) {
  theme = closedUp(std::move(theme));
  std::vector<model::Theme> out = tighter(theme);
  out.insert(out.begin(), std::move(theme));
  return out;
}

model::Theme compactTables(model::Theme theme) {
  for (const char* name : {"table", "rowHead"}) setAs(theme.styles.at(name), theme.styles.at("note"));
  return theme;
}

model::Theme compactBody(model::Theme theme, base::Share shrink) {
  theme = compactTables(std::move(theme));
  setAs(theme.styles.at("body"), theme.styles.at("note"));
  setAs(theme.styles.at("hazard"), theme.styles.at("head"));
  theme.shrink = shrink;
  return theme;
}

model::Theme legible(model::Theme theme) {
  constexpr model::Millipoint unit = 3'500, reading = 10'500, notes = 9'000;
  if (theme.unit < unit) {
    for (auto& [name, style] : theme.styles) {
      style.leading = style.leading / theme.unit * unit;
      style.baseline =
          static_cast<model::Millipoint>(std::int64_t{style.baseline} * unit / theme.unit / 10 * 10);
    }
    theme.unit = unit;
  }
  for (const char* name : {"body", "table", "rowHead"})
    theme.styles.at(name).size = std::max(theme.styles.at(name).size, reading);
  for (const char* name : {"note", "label"})
    theme.styles.at(name).size = std::max(theme.styles.at(name).size, notes);
  return theme;
}

model::Theme closedUp(model::Theme theme) {
  theme.snap = 1;
  return theme;
}

}  // namespace typeset
