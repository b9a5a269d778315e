// Letters, names and areas of decks, where no board runs through a letter.
#include "drawings/plans/plan_parts.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>
#include <array>

namespace drawings {

namespace {

const Dim lineGap = tenths(15);
const Dim patchRim = tenths(10);
const Dim widestName = Dim::mm(30);

/// A deck's letter, its name and area, stacked and centred; on a key in one line.
struct NameBlock {
  std::vector<ShapedText> lines;
  bool isRow = false;
  Size size;
};

typeset::Span letterSpan(const Pen& pen, const std::string& letter, std::int64_t points) {
  return {letter, model::Face::TextBold, Dim::pt(points), {}, colour(pen, "accent"), false};
}

NameBlock nameBlock(const Pen& pen, const std::string& letter, const std::string& name,
                    const std::string& area) {
  NameBlock b;
  b.lines.push_back(words(pen, letterSpan(pen, letter, 14)));
  for (const auto& line : wrapped(pen, "drawing", name, widestName, 2))
    b.lines.push_back(boldWords(pen, "drawing", line));
  if (!area.empty()) b.lines.push_back(words(pen, "drawing", area));
  for (const auto& w : b.lines) {
    b.size.w = std::max(b.size.w, w.width);
    b.size.h += w.height + lineGap;
  }
  b.size.h -= lineGap;
  return b;
}

NameBlock nameRow(const Pen& pen, const std::string& letter, const std::string& name) {
  NameBlock b;
  b.isRow = true;
  b.lines.push_back(words(pen, letterSpan(pen, letter, 12)));
  if (!name.empty()) b.lines.push_back(words(pen, "drawing", name));
  for (const auto& w : b.lines) {
    b.size.w += w.width + (b.size.w.raw > 0 ? lineGap : Dim{});
    b.size.h = std::max(b.size.h, w.height);
  }
  return b;
}

void putBlock(PlanSheet& sheet, const NameBlock& b, Point at) {
  Dim x = at.x, y = at.y;
  for (const auto& w : b.lines) {
    if (b.isRow) {
      put(sheet.items, w, {x, at.y + b.size.h});
      x += w.width + lineGap;
    } else {
      put(sheet.items, w, {at.x + (b.size.w - w.width) / 2, y + w.height});
      y += w.height + lineGap;
    }
  }
}

/// The place nearest to the middle of the deck where a block lies on boards with 'margin' around it.
std::optional<Point> spotOnBoards(const PlanSheet& sheet, const PlacedDeck& deck, Size size, Dim margin) {
  const Rect area = sheet.on(deck.extent);
  const Size room = {area.size.w - size.w, area.size.h - size.h};
  if (room.w.raw < 0 || room.h.raw < 0) return std::nullopt;
  struct Candidate {
    std::int64_t far;
    Point at;
    std::size_t row;
  };
  std::vector<Candidate> candidates;
  constexpr std::int64_t half = 10;
  candidates.reserve((2 * half + 1) * (2 * half + 1));
  for (std::int64_t i = -half; i <= half; ++i)
    for (std::int64_t k = -half; k <= half; ++k) {
      const Dim dx = room.w * i / (2 * half), dy = room.h * k / (2 * half);
      const std::int64_t x = dx.raw / 1000, y = dy.raw / 1000;
      candidates.push_back({x * x + y * y,
                            {area.at.x + room.w / 2 + dx, area.at.y + room.h / 2 + dy},
                            static_cast<std::size_t>(k + half)});
    }
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const auto& a, const auto& b) { return a.far < b.far; });
  std::array<std::optional<std::vector<Stretch>>, 2 * half + 1>
      rows;  // all candidates of one scan the same lines
  for (const auto& c : candidates) {
    const Rect patch = grown({c.at, size}, margin);
    auto& boards = rows[c.row];
    if (!boards) boards = sheet.boardsAcross(deck, patch);
    if (sheet.isOnBoards(*boards, patch)) return c.at;
  }
  return std::nullopt;
}

