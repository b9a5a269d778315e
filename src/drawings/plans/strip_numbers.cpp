// The numbers of strips, where every strip of a deck has one and no two meet.
#include "drawings/plans/strip_drawer.h"

#include <algorithm>

namespace drawings {

namespace {

const Dim discHeight = tenths(44), air = tenths(6), leaderLength = tenths(18);

ShapedText numeral(const Pen& pen, int number, bool isOnDisc) {
  auto span = typeset::spanIn(pen.theme, "drawing", std::to_string(number));
  span.face = model::Face::SansBold;
  if (isOnDisc) span.colour = colour(pen, "white");
  return words(pen, span);
}

}  // namespace

Size StripsDrawer::sizeOf(std::size_t band, Look look) const {
  const ShapedText w = numeral(sheet_.pen, bands_.numbers[band], look == Look::Disc);
  if (look == Look::Plain) return {w.width, w.height};
  const Dim wide = std::max(discHeight, w.width + tenths(12));
  return {wide, wide};
}

Rect StripsDrawer::roomOf(const Mark& mark) const {
  const Size s = mark.size;
  const Dim clear = tenths(mark.look == Look::Disc ? 2 : 4);
  return grown({{mark.centre.x - s.w / 2, mark.centre.y - s.h / 2}, s}, clear);
}

/// From just beyond the edge, because the deck itself counts as taken.
Rect StripsDrawer::leaderOf(const Mark& mark) const {
  if (!mark.end) return {mark.centre, {}};
  const Dim shy = tenths(2);
  Point from = *mark.end;
  if (bands_.alongX) from.x += mark.centre.x > from.x ? shy : -shy;
  else from.y += mark.centre.y > from.y ? shy : -shy;
  return around({from, {}}, {mark.centre, {}});
}

std::optional<StripsDrawer::Mark> StripsDrawer::markInside(std::size_t band) const {
  const Size disc = sizeOf(band, Look::Disc);
  const Size clear = bands_.alongX ? Size{disc.w + air * 2, disc.h} : Size{disc.w, disc.h + air * 2};
  const auto at = spot(bands_.bands[band], clear, From::End);
  if (!at) return std::nullopt;
  return Mark{band, {at->x + clear.w / 2, at->y + clear.h / 2}, disc, Look::Disc, std::nullopt};
}

std::optional<StripsDrawer::Mark> StripsDrawer::markOver(std::size_t band,
                                                         const std::vector<Mark>& others) const {
  const Size disc = sizeOf(band, Look::Disc);
  const Band& own = bands_.bands[band];
  const Dim across = sheet_.on(own.to - own.from), wide = bands_.alongX ? disc.h : disc.w;
  if (across * 2 < wide) return std::nullopt;
  const auto line = model::stretches(placed_.outline, middleOf(own), bands_.alongX);
  if (line.empty()) return std::nullopt;
  const Dim low = sheet_.on(line.front().from), high = sheet_.on(line.back().to);
  const Dim half = (bands_.alongX ? disc.w : disc.h) / 2, pitch = half * 2 + air;
  constexpr int columns = 6;
  for (int column = 0; column < columns; ++column) {
    const Dim off = tenths(40) + half + pitch * column;
    const Dim along = leavesHigh_ ? low + off : high - off;
    for (const int aside : {0, 1, -1}) {  // at the edge of the deck it has to give way to the inside
      const Dim over = sheet_.on(middleOf(own)) + (wide - across) / 2 * aside;
      const Mark mark = {band, bands_.alongX ? Point{along, over} : Point{over, along}, disc, Look::Disc, {}};
      const Rect room = roomOf(mark);
      const bool meets = std::any_of(others.begin(), others.end(),
                                     [&](const Mark& other) { return overlap(room, roomOf(other)); });
      if (!meets && sheet_.isOnBoards(placed_, room)) return mark;
    }
  }
  return std::nullopt;
}

std::optional<StripsDrawer::Mark> StripsDrawer::markBeside(std::size_t band, bool isLow, Look look,
                                                           const std::vector<Mark>& others,
                                                           bool mayLean) const {
  const auto middle = middleOf(bands_.bands[band]);
  const auto line = model::stretches(placed_.outline, middle, bands_.alongX);
  if (line.empty()) return std::nullopt;
  const Point end = point(isLow ? line.front().from : line.back().to, middle);
  const Size size = sizeOf(band, look);
  const Dim own = bands_.alongX ? size.w : size.h;
  constexpr int columns = 4;
  const std::vector<Dim> asides = mayLean ? std::vector{Dim{}, tenths(23), tenths(-23)} : std::vector{Dim{}};
  for (const Dim aside : asides)
    for (int column = 0; column < columns; ++column) {
      const Dim off = leaderLength + (own + air) * column + own / 2, by = isLow ? -off : off;
      const Point centre =
          bands_.alongX ? Point{end.x + by, end.y + aside} : Point{end.x + aside, end.y + by};
      const Mark mark = {band, centre, size, look, end};
      const Rect room = roomOf(mark), leader = leaderOf(mark);
      const bool meets = std::any_of(others.begin(), others.end(), [&](const Mark& other) {
        const Rect otherRoom = roomOf(other);
        return overlap(room, otherRoom) || overlap(leader, otherRoom) || overlap(room, leaderOf(other));
      });
      if (!meets && sheet_.isFree(room) && sheet_.isFree(leader)) return mark;
    }
  return std::nullopt;
}

std::optional<std::vector<StripsDrawer::Mark>> StripsDrawer::marksInside() const {
  std::vector<Mark> marks;
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
    const auto mark = markInside(i);
    if (!mark) return std::nullopt;
    marks.push_back(*mark);
  }
  return marks;
}

