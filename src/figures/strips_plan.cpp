// Plan of the decks coated on one day: strips in their order, where to start and where to leave.
#include "figures/plan_parts.h"
#include "figures/plan_words.h"
#include "figures/strip_bands.h"

#include <algorithm>

namespace figures {

namespace {

using base::Length;

const Dim roundRadius = tenths(24), patchRim = tenths(8);

/// The decks of the day where they lie on the site; stairs still lean against those that are not coated.
std::vector<PlacedDeck> placedOf(const model::Case& c, const std::vector<StripDeck>& decks, Length gap,
                                 Length rowWidth) {
  const auto isToday = [&](std::size_t index) {
    return std::any_of(decks.begin(), decks.end(), [&](const auto& d) { return d.edge.deck == index; });
  };
  auto areas = c.job.areas;
  for (std::size_t i = 0; i < areas.size(); ++i)
    if (!isToday(i) && !areas[i].at) areas[i].shape = model::Measured{};
  auto all = placeDecks(areas, gap, rowWidth);
  std::erase_if(all, [&](const auto& d) { return !isToday(d.index); });
  return all;
}

class StripsDrawer {
 public:
  StripsDrawer(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, const StripDeck& strips)
      : sheet_(sheet),
        placed_(placed),
        deck_(deck),
        strips_(strips),
        bands_(bandsOf(placed, deck, strips.edge)),
        out_(strips.edge.wayOut.value_or(model::Place{})) {
    const auto own = model::extentOf(*model::outlineOf(deck)).from;
    out_ = {out_.x - own.x + placed.extent.from.x, out_.y - own.y + placed.extent.from.y};
    const Length along = bands_.alongX ? out_.x : out_.y;
    const Length low = bands_.alongX ? placed.extent.from.x : placed.extent.from.y;
    const Length high = bands_.alongX ? placed.extent.to.x : placed.extent.to.y;
    leavesHigh_ = high - along <= along - low;
  }

  void fill() {
    if (bands_.bands.empty()) {
      const Length low = bands_.alongX ? placed_.extent.from.y : placed_.extent.from.x;
      const Length high = bands_.alongX ? placed_.extent.to.y : placed_.extent.to.x;
      fill({low, high}, "tint");
    }
    for (std::size_t i = 0; i < bands_.bands.size(); ++i)
      fill(bands_.bands[i], i % 2 == 0 ? "tint" : "white");
    drawDeckLines(sheet_, placed_, deck_, placed_.isStairs);
    const Stroke border = {colour(sheet_.pen, "ink"), hundredthsPt(90), {}, false};
    Path lines;
    for (std::size_t i = 1; i < bands_.bands.size(); ++i) {
      const Length at = std::max(bands_.bands[i - 1].from, bands_.bands[i].from);
      for (const auto& s : model::stretches(placed_.outline, at, bands_.alongX)) {
        moveTo(lines, point(s.from, at));
        lineTo(lines, point(s.to, at));
      }
    }
    lines.stroke = border;
    if (!lines.steps.empty()) put(sheet_.items, std::move(lines));
    if (!bands_.bands.empty()) drawCorner();
  }

  void number() {
    for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
      const Words w = numeral(std::to_string(i + 1));
      if (!numberInside(bands_.bands[i], w)) numberOutside(bands_.bands[i], std::to_string(i + 1));
    }
  }

  /// Time and litres in the strips that have room, then an arrow towards where the crew leaves.
  void tell() {
    for (std::size_t i = 0; i < bands_.bands.size() && i < strips_.starts.size(); ++i) {
      if (strips_.starts[i].empty()) continue;
      const Band& band = bands_.bands[i];
      const Words start = words(sheet_.pen, "drawing", strips_.starts[i]);
      const Words litres = boldWords(sheet_.pen, "drawing", strips_.litres[i]);
      const Dim gap = Dim::mm(2), lead = tenths(14);
      const bool isFlat = bands_.alongX;
      const Size flat = {start.width + gap + litres.width, start.height};
      const Size tall = {std::max(start.width, litres.width), start.height + lead + litres.height};
      const Size size = isFlat ? flat : tall;
      const auto at = spot(band, grownSize(size, patchRim * 2), 2);
      if (!at) continue;
      const Rect patch = {*at, grownSize(size, patchRim * 2)};
      put(sheet_.items, box(patch, colour(sheet_.pen, i % 2 == 0 ? "tint" : "white"), std::nullopt));
      const Point corner = {at->x + patchRim, at->y + patchRim};
      if (isFlat) {
        put(sheet_.items, start, {corner.x, corner.y + start.height});
        put(sheet_.items, litres, {corner.x + start.width + gap, corner.y + start.height});
      } else {
        put(sheet_.items, start, {corner.x + (size.w - start.width) / 2, corner.y + start.height});
        put(sheet_.items, litres, {corner.x + (size.w - litres.width) / 2, corner.y + size.h});
      }
      sheet_.take(patch);
    }
  }