/// On a key no boards run under a name, so it may come closer to the edge.
bool nameInside(PlanSheet& sheet, const PlacedDeck& deck, const NameBlock& block, bool isKey) {
  const std::vector<Dim> margins = isKey ? std::vector{tenths(25), tenths(15), tenths(8)}
                                         : std::vector{tenths(40), tenths(25), tenths(15)};
  if (!spotOnBoards(sheet, deck, block.size, margins.back())) return false;
  for (const Dim margin : margins) {
    const auto at = spotOnBoards(sheet, deck, block.size, margin);
    if (!at) continue;
    const Rect patch = grown({*at, block.size}, patchRim);
    if (!isKey || deck.isStairs)
      put(sheet.items, box(grown({*at, block.size}, std::min(margin, patchRim)),
                           colour(sheet.pen, deck.isStairs ? "white" : "tint"), std::nullopt));
    putBlock(sheet, block, *at);
    sheet.take(patch);
    return true;
  }
  return false;
}

/// Where the straight line from outside first meets the deck.
std::optional<Point> edgeFrom(const PlanSheet& sheet, const PlacedDeck& deck, Side side, Dim at) {
  const bool alongX = side == Side::Left || side == Side::Right;
  const auto inside = stretches(deck.outline.edge, sheet.onSite(at), alongX);
  if (inside.empty()) return std::nullopt;
  const Dim hit = sheet.on(side == Side::Left || side == Side::Top ? inside.front().from : inside.back().to);
  return alongX ? Point{hit, at} : Point{at, hit};
}

/// A way to name a deck from outside: where the block stands and its leader runs.
struct Berth {
  Rect block;
  Point from, to;
  Side side = Side::Top;
  Dim length() const {
    const Dim d = from.x - to.x + (from.y - to.y);  // one of them is zero
    return d < Dim{} ? -d : d;
  }
};

/// The dot in which a leader ends on its deck.
struct Dot {
  Dim inside;  // from the edge
  Dim radius;
};

/// Where a leader meets the deck: at 'part' eighths of a side.
struct Landing {
  Side side;
  std::int64_t part;
  Point anchor, hit;
};

/// Stairs are met between two treads, in their middle and not on the arrow.
std::vector<Landing> landings(const PlanSheet& sheet, const PlacedDeck& deck, const model::Deck& about) {
  const Rect area = sheet.on(deck.extent);
  const auto* stairs = std::get_if<model::Stairs>(&about.shape);
  const bool isLying = deck.up == Side::Left || deck.up == Side::Right;
  std::vector<Landing> out;
  for (const Side side : {Side::Top, Side::Bottom, Side::Right, Side::Left})
    for (const std::int64_t part : {4, 6, 2, 7, 1}) {
      Point anchor = {area.at.x + area.size.w * part / 8, area.at.y + area.size.h * part / 8};
      const bool isAbove = side == Side::Top || side == Side::Bottom;
      if (stairs && isAbove == isLying) {
        const std::int64_t tread = (part - 1) * (stairs->steps - 1) / 6,
                           halves = std::int64_t{2} * stairs->steps;
        if (isAbove) anchor.x = area.at.x + area.size.w * (2 * tread + 1) / halves;
        else anchor.y = area.at.y + area.size.h * (2 * tread + 1) / halves;
      } else if (stairs && part == 4) {
        continue;
      }
      if (const auto hit = edgeFrom(sheet, deck, side, isAbove ? anchor.x : anchor.y))
        out.push_back({side, part, anchor, *hit});
    }
  return out;
}

/// Beside the deck on one side, the block slid along by fifths.
Berth berthBeside(const Rect& area, const Landing& landing, Size s, Dim away, std::int64_t slide) {
  const auto& [side, part, anchor, hit] = landing;
  const bool isAbove = side == Side::Top || side == Side::Bottom;
  const Dim along = (isAbove ? s.w : s.h) * slide / 5;
  Berth p{{{}, s}, {}, hit, side};
  switch (side) {
    case Side::Top:
      p.block.at = {anchor.x - s.w / 2 + along, area.at.y - away - s.h};
      p.from = {anchor.x, bottom(p.block) + patchRim};
      break;
    case Side::Bottom:
      p.block.at = {anchor.x - s.w / 2 + along, bottom(area) + away};
      p.from = {anchor.x, p.block.at.y - patchRim};
      break;
    case Side::Right:
      p.block.at = {right(area) + away, anchor.y - s.h / 2 + along};
      p.from = {p.block.at.x - patchRim, anchor.y};
      break;
    case Side::Left:
      p.block.at = {area.at.x - away - s.w, anchor.y - s.h / 2 + along};
      p.from = {right(p.block) + patchRim, anchor.y};
      break;
  }
  return p;
}

