// The days of a job at a glance: what is done on each, when the boards dry, when nobody comes.
#include "drawings/pen/hatch.h"

#include <algorithm>

namespace drawings {

namespace {

class GlanceWriter {
 public:
  GlanceWriter(const std::vector<GlanceDay>& days, const Pen& pen, Dim width)
      : days_(days), pen_(pen), width_(width) {
    const auto count = static_cast<std::int64_t>(days.size());
    const std::int64_t most = width.raw / Dim::mm(9).raw, rows = (count + most - 1) / most;
    perRow_ = static_cast<std::size_t>((count + rows - 1) / rows);
    each_ = std::min(width / static_cast<std::int64_t>(perRow_), Dim::mm(24));
  }

  typeset::Drawing draw() {
    for (std::size_t from = 0; from < days_.size(); from += perRow_) {
      if (from > 0) y_ += Dim::pt(6);
      putRow(from, std::min(from + perRow_, days_.size()));
    }
    out_.size = {width_, y_};
    out_.alt = alt();
    return std::move(out_);
  }

 private:
  static constexpr Dim barHeight = Dim::pt(30);

  bool isSpan(std::size_t i) const {
    return days_[i].kind == GlanceDay::Kind::Drying || days_[i].kind == GlanceDay::Kind::Off;
  }

  void putRow(std::size_t from, std::size_t until) {
    const auto on = [&](std::size_t i) { return each_ * static_cast<std::int64_t>(i - from); };
    for (std::size_t i = from; i < until; ++i)
      if (!days_[i].month.empty() || i == from) {
        const ShapedText w = legible(pen_, "rowHead", days_[i].month);
        if (w.width > Dim{}) put(out_.items, w, {std::min(on(i), width_ - w.width), y_ + Dim::pt(9)});
      }
    y_ += Dim::pt(14);
    for (std::size_t i = from; i < until; ++i) {
      const Dim middle = on(i) + each_ / 2;
      putCentred(out_.items, legible(pen_, "drawing", days_[i].weekday), {middle, y_ + Dim::pt(5)});
      putCentred(out_.items, sized(pen_, Dim::pt(13), days_[i].number, !isSpan(i)),
                 {middle, y_ + Dim::pt(19)});
    }
    y_ += Dim::pt(29);
    for (std::size_t i = from; i < until;) {
      std::size_t end = i + 1;
      while (isSpan(i) && end < until && days_[end].kind == days_[i].kind && days_[end].what == days_[i].what)
        ++end;
      putCell(days_[i], {{on(i), y_}, {on(end) - on(i), barHeight}});
      i = end;
    }
    y_ += barHeight;
    for (std::size_t i = from; i < until; ++i) {
      const ShapedText w = legible(pen_, "drawing", days_[i].where, true);
      if (w.width <= each_) putCentred(out_.items, w, {on(i) + each_ / 2, y_ + Dim::pt(8)});
    }
    y_ += Dim::pt(14);
  }

  void putCell(const GlanceDay& day, const Rect& cell) {
    const bool isDark = day.kind == GlanceDay::Kind::Coat;
    put(out_.items, box(cell, colour(pen_, isDark ? "ink" : "white"), std::nullopt));
    if (day.kind == GlanceDay::Kind::Drying) putHatched(out_.items, cell, Hatch::Dots, pen_);
    if (day.kind == GlanceDay::Kind::Off) putHatched(out_.items, cell, Hatch::Slash, pen_);
    const bool isHatched = day.kind == GlanceDay::Kind::Drying || day.kind == GlanceDay::Kind::Off;
    put(out_.items,
        box(cell, std::nullopt, Stroke{colour(pen_, isDark ? "white" : "ink"), Dim::pt(1), {}, false}));
    for (const auto& what : day.what) {
      const auto lines = linesIn(what, cell.size.w - Dim::mm(1));
      if (lines.empty()) continue;
      Dim y = cell.at.y + (cell.size.h - Dim::pt(11) * static_cast<std::int64_t>(lines.size())) / 2 +
              Dim::pt(11) / 2;
      for (const auto& text : lines) {
        auto span = legibleSpan(pen_, "drawing", text);
        span.face = model::Face::SansBold;
        if (isDark) span.colour = colour(pen_, "white");
        const ShapedText w = words(pen_, span);
        const Point middle = {cell.at.x + cell.size.w / 2, y};
        if (isHatched)
          put(out_.items, box({{middle.x - w.width / 2 - tenths(10), y - w.height / 2 - tenths(10)},
                               {w.width + tenths(20), w.height + tenths(20)}},
                              colour(pen_, "white"), std::nullopt));
        putCentred(out_.items, w, middle);
        y += Dim::pt(11);
      }
      return;
    }
  }

  /// Two lines at most; none where the words have no room.
  std::vector<std::string> linesIn(const std::string& text, Dim room) const {
    auto span = legibleSpan(pen_, "drawing", text);
    span.face = model::Face::SansBold;
    const auto lines = wrapped(pen_, span, room, 2);
    for (const auto& line : lines) {
      span.text = line;
      if (typeset::width(pen_.fonts, span) > room) return {};
    }
    return lines;
  }

  std::string alt() const {
    std::string text = pen_.language("glance.alt");
    for (std::size_t i = 0; i < days_.size(); ++i) {
      const auto& day = days_[i];
      text += (i == 0 ? " " : "; ") + day.weekday + " " + day.number + ": " +
              (day.what.empty() ? "" : day.what.front()) + (day.where.empty() ? "" : " (" + day.where + ")");
    }
    return text + ".";
  }

  const std::vector<GlanceDay>& days_;
  const Pen& pen_;
  Dim width_, each_, y_;
  std::size_t perRow_ = 1;
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing glanceChart(const std::vector<GlanceDay>& days, const Pen& pen, Dim width) {
  if (days.empty()) return {};
  return GlanceWriter(days, pen, width).draw();
}

}  // namespace drawings