  void drawWayOut() {
    const auto& box = placed_.extent;
    const Length toLeft = out_.x - box.from.x, toRight = box.to.x - out_.x, toTop = out_.y - box.from.y,
                 toBottom = box.to.y - out_.y;
    const Length least = std::min({toLeft, toRight, toTop, toBottom});
    const Side side = least == toBottom  ? Side::Bottom
                      : least == toRight ? Side::Right
                      : least == toTop   ? Side::Top
                                         : Side::Left;
    const Point edge = sheet_.on(out_);
    const Dim off = tenths(12), length = Dim::mm(9);
    const auto from = [&](Dim by) -> Point {
      switch (side) {
        case Side::Left:
          return {edge.x - by, edge.y};
        case Side::Right:
          return {edge.x + by, edge.y};
        case Side::Top:
          return {edge.x, edge.y - by};
        case Side::Bottom:
          return {edge.x, edge.y + by};
      }
      throw std::logic_error("internal error: no such side");
    };
    const Rect room = grown(around({from(off), {}}, {from(off + length), {}}), tenths(10));
    if (!sheet_.isFree(room)) {  // the next deck lies there
      arrow(from(-tenths(25)), from(tenths(35)));
      return;
    }
    arrow(from(off), from(off + length));
    sheet_.take(room);
    const Words w = [&] {
      auto span = typeset::spanIn(sheet_.pen.theme, "drawing", sheet_.pen.language("strips.way_out"));
      span.face = model::Face::SansBold;
      span.colour = colour(sheet_.pen, "accent");
      return words(sheet_.pen, span);
    }();
    const bool isUpright = side == Side::Top || side == Side::Bottom;
    const Point middle = from(off + length / 2);
    const Dim air = tenths(22);
    for (const Point at : isUpright ? std::vector<Point>{{middle.x + air, middle.y - w.height / 2},
                                                         {middle.x - air - w.width, middle.y - w.height / 2}}
                                    : std::vector<Point>{{middle.x - w.width / 2, middle.y - air - w.height},
                                                         {middle.x - w.width / 2, middle.y + air}}) {
      if (!sheet_.isFree(grown({at, {w.width, w.height}}, tenths(5)))) continue;
      put(sheet_.items, w, {at.x, at.y + w.height});
      sheet_.take({at, {w.width, w.height}});
      return;
    }
  }

 private:
  static Size grownSize(Size s, Dim by) { return {s.w + by, s.h + by}; }

  Point point(Length along, Length across) const {
    return bands_.alongX ? Point{sheet_.on(along), sheet_.on(across)}
                         : Point{sheet_.on(across), sheet_.on(along)};
  }

  void fill(const Band& band, const char* name) {
    Path path = bandPath(sheet_, placed_.outline, band, bands_.alongX);
    if (path.steps.empty()) return;
    path.fill = colour(sheet_.pen, name);
    put(sheet_.items, std::move(path));
  }

  Words numeral(const std::string& text) const {
    auto span = typeset::spanIn(sheet_.pen.theme, "drawing", text);
    span.face = model::Face::SansBold;
    span.colour = colour(sheet_.pen, "white");
    return words(sheet_.pen, span);
  }

