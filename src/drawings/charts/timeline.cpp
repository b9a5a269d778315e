// Timeline of the days after the last coat: a plank whose hatching thins out as the oil hardens, with a
// station for each thing the customer may do again.
#include "drawings/pen/paths.h"

#include <algorithm>
#include <stdexcept>

namespace drawings {

namespace {

// Down the page, in points: picture, plank, then rows of words.
const Dim pictureHeight = Dim::mm(16);
const Dim underPicture = Dim::pt(58), plankHeight = Dim::pt(21), stripHeight = Dim::pt(7);

class TimelineWriter {
 public:
  TimelineWriter(const std::vector<Milestone>& stations, const Pen& pen, Dim width)
      : stations_(stations), pen_(pen), width_(width), count_(static_cast<std::int64_t>(stations.size())) {
    gutter_ = Dim::milli(pen.theme.gutter);
    pitch_ = (width + gutter_) / count_;
  }

  typeset::Drawing draw(const std::string& caption, const std::string& alt) {
    hasPictures_ = std::any_of(stations_.begin(), stations_.end(),
                               [](const Milestone& s) { return !s.picture.empty(); });
    plankTop_ = hasPictures_ ? underPicture : hundredthsPt(350);
    plankHeight_ = hasPictures_ ? plankHeight : stripHeight;
    drawPlank();
    for (std::int64_t i = 0; i < count_; ++i) drawPicture(i);
    // A row is as high as its highest station, so that all stand level.
    Dim y = plankTop_ + plankHeight_ + Dim::pt(12);
    const auto date = [](const Milestone& s) { return s.date; };
    const Dim narrow = pitch_ - gutter_, wide = pitch_ - Dim::mm(2);
    y += row("table", y, wide, 2, [](const Milestone& s) { return s.weekday; });
    y += row(fits("figure", wide, date) ? "figure" : "total", y, wide, 2, date);
    y += row("what", y, wide, 2, [](const Milestone& s) { return s.what; }) + Dim::milli(pen_.theme.unit);
    y += row("note", y, narrow, 3, [](const Milestone& s) { return s.note; });
    if (!caption.empty()) {
      y += Dim::milli(pen_.theme.unit) * 3;
      for (const auto& l : wrapped(pen_, "note", caption, width_, 3)) {
        put(out_.items, words(pen_, "note", l), {{}, y + baseline("note")});
        y += leading("note");
      }
    }
    out_.size = {width_, y};
    out_.alt = told(alt);
    return std::move(out_);
  }

 private:
  /// The theme's styles, and 'what': bold in the accent as large as a table; dates are bolder than figures.
  typeset::StyledText span(const std::string& style, const std::string& text) const {
    typeset::StyledText s = typeset::spanIn(pen_.theme, style == "what" ? "table" : style, text);
    if (style == "figure" || style == "total") s.face = model::Face::TextBold;
    if (style == "what") {
      s.face = model::Face::SansBold;
      s.colour = colour(pen_, "accent");
    }
    return s;
  }
  const model::TextStyle& styleOf(const std::string& style) const {
    return pen_.theme.styles.at(style == "what" ? "table" : style);
  }
  Dim baseline(const std::string& style) const { return Dim::milli(styleOf(style).baseline); }
  Dim leading(const std::string& style) const { return Dim::milli(styleOf(style).leading); }
  Dim left(std::int64_t station) const { return pitch_ * station; }

  /// The last station ends with the plank, so it has no gutter to lean into.
  Dim roomOf(std::int64_t i, Dim room) const {
    return i + 1 < count_ ? room : std::min(room, width_ - left(i));
  }

  template <class Field>
  bool fits(const std::string& style, Dim room, const Field& of) const {
    for (std::int64_t i = 0; i < count_; ++i)
      if (typeset::width(pen_.fonts, span(style, of(stations_[static_cast<std::size_t>(i)]))) >
          roomOf(i, room))
        return false;
    return true;
  }