/// A point so far out from the edge on a side; less than nothing is on the deck.
Point outFrom(Point edge, Side side, Dim by) {
  switch (side) {
    case Side::Top:
      return {edge.x, edge.y - by};
    case Side::Bottom:
      return {edge.x, edge.y + by};
    case Side::Left:
      return {edge.x - by, edge.y};
    case Side::Right:
      return {edge.x + by, edge.y};
  }
  throw std::logic_error("internal error: no such side");
}

/// In the middle of a tread where the deck is stairs.
Dot dotOn(const PlanSheet& sheet, const PlacedDeck& deck, const model::Deck& about) {
  Dot dot = {tenths(13), tenths(5)};
  if (const auto* stairs = std::get_if<model::Stairs>(&about.shape)) {
    dot.inside = std::min(dot.inside, sheet.on(stairs->going) / 2);
    dot.radius = std::clamp(sheet.on(stairs->going) / 4, tenths(3), dot.radius);
  }
  const Rect area = sheet.on(deck.extent);
  dot.inside = std::min({dot.inside, area.size.w / 2, area.size.h / 2});
  return dot;
}

bool isFree(const PlanSheet& sheet, const Berth& p, const Dot& dot) {
  const Rect end{outFrom(p.to, p.side, -dot.inside), {}};
  if (!sheet.isUntaken(grown(end, dot.radius))) return false;
  // Stops short of the edge for the test, which counts the deck itself as taken.
  const Point edge = outFrom(p.to, p.side, tenths(3));
  return sheet.isFree(grown(p.block, patchRim)) && sheet.isFree(around({p.from, {}}, {edge, {}}));
}

/// How bad a place is, in tenths of a millimetre: long leaders, far from the middle, and a drawing that
/// grows.
std::int64_t costOf(const PlanSheet& sheet, const Berth& p, std::int64_t part, std::int64_t slide) {
  const auto tenthsOf = [](Dim d) { return std::abs(d.raw) / tenths(1).raw; };
  const Rect now = sheet.bounds(), then = around(now, grown(p.block, patchRim));
  return tenthsOf(p.from.x - p.to.x) + tenthsOf(p.from.y - p.to.y) + 10 * std::abs(part - 4) +
         4 * std::abs(slide) + tenthsOf(then.size.w - now.size.w) + tenthsOf(then.size.h - now.size.h);
}

std::optional<Berth> placeOutside(const PlanSheet& sheet, const PlacedDeck& deck, const model::Deck& about,
                                  Size size) {
  const Rect area = sheet.on(deck.extent);
  const std::vector<Landing> ways = landings(sheet, deck, about);
  const Dot dot = dotOn(sheet, deck, about);
  std::optional<Berth> best;
  std::int64_t least = 0;
  for (const std::int64_t off : {40, 60, 80, 120, 170, 230, 300})  // tenths of a millimetre
    for (const Landing& landing : ways)
      for (const std::int64_t slide : {0, -1, 1, -2, 2}) {
        // The leader is no shorter than this, so nothing better can come of it.
        if (best && off - 10 + 10 * std::abs(landing.part - 4) + 4 * std::abs(slide) >= least) continue;
        const Berth p = berthBeside(area, landing, size, tenths(off), slide);
        const std::int64_t cost = costOf(sheet, p, landing.part, slide);
        // Whether it is free takes longest to find out.
        if ((best && cost >= least) || !isFree(sheet, p, dot)) continue;
        best = p;
        least = cost;
      }
  return best;
}

