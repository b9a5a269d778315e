// A look, regions and decks for tests of drawings.
#pragma once

#include "drawings/drawings.h"
#include "english.h"

namespace figures_test {

inline model::Theme theme() {
  using model::Face;
  const std::string vollkorn = "/usr/share/fonts/truetype/vollkorn/Vollkorn-";
  const std::string carlito = "/usr/share/fonts/truetype/crosextra/Carlito-";
  model::Theme t;
  t.faces = {{Face::Text, vollkorn + "Regular.ttf"},
             {Face::TextBold, vollkorn + "SemiBold.ttf"},
             {Face::Display, vollkorn + "Medium.ttf"},
             {Face::Sans, carlito + "Regular.ttf"},
             {Face::SansBold, carlito + "Bold.ttf"}};
  t.colours = {{"ink", {0x21, 0x1b, 0x17}},   {"soft", {0x5f, 0x55, 0x4c}},  {"accent", {0x7a, 0x45, 0x22}},
               {"tint", {0xf5, 0xef, 0xe7}},  {"rule", {0x9c, 0x90, 0x83}},  {"wood", {0x95, 0x82, 0x6d}},
               {"wall", {0x8c, 0x81, 0x78}},  {"white", {0xff, 0xff, 0xff}}, {"danger", {0x9b, 0x24, 0x23}},
               {"notice", {0x00, 0x53, 0x87}}};
  const auto style = [](Face face, int size, int leading, int rise, const char* colour) {
    return model::TextStyle{face, Face::SansBold, face, size, leading, rise, 0, colour, false};
  };
  t.styles = {{"figure", style(Face::Display, 20'000, 28'000, 24'500, "ink")},
              {"total", style(Face::TextBold, 15'000, 21'000, 17'500, "ink")},
              {"rowHead", style(Face::TextBold, 10'500, 14'000, 10'500, "ink")},
              {"table", style(Face::Sans, 10'500, 14'000, 10'500, "ink")},
              {"note", style(Face::Sans, 9'000, 10'500, 7'000, "soft")},
              {"label", style(Face::SansBold, 9'000, 10'500, 7'000, "accent")},
              {"drawing", style(Face::Sans, 9'000, 10'500, 7'000, "ink")}};
  return t;
}

/// Everything a drawing needs, alive as long as the test.
struct Look {
  model::Theme look = theme();
  typeset::Fonts fonts = typeset::readFonts(look);
  model::Region region;
  drawings::Pen pen() const {
    return {look, fonts, region, english(), std::string(SOURCE_DIR) + "/content/signs"};
  }
};

inline const Look& metric() {
  static const Look look;
  return look;
}

inline const Look& us() {
  static const Look look = [] {
    Look l;
    l.region.units = model::UnitSystem::UsCustomary;
    return l;
  }();
  return look;
}

/// Millimetres, for short tests.
inline base::Length mm(std::int64_t n) { return base::millimetres(n); }
inline model::Place place(std::int64_t x, std::int64_t y) { return {mm(x), mm(y)}; }

inline model::Boards boards(std::int64_t width, std::int64_t gap, model::Run run = model::Run::LongSide) {
  model::Boards b;
  b.width = mm(width);
  b.gap = mm(gap);
  b.thickness = mm(38);
  b.run = run;
  return b;
}

inline model::Deck deck(std::string name, model::Shape shape) {
  model::Deck d;
  d.name = std::move(name);
  d.shape = std::move(shape);
  return d;
}

/// 12.4 by 6.2 m with a tree of 1.2 m: 76.88 - 1.13 = 75.75 m2.
inline model::Deck landing() {
  model::Deck d = deck("Landing", model::Rectangle{mm(12'400), mm(6'200)});
  d.without.push_back({model::Circle{mm(1'200)}, place(6'000, 3'000), "tree"});
  d.boards = boards(138, 5);
  return d;
}

/// A case of these decks, all with the same area: drawings copy it and compute none.
struct Decks {
  model::JobInputs job;
  model::Estimate estimate;

  explicit Decks(std::vector<model::Deck> decks, base::Area area = {75'749'026'602'000}) {
    for (std::size_t i = 0; i < decks.size(); ++i) {
      model::Measures m;
      m.area = area;
      estimate.decks.push_back(m);
    }
    job.job.areas = std::move(decks);
  }
  typeset::Drawing plan(const Look& look, typeset::Size box, bool isKey = false) const {
    return drawings::deckPlan(job, estimate, look.pen(), box, isKey);
  }
};

}  // namespace figures_test