  template <class Field>
  Dim row(const std::string& style, Dim y, Dim room, std::size_t most, const Field& of) {
    std::size_t lines = 1;
    for (std::int64_t i = 0; i < count_; ++i) {
      Dim base = y + baseline(style);
      const auto parts =
          wrapped(pen_, span(style, of(stations_[static_cast<std::size_t>(i)])), roomOf(i, room), most);
      for (const auto& part : parts) {
        put(out_.items, words(pen_, span(style, part)), {left(i), base});
        base += leading(style);
      }
      lines = std::max(lines, parts.size());
    }
    return leading(style) * static_cast<std::int64_t>(lines);
  }

  void drawPicture(std::int64_t i) {
    const auto& name = stations_[static_cast<std::size_t>(i)].picture;
    if (name.empty()) return;
    auto picture = sign(pen_.signs, name, pictureHeight);
    if (!picture) throw std::runtime_error(pen_.signs + ": there is no sign '" + name + "'");
    shift(picture->items, {left(i), {}});
    for (auto& item : picture->items) out_.items.push_back(std::move(item));
  }

  void drawPlank() {
    const auto ink = colour(pen_, "ink"), tint = colour(pen_, "tint");
    const Rect plank = {{{}, plankTop_}, {width_, plankHeight_}};
    put(out_.items, box(plank, tint, std::nullopt));
    // Lines from 0.6 mm apart to 2.9 mm, then none: by the third station the oil is hard enough for
    // furniture.
    const std::int64_t soft = left(std::min<std::int64_t>(3, std::max<std::int64_t>(1, count_ - 2))).raw;
    Path grain;
    for (Dim x; hasPictures_ && x.raw < soft;) {
      moveTo(grain, {x, plank.at.y});
      lineTo(grain, {x, bottom(plank)});
      const Dim wider = {base::mulDiv(base::mulDiv(tenths(23).raw, x.raw, soft, base::Round::HalfUp), x.raw,
                                      soft, base::Round::HalfUp)};
      x += tenths(6) + wider;
    }
    grain.stroke = Stroke{ink, hundredthsPt(50), {}, false};
    if (hasPictures_) put(out_.items, std::move(grain));
    for (std::int64_t i = 0; i + 1 < count_; ++i) {
      const auto& gap = stations_[static_cast<std::size_t>(i)].gap;
      if (gap.empty()) continue;
      const ShapedText w = words(pen_, "drawing", gap);
      const Dim wide = w.width + tenths(24);
      const Point middle = {left(i) + pitch_ / 2, plankTop_ + plankHeight_ / 2};
      put(out_.items, box({{middle.x - wide / 2, plankTop_}, {wide, plankHeight_}}, tint, std::nullopt));
      putCentred(out_.items, w, middle);
    }
    put(out_.items, box(plank, std::nullopt, Stroke{ink, hundredthsPt(100), {}, false}));
    const Stroke mark = {colour(pen_, "accent"), hundredthsPt(160), {}, false};
    for (std::int64_t i = 0; i < count_; ++i) {
      const Dim x = left(i) + hundredthsPt(80);  // its left side stands over the words'
      put(out_.items,
          line({x, plankTop_ - hundredthsPt(350)}, {x, plankTop_ + plankHeight_ + Dim::pt(7)}, mark));
    }
  }

  std::string told(const std::string& alt) const {
    std::string text = alt;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
      const auto& s = stations_[i];
      text += (i == 0 ? " " : "; ") + s.weekday + " " + s.date + ", " + s.what;
      if (!s.note.empty()) text += ", " + s.note;
      if (!s.gap.empty()) text += "; " + pen_.language("timeline.then", {{"gap", s.gap}});
    }
    return text + ".";
  }

  const std::vector<Milestone>& stations_;
  const Pen& pen_;
  Dim width_;
  std::int64_t count_;
  Dim gutter_, pitch_, plankTop_, plankHeight_;
  bool hasPictures_ = false;
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing timeline(const std::vector<Milestone>& stations, const Pen& pen, Dim width,
                          const std::string& caption, const std::string& alt) {
  if (stations.empty()) return {};
  return TimelineWriter(stations, pen, width).draw(caption, alt);
}

}  // namespace drawings
