#include "input/look/colour.h"

#include <algorithm>
#include <cmath>

namespace input {
namespace {

constexpr const char* names[] = {"ink",  "soft",  "accent",  "tint",   "rule",    "wood",
                                 "wall", "white", "warning", "danger", "caution", "notice"};
constexpr const char* grounds[] = {"white", "tint"};
constexpr int leastContrast = 450;  // WCAG 2.1, success criterion 1.4.3

/// Relative luminance, 0 to 1 (WCAG 2.1). The threshold 0.03928 is the one printed there.
double luminance(model::Colour c) {
  const auto linear = [](std::uint8_t v) {
    const double s = v / 255.0;
    return s <= 0.03928 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

std::string decimal(int hundredths) {
  std::string cents = std::to_string(hundredths % 100);
  cents.insert(0, 2 - cents.size(), '0');
  return std::to_string(hundredths / 100) + "." + cents;
}

bool isReadable(const std::map<std::string, model::Colour>& colours, model::Colour text) {
  return std::all_of(std::begin(grounds), std::end(grounds), [&](const char* name) {
    const auto ground = colours.find(name);
    return ground == colours.end() || contrastHundredths(text, ground->second) >= leastContrast;
  });
}

/// Goes in 255 steps of one shade or less towards black, where that does not help towards white.
std::optional<model::Colour> nearestReadable(const std::map<std::string, model::Colour>& colours,
                                             model::Colour from) {
  for (const int end : {0, 255}) {
    for (int left = 255; left >= 0; --left) {
      const auto channel = [&](std::uint8_t v) {
        return static_cast<std::uint8_t>((v * left + end * (255 - left)) / 255);
      };
      const model::Colour c = {channel(from.r), channel(from.g), channel(from.b)};
      if (isReadable(colours, c)) return c;
    }
  }
  return {};
}

std::string inHex(model::Colour c) {
  constexpr char digits[] = "0123456789abcdef";
  std::string s = "#";
  for (const std::uint8_t v : {c.r, c.g, c.b}) s += {digits[v >> 4], digits[v & 15]};
  return s;
}

/// Reads colours over those there are.
void read(const Field& f, bool isAll, std::map<std::string, model::Colour>& colours) {
  Record r(f);
  std::map<std::string, Field> fields;
  for (const char* name : names) {
    const Field c = isAll ? r.must(name, "'#7a4522'") : r.may(name);
    if (!c.isGiven()) continue;
    colours[name] = colour(c);
    fields.emplace(name, c);
  }
  r.finish();
  std::map<std::string, model::Colour> all = colours;
  all.emplace("white", model::Colour{255, 255, 255});
  for (const char* name : textColours) {
    for (const char* ground : grounds) {
      const std::string mistake = contrastMistake(all, name, ground);
      if (mistake.empty()) continue;
      if (fields.contains(name)) fields.at(name).error(mistake, contrastHint(all, name));
      else if (fields.contains(ground))
        fields.at(ground).error("'" + std::string(name) + "' cannot be read on it: " + mistake,
                                "take a tint nearer to white");
    }
  }
}

}  // namespace

int contrastHundredths(model::Colour a, model::Colour b) {
  const double la = luminance(a), lb = luminance(b);
  const double ratio = (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
  return static_cast<int>(ratio * 100 + 1e-9);
}

std::string contrastMistake(const std::map<std::string, model::Colour>& colours, const std::string& text,
                            const std::string& ground) {
  const auto t = colours.find(text), g = colours.find(ground);
  if (t == colours.end() || g == colours.end()) return {};
  const int contrast = contrastHundredths(t->second, g->second);
  if (contrast >= leastContrast) return {};
  return "text in this colour has a contrast of " + decimal(contrast) + ":1 on " + ground;
}

std::string contrastHint(const std::map<std::string, model::Colour>& colours, const std::string& text) {
  const std::string needs = "it needs 4.5:1 (WCAG 2.1, 1.4.3); ";
  const auto nearest = nearestReadable(colours, colours.at(text));
  return nearest ? needs + "the nearest that passes is '" + inHex(*nearest) + "'"
                 : needs + "no colour passes both on white and on this tint";
}

void readThemeColours(const Field& f, std::map<std::string, model::Colour>& colours) {
  read(f, colours.empty(), colours);
}

std::map<std::string, model::Colour> readOwnColours(const Field& f) {
  std::map<std::string, model::Colour> colours;
  read(f, false, colours);
  return colours;
}

}  // namespace input