/// A name that has to be looked for, or whose lines (not a row) stand close over or under another deck as if
/// they were that one's.
bool isAwkward(const PlanSheet& sheet, const PlacedDeck& deck, const Berth& p, bool isRow) {
  const Dim close = tenths(25);
  const Rect column = {{p.block.at.x, p.block.at.y - close}, {p.block.size.w, p.block.size.h + close * 2}};
  return p.length() > Dim::mm(12) || (!isRow && sheet.meetsOther(deck, column));
}

void putOutside(PlanSheet& sheet, const PlacedDeck& deck, const model::Deck& about, const NameBlock& block,
                const Berth& p) {
  const auto ink = colour(sheet.pen, "ink");
  const Dot dot = dotOn(sheet, deck, about);
  const Point end = outFrom(p.to, p.side, -dot.inside);
  put(sheet.items, line(p.from, end, {ink, hundredthsPt(40), {}, false}));
  put(sheet.items, circle(end, dot.radius, ink, std::nullopt));
  putBlock(sheet, block, p.block.at);
  sheet.take(grown(p.block, patchRim));
  sheet.take(grown(around({p.from, {}}, {p.to, {}}), tenths(3)));
}

NameBlock nameOf(const PlanSheet& sheet, const PlacedDeck& deck, const std::vector<model::Deck>& decks,
                 const model::Estimate& estimate, bool isKey) {
  const std::string letter = letterOf(deck.index), name = decks[deck.index].name;
  if (isKey) return nameRow(sheet.pen, letter, name);
  return nameBlock(sheet.pen, letter, name, areaText(sheet.pen, estimate.decks.at(deck.index).area));
}

/// The whole name beside the deck, or only its letter, there or on it, where that is plainer: then false.
bool nameBeside(PlanSheet& sheet, const PlacedDeck& deck, const model::Deck& about, const NameBlock& whole,
                const NameBlock& letter) {
  const auto berth = placeOutside(sheet, deck, about, whole.size);
  const bool isPlain = berth && !isAwkward(sheet, deck, *berth, whole.isRow);
  const auto small = isPlain ? std::nullopt : placeOutside(sheet, deck, about, letter.size);
  const bool isSmallPlain = small && !isAwkward(sheet, deck, *small, false);
  if (berth && !isSmallPlain) {
    putOutside(sheet, deck, about, whole, *berth);
    return true;
  }
  if (!deck.isStairs && nameInside(sheet, deck, letter, false)) return false;
  if (small) putOutside(sheet, deck, about, letter, *small);
  else nameInside(sheet, deck, letter, false);
  return false;
}

}  // namespace

std::vector<std::size_t> nameDecksInside(PlanSheet& sheet, const std::vector<model::Deck>& decks,
                                         const model::Estimate& estimate, bool isKey) {
  std::vector<std::size_t> left;
  for (std::size_t i = 0; i < sheet.placed.size(); ++i) {
    const PlacedDeck& deck = sheet.placed[i];
    const bool hidesTreads = isKey && deck.isStairs;  // which tell what it is
    if (hidesTreads || !nameInside(sheet, deck, nameOf(sheet, deck, decks, estimate, isKey), isKey))
      left.push_back(i);
  }
  return left;
}

void nameDecksOutside(PlanSheet& sheet, const std::vector<std::size_t>& which,
                      const std::vector<model::Deck>& decks, const model::Estimate& estimate, bool isKey) {
  for (const std::size_t i : which) {
    const PlacedDeck& deck = sheet.placed[i];
    const model::Deck& about = decks[deck.index];
    // A key is the larger the less stands around it; but a letter would hide most treads of stairs.
    const NameBlock letter = nameRow(sheet.pen, letterOf(deck.index), "");
    const bool isInside = isKey && !deck.isStairs && nameInside(sheet, deck, letter, isKey);
    if (!isInside && nameBeside(sheet, deck, about, nameOf(sheet, deck, decks, estimate, isKey), letter))
      continue;
    const auto area = areaText(sheet.pen, estimate.decks.at(deck.index).area);
    sheet.notes.push_back(unbroken(letterOf(deck.index) + " " + about.name + (isKey ? "" : ", " + area)));
  }
}

}  // namespace drawings
