// A drawn plan as its lines and words, and decks to draw.
#pragma once

#include "figures_pen.h"

#include "model/outline.h"

#include <catch2/catch.hpp>

namespace figures_test {

using typeset::Dim;
using typeset::Drawing;
using typeset::Path;
using typeset::Size;
using typeset::Step;
using typeset::TextRun;

inline const Size fullWidth = {Dim::mm(166), Dim::mm(95)};

inline std::vector<const Path*> pathsIn(const Drawing& d) {
  std::vector<const Path*> out;
  for (const auto& item : d.items)
    if (const auto* p = std::get_if<Path>(&item.what)) out.push_back(p);
  return out;
}

inline const TextRun* textIn(const Drawing& d, const std::string& text) {
  for (const auto& item : d.items)
    if (const auto* run = std::get_if<TextRun>(&item.what); run && run->text == text) return run;
  return nullptr;
}

inline bool hasText(const Drawing& d, const std::string& text) { return textIn(d, text) != nullptr; }

/// The board lines: the one path in the colour of wood.
inline const Path* boardLines(const Drawing& d) {
  for (const auto* p : pathsIn(d))
    if (p->stroke && p->stroke->colour == theme().colours.at("wood")) return p;
  return nullptr;
}

inline std::size_t moves(const Path& p) {
  return static_cast<std::size_t>(std::count_if(p.steps.begin(), p.steps.end(),
                                                [](const auto& s) { return s.kind == Step::Kind::Move; }));
}

/// Everything drawn lies in the drawing; half a line's width may hang over.
inline void checkInside(const Drawing& d) {
  const Dim slack = Dim::milli(600);
  const auto inside = [&](typeset::Point p) {
    CHECK((p.x >= -slack && p.y >= -slack && p.x <= d.size.w + slack && p.y <= d.size.h + slack));
  };
  for (const auto& item : d.items) {
    if (const auto* p = std::get_if<Path>(&item.what))
      for (const auto& s : p->steps)
        if (s.kind != Step::Kind::Close) inside(s.to);
    if (const auto* run = std::get_if<TextRun>(&item.what)) {
      inside(run->baseline);
      inside(run->isUpright ? typeset::Point{run->baseline.x + run->width, run->baseline.y}
                            : typeset::Point{run->baseline.x, run->baseline.y - run->width});
    }
  }
}

inline std::vector<model::Deck> sixDecks() {
  using namespace model;
  Deck court =
      deck("Court", Polygon{{place(0, 0), place(3000, 0), place(3000, 3000), place(7000, 3000),
                             place(7000, 0), place(10'000, 0), place(10'000, 6000), place(0, 6000)}});
  court.boards = boards(138, 5, Run::ShortSide);
  Deck step = deck("Pool step", Rectangle{mm(900), mm(600)});
  Deck ring = deck("Bathing deck", Ring{mm(9600), mm(1800)});
  ring.boards = boards(138, 5);
  return {landing(),
          step,
          ring,
          court,
          deck("Corner by the old boathouse", Triangle{mm(5000), mm(4000), mm(3000)}),
          deck("Steps", Stairs{4, mm(2400), mm(300), mm(170)}),
          deck("Handrail", Strip{mm(18'600), mm(600)})};
}

}  // namespace figures_test