  /// The corner of the first strip that lies farthest from the way out, filled.
  void drawCorner() {
    const Band& band = bands_.bands.front();
    const bool isLow = bands_.bands.size() < 2 ? !strips_.edge.startsAtEnd : band.from < bands_.bands[1].from;
    const Length hair{1'000'000};
    const Length across = isLow ? band.from + hair : band.to - hair;
    const auto line = model::stretches(placed_.outline, across, bands_.alongX);
    if (line.empty()) return;
    const Length end = leavesHigh_ ? line.front().from : line.back().to;
    const Point at = point(end, isLow ? band.from : band.to);
    const Dim leg = std::min(Dim::mm(3), sheet_.on(band.to - band.from));
    const Dim along = leavesHigh_ ? leg : -leg, over = isLow ? leg : -leg;
    const auto beside = [&](Dim a, Dim b) {
      return bands_.alongX ? Point{at.x + a, at.y + b} : Point{at.x + b, at.y + a};
    };
    put(sheet_.items,
        polygon({at, beside(along, {}), beside({}, over)}, colour(sheet_.pen, "ink"), std::nullopt));
  }

  /// A free place in a band for a block of this size: from the end where each board starts, or from the
  /// middle outwards when 'part' is 2. Nothing when the band is too narrow.
  std::optional<Point> spot(const Band& band, Size size, int part) const {
    const Dim across = sheet_.on(band.to - band.from), own = bands_.alongX ? size.h : size.w,
              along = bands_.alongX ? size.w : size.h;
    if (own > across) return std::nullopt;
    const Length middle = {(band.from.millionths + band.to.millionths) / 2};
    const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
    if (line.empty()) return std::nullopt;
    const Dim low = sheet_.on(line.front().from), high = sheet_.on(line.back().to) - along;
    if (high < low) return std::nullopt;
    constexpr int steps = 40;
    const Dim inset = std::min(tenths(40), (high - low) / 2);
    for (int i = 0; i <= steps; ++i) {
      Dim at;
      if (part == 2) at = low + (high - low) * (steps / 2 + (i % 2 == 0 ? i / 2 : -(i + 1) / 2)) / steps;
      else if (leavesHigh_) at = low + inset + (high - low - inset) * i / steps;
      else at = high - inset - (high - low - inset) * i / steps;
      const Dim over = sheet_.on(middle) - own / 2;
      const Point corner = bands_.alongX ? Point{at, over} : Point{over, at};
      if (sheet_.isOnBoards(placed_, {corner, size})) return corner;
    }
    return std::nullopt;
  }

  bool numberInside(const Band& band, const Words& w) {
    const Dim wide = std::max(roundRadius * 2, w.width + tenths(16));
    const auto at = spot(band, {wide, roundRadius * 2}, 1);
    if (!at) return false;
    const Point centre = {at->x + wide / 2, at->y + roundRadius};
    put(sheet_.items, circle(centre, wide / 2, colour(sheet_.pen, "accent"), std::nullopt));
    putCentred(sheet_.items, w, centre);
    sheet_.take(grown({*at, {wide, roundRadius * 2}}, tenths(8)));
    return true;
  }

  /// Beside the end where the boards of a narrow strip start, with a short leader.
  void numberOutside(const Band& band, const std::string& text) {
    const Length middle = {(band.from.millionths + band.to.millionths) / 2};
    const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
    if (line.empty()) return;
    const Words w = boldWords(sheet_.pen, "drawing", text);
    const Dim off = tenths(22);
    for (const bool isLow : {leavesHigh_, !leavesHigh_}) {
      const Point end = point(isLow ? line.front().from : line.back().to, middle);
      const Dim reach = isLow ? -off : off;
      const Point tip = bands_.alongX ? Point{end.x + reach, end.y} : Point{end.x, end.y + reach};
      const Point at =
          bands_.alongX
              ? Point{isLow ? tip.x - tenths(6) - w.width : tip.x + tenths(6), tip.y - w.height / 2}
              : Point{tip.x - w.width / 2, isLow ? tip.y - tenths(6) - w.height : tip.y + tenths(6)};
      const Rect room = grown({at, {w.width, w.height}}, tenths(3));
      if (!sheet_.isFree(room)) continue;
      put(sheet_.items, figures::line(end, tip, {colour(sheet_.pen, "ink"), hundredthsPt(40), {}, false}));
      put(sheet_.items, w, {at.x, at.y + w.height});
      sheet_.take(room);
      return;
    }
  }