std::optional<std::vector<StripsDrawer::Mark>> StripsDrawer::marksBeside(
    bool isLow, Look look, bool mayLean, const std::vector<Rect>& away) const {
  std::vector<Mark> marks;
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
    const auto mark = markBeside(i, isLow, look, marks, mayLean);
    if (!mark) return std::nullopt;
    const Rect room = grown(roomOf(*mark), Dim::mm(4));
    if (std::any_of(away.begin(), away.end(), [&](const Rect& other) { return overlap(room, other); }))
      return std::nullopt;
    marks.push_back(*mark);
  }
  return marks;
}

std::vector<StripsDrawer::Mark> StripsDrawer::marksAnywhere(bool& isClear) const {
  std::vector<Mark> marks;
  std::vector<std::size_t> narrow;
  for (std::size_t i = 0; i < bands_.bands.size(); ++i) {
    if (const auto mark = markInside(i)) marks.push_back(*mark);
    else narrow.push_back(i);
  }
  for (const std::size_t i : narrow) {
    auto mark = markOver(i, marks);
    for (const Look look : {Look::Disc, Look::Plain})
      for (const bool isLow : {leavesHigh_, !leavesHigh_})
        if (!mark) mark = markBeside(i, isLow, look, marks, true);
    isClear = isClear && mark;
    if (mark) marks.push_back(*mark);
  }
  return marks;
}

void StripsDrawer::draw(const Mark& mark) {
  const ShapedText w = numeral(sheet_.pen, bands_.numbers[mark.band], mark.look == Look::Disc);
  const Rect room = roomOf(mark);
  if (mark.end) {
    const Stroke thin = {colour(sheet_.pen, "ink"), hundredthsPt(40), {}, false};
    const Dim half = (bands_.alongX ? room.size.w : room.size.h) / 2;
    Point tip = mark.centre;
    if (bands_.alongX) tip.x += mark.centre.x > mark.end->x ? -half : half;
    else tip.y += mark.centre.y > mark.end->y ? -half : half;
    put(sheet_.items, line(*mark.end, tip, thin));
    sheet_.take(leaderOf(mark));
  }
  if (mark.look == Look::Disc)
    put(sheet_.items, circle(mark.centre, mark.size.w / 2, colour(sheet_.pen, "accent"), std::nullopt));
  putCentred(sheet_.items, w, mark.centre);
  sheet_.take(grown(room, tenths(4)));
}

bool StripsDrawer::number(std::vector<Rect>& all) {
  auto marks = marksInside();
  for (const bool mayLean : {false, true})
    for (const Look look : {Look::Disc, Look::Plain})
      for (const auto& away : {all, std::vector<Rect>{}})
        for (const bool isLow : {leavesHigh_, !leavesHigh_})
          if (!marks) marks = marksBeside(isLow, look, mayLean, away);
  bool isClear = true;
  if (!marks) marks = marksAnywhere(isClear);
  for (const auto& mark : *marks) {
    draw(mark);
    all.push_back(roomOf(mark));
  }
  return isClear;
}

}  // namespace drawings