  void arrow(Point from, Point to) {
    const auto accent = colour(sheet_.pen, "accent");
    const Dim head = Dim::mm(3), half = tenths(15);
    const bool isFlat = from.y == to.y;
    const Dim back = (isFlat ? to.x > from.x : to.y > from.y) ? -head : head;
    const Point base = isFlat ? Point{to.x + back, to.y} : Point{to.x, to.y + back};
    put(sheet_.items, figures::line(from, base, {accent, hundredthsPt(260), {}, false}));
    put(sheet_.items,
        isFlat ? polygon({to, {base.x, base.y - half}, {base.x, base.y + half}}, accent, std::nullopt)
               : polygon({to, {base.x - half, base.y}, {base.x + half, base.y}}, accent, std::nullopt));
  }

  PlanSheet& sheet_;
  const PlacedDeck& placed_;
  const model::Deck& deck_;
  const StripDeck& strips_;
  StripBands bands_;
  model::Place out_;         // site coordinates
  bool leavesHigh_ = false;  // the way out is nearer to the right or lower ends of the boards
};

std::string altText(const model::Case& c, const std::vector<StripDeck>& decks, const Pen& pen) {
  std::string text = pen.language("strips.alt");
  for (std::size_t i = 0; i < decks.size(); ++i) {
    const auto& edge = decks[i].edge;
    text += (i == 0 ? " " : "; ") + letterOf(edge.deck) + " " + c.job.areas[edge.deck].name;
    bool isFirst = true;
    for (std::size_t k = 0; k < edge.strips.size() && k < decks[i].starts.size(); ++k) {
      if (decks[i].starts[k].empty()) continue;
      text += (isFirst ? ": " : ", ") +
              pen.language.counted(std::holds_alternative<model::Stairs>(c.job.areas[edge.deck].shape)
                                       ? "strips.alt_treads"
                                       : "strips.alt_boards",
                                   edge.strips[k].boards,
                                   {{"strip", std::to_string(edge.strips[k].number)},
                                    {"time", decks[i].starts[k]},
                                    {"litres", decks[i].litres[k]}});
      isFirst = false;
    }
  }
  return text + ".";
}

}  // namespace

typeset::Drawing stripsPlan(const model::Case& c, const model::Estimate& e,
                            const std::vector<StripDeck>& decks, const Pen& pen, Size box) {
  typeset::Drawing out;
  out.alt = altText(c, decks, pen);
  const auto isDrawn = [&](const auto& d) {
    return model::outlineOf(c.job.areas[d.edge.deck].shape).has_value();
  };
  if (std::none_of(decks.begin(), decks.end(), isDrawn)) return out;
  for (const std::int64_t scale : scalesOf(pen)) {
    const auto onSite = [&](Dim d) {
      return Length{base::mulDiv(d.raw, 1000 * scale, 36, base::Round::HalfUp)};
    };
    PlanSheet sheet(pen, scale, placedOf(c, decks, onSite(Dim::mm(14)), onSite(box.w - Dim::mm(14))));
    const auto tooLarge = [&] { return sheet.bounds().size.w > box.w || sheet.bounds().size.h > box.h; };
    if (tooLarge()) continue;
    std::vector<StripsDrawer> drawers;
    for (const auto& placed : sheet.placed) {
      const auto deck = std::find_if(decks.begin(), decks.end(),
                                     [&](const auto& d) { return d.edge.deck == placed.index; });
      drawers.emplace_back(sheet, placed, c.job.areas[placed.index], *deck);
    }
    for (auto& d : drawers) d.fill();
    for (auto& d : drawers) d.number();
    for (auto& d : drawers) d.drawWayOut();
    for (auto& d : drawers) d.tell();
    nameDecksOutside(sheet, nameDecksInside(sheet, c.job.areas, e, true), c.job.areas, e, true);
    sheet.notes.push_back(pen.language("strips.note", {{"scale", std::to_string(scale)}}));
    writeNotes(sheet, box.w);
    if (tooLarge()) continue;
    out.size = sheet.bounds().size;
    out.items = std::move(sheet.items);
    shift(out.items, {-sheet.bounds().at.x, -sheet.bounds().at.y});
    return out;
  }
  return out;
}

}  // namespace figures
