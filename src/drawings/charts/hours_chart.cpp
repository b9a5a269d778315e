// The hours of a day for each deck: fit for a coat or why not, with the planned coats framed.
#include "drawings/charts/hours_runs.h"
#include "drawings/charts/surface_curve.h"
#include "model/names.h"

#include <algorithm>
#include <functional>
#include <map>

namespace drawings {

namespace {

class HoursWriter {
 public:
  HoursWriter(const HoursDay& day, const Pen& pen, Dim width)
      : day_(day), pen_(pen), unit_(Dim::milli(pen.theme.unit)), width_(width) {
    left_ = Dim::milli(pen.theme.sideWidth) + Dim::milli(pen.theme.gutter);
  }

  typeset::Drawing draw() {
    putClock();
    const Dim top = y_;
    rowsFrom_ = out_.items.size();
    putCurve();
    y_ += unit_;
    putHead();
    const Dim rowsTop = y_;
    for (const auto& row : day_.rows) putRow(row);
    putGrid(top);
    putSun(rowsTop);
    putLegend();
    out_.size = {width_, y_};
    out_.alt = alt();
    return std::move(out_);
  }

 private:
  Dim on(int minutes) const {
    const int from = day_.from * 60, all = (day_.until - day_.from) * 60;
    return left_ + (width_ - left_) * std::clamp(minutes - from, 0, all) / all;
  }
  void putCurve() {
    const Dim high = putSurface(
        out_.items, day_, pen_, [&](int minutes) { return on(minutes); }, left_, width_, y_);
    if (high == Dim{}) return;
    put(out_.items, words(pen_, "rowHead", pen_.language("hours_chart.surface")),
        {{}, y_ + unit_ + rise("rowHead")});
    y_ += high + unit_;
  }

  void putHead() {
    put(out_.items, words(pen_, "rowHead", pen_.language("hours_chart.head")), {{}, y_ + rise("rowHead")});
    y_ += leading("rowHead");
  }
  Dim rise(const char* style) const { return Dim::milli(pen_.theme.styles.at(style).rise); }
  Dim leading(const char* style) const { return Dim::milli(pen_.theme.styles.at(style).leading); }
  std::string reason(model::WeatherLimit gate) const {
    return pen_.language("hours_chart.reasons." + std::string(model::nameOf(gate)));
  }
  std::string shortReason(model::WeatherLimit gate) const {
    return pen_.language("hours_chart.shorts." + std::string(model::nameOf(gate)));
  }

  /// Each label stands over its hour; the last one is left out where it would leave the drawing.
  void putClock() {
    const Dim base = y_ + rise("drawing");
    for (std::size_t i = 0; i < day_.clock.size(); ++i) {
      const ShapedText w = words(pen_, "drawing", day_.clock[i]);
      const Dim x = on((day_.from + 2 * static_cast<int>(i)) * 60);
      if (x + w.width / 2 <= width_) put(out_.items, w, {x - w.width / 2, base});
    }
    y_ += leading("drawing");
  }

  /// Hour lines under everything, from the clock to the last row.
  void putGrid(Dim top) {
    Path lines;
    for (int hour = day_.from; hour <= day_.until; ++hour) {
      moveTo(lines, {on(hour * 60), top});
      lineTo(lines, {on(hour * 60), y_});
    }
    lines.stroke = Stroke{colour(pen_, "rule"), hundredthsPt(30), {}, false};
    out_.items.insert(out_.items.begin() + static_cast<std::ptrdiff_t>(rowsFrom_),
                      {std::move(lines), typeset::artifact});
  }

  void putRow(const HoursRow& row) {
    const Dim high = unit_ * 4;
    const auto lines = wrapped(pen_, "table", row.name, left_ - Dim::mm(2), 2);
    const Dim whole = std::max(high, leading("table") * static_cast<std::int64_t>(lines.size()));
    const Dim top = y_ + (whole - high) / 2;
    Dim base = y_ + (whole - leading("table") * static_cast<std::int64_t>(lines.size())) / 2 + rise("table");
    for (const auto& l : lines) {
      put(out_.items, words(pen_, "table", l), {{}, base});
      base += leading("table");
    }
    for (const auto& run : runsOf(row.hours, day_)) {
      const Rect part = {{on(run.at.from), top}, {on(run.at.until) - on(run.at.from), high}};
      put(out_.items, box(part, colour(pen_, "white"), std::nullopt));
      putHatched(out_.items, part, hatchOf(run), pen_);
      if (run.isFit) isSomeFit_ = true;
      else putReason(run, row, part);
    }
    const Dim over = tenths(4);
    for (const auto& coat : row.coats) {
      putFrame(coat.number, {{on(coat.from), top - over}, {on(coat.until) - on(coat.from), high + over * 2}});
      coats_.emplace(coat.number, coat.name);
    }
    y_ += whole + unit_;
  }

  /// In words where they have room beside the planned coats, else in one word; else the legend tells.
  void putReason(const Run& run, const HoursRow& row, const Rect& part) {
    const Hatch hatch = hatchOf(run);
    Told& told = told_[hatch];
    const std::string text = run.reason ? reason(*run.reason) : pen_.language("hours_chart.part_hour");
    if (std::find(told.reasons.begin(), told.reasons.end(), text) == told.reasons.end())
      told.reasons.push_back(text);
    const Span free = freePart(run, row.coats);
    const Rect room = {{on(free.from), part.at.y}, {on(free.until) - on(free.from), part.size.h}};
    const std::size_t before = out_.items.size();
    if (run.reason) {
      putOnPatch(out_.items, words(pen_, "drawing", text), room);
      const ShapedText w = words(pen_, "drawing", shortReason(*run.reason));
      const Dim air = tenths(5);
      if (out_.items.size() == before && w.width + air * 2 < room.size.w)
        putOn(w, {room.at.x + room.size.w / 2, room.at.y + room.size.h / 2}, air);
    }
    constexpr int visible = 5;  // minutes: less is no wider than the line of sunrise
    if (out_.items.size() == before && run.at.until - run.at.from >= visible) told.isNeeded = true;
  }

  void putOn(const ShapedText& w, Point middle, Dim air) {
    put(out_.items, box({{middle.x - w.width / 2 - air, middle.y - w.height / 2 - air},
                         {w.width + air * 2, w.height + air * 2}},
                        colour(pen_, "white"), std::nullopt));
    putCentred(out_.items, w, middle);
  }

  /// A frame with its number inside, or beside it where it is too narrow.
  void putFrame(int coat, const Rect& frame) {
    const Dim air = tenths(6), thick = hundredthsPt(200);
    const ShapedText number = boldWords(pen_, "drawing", std::to_string(coat));
    const Dim wide = number.width + air * 2 + thick;
    Dim middle = frame.at.x + frame.size.w / 2;
    if (frame.size.w < wide) {
      const bool hasRoom = frame.at.x - wide >= left_;  // behind a coat the hours may not be fit
      middle = hasRoom ? frame.at.x - wide / 2 : right(frame) + wide / 2;
    }
    putOn(number, {middle, frame.at.y + frame.size.h / 2}, air);
    put(out_.items, box(frame, std::nullopt, Stroke{colour(pen_, "ink"), thick, {}, false}));
  }

  /// Ticks that hang from the rows, with the times of sunrise and sunset.
  void putSun(Dim top) {
    const Stroke stroke = {colour(pen_, "accent"), hundredthsPt(120), {}, false};
    std::size_t i = 0;
    bool isShown = false;
    for (const auto& minutes : {day_.sunrise, day_.sunset}) {
      if (!minutes) continue;
      const auto& text = day_.sun.at(i++);
      if (*minutes < day_.from * 60 || *minutes > day_.until * 60) continue;
      const Dim x = on(*minutes);
      isShown = true;
      put(out_.items, line({x, top}, {x, y_ + unit_}, stroke));
      const ShapedText w = words(pen_, "drawing", text);
      const Dim at = std::clamp(x - w.width / 2, left_, width_ - w.width);
      put(out_.items, w, {at, y_ + unit_ + tenths(5) + rise("drawing")});
    }
    if (isShown) y_ += unit_ + tenths(5) + leading("drawing");
  }

  /// What is drawn and does not say itself what it is.
  void putLegend() {
    y_ += unit_;
    legendX_ = left_;
    const auto hatched = [&](Hatch hatch) {
      return [this, hatch](const Rect& r) { putHatched(out_.items, r, hatch, pen_); };
    };
    std::vector<std::pair<Hatch, std::string>> needed;
    for (const auto& [hatch, told] : told_) {
      if (!told.isNeeded) continue;
      std::string text;
      for (const auto& r : told.reasons) text += (text.empty() ? "" : ", ") + r;
      needed.push_back({hatch, std::move(text)});
    }
    if (isSomeFit_) putEntry(hatched(Hatch::Wood), pen_.language("hours_chart.fit"));
    for (const auto& [number, name] : coats_) {
      const auto frame = [&, n = number](const Rect& r) { putFrame(n, r); };
      putEntry(frame, pen_.language("hours_chart.planned", {{"coat", name}}));
    }
    std::string unfit = told_.empty() ? "" : pen_.language("hours_chart.unfit");
    if (!unfit.empty()) putEntry({}, unfit, needed.empty() ? Dim{} : widthOf(needed.front().second));
    for (const auto& [hatch, text] : needed) putEntry(hatched(hatch), text);
    y_ += unit_ * 4;
  }

  static constexpr Dim swatchWidth = Dim::mm(6), swatchAir = tenths(12), entryAir = Dim::mm(4);

  Dim widthOf(const std::string& text) const {
    return swatchWidth + swatchAir + words(pen_, "note", text).width;
  }

  /// A swatch and its words, on the next line where this one is full. 'next' is the width of what it keeps
  /// with.
  void putEntry(const std::function<void(const Rect&)>& swatch, const std::string& text, Dim next = {}) {
    const Dim pitch = unit_ * 4;
    const Size size = swatch ? Size{swatchWidth, tenths(30)} : Size{};
    const Dim air = swatch ? swatchAir : Dim{};
    const ShapedText w = words(pen_, "note", text);
    const Dim wide = size.w + air + w.width + (next > Dim{} ? entryAir + next : Dim{});
    if (legendX_ > left_ && legendX_ + wide > width_) {
      legendX_ = left_;
      y_ += pitch;
    }
    const Dim middle = y_ + pitch / 2;
    if (swatch) swatch({{legendX_, middle - size.h / 2}, size});
    put(out_.items, w, {legendX_ + size.w + air, middle + w.height / 2});
    legendX_ += size.w + air + w.width + entryAir;
  }

  std::string alt() const {
    std::string text = surfaceAlt() + pen_.language("hours_chart.alt");
    for (std::size_t i = 0; i < day_.rows.size(); ++i) {
      text += (i == 0 ? " " : "; ") + day_.rows[i].name + ": ";
      bool isFirst = true;
      for (const auto& run : runsOf(day_.rows[i].hours, day_)) {
        text += (isFirst ? "" : ", ") + pen_.language("hours_chart.alt_run", {{"from", clockOf(run.at.from)},
                                                                              {"to", clockOf(run.at.until)},
                                                                              {"what", wordsOf(run)}});
        isFirst = false;
      }
      for (const auto& coat : day_.rows[i].coats)
        text += ", " + pen_.language("hours_chart.alt_coat", {{"coat", coat.name},
                                                              {"from", base::isoClock(coat.from)},
                                                              {"to", base::isoClock(coat.until)}});
    }
    for (const auto& sun : day_.sun) text += "; " + sun;
    return text + ".";
  }
  /// 'Board surface, at most: A  Landing 45 °C; limit 40 °C; dew point 7 °C. '
  std::string surfaceAlt() const {
    std::string decks;
    for (const auto& row : day_.rows)
      if (!row.warmest.empty()) decks += (decks.empty() ? " " : ", ") + row.name + " " + row.warmest;
    if (decks.empty()) return {};
    return pen_.language("hours_chart.alt_surface") + decks + "; " + day_.limitWords + "; " + day_.dewWords +
           ". ";
  }
  std::string wordsOf(const Run& run) const {
    if (run.isFit) return pen_.language("hours_chart.fit");
    return run.reason ? reason(*run.reason) : pen_.language("hours_chart.part_hour");
  }
  /// Full hours as '8'.
  static std::string clockOf(int minutes) {
    return minutes % 60 == 0 ? std::to_string(minutes / 60) : base::isoClock(minutes);
  }

  /// What a hatch stands for, and whether some of it has no room for a word of its own.
  struct Told {
    std::vector<std::string> reasons;
    bool isNeeded = false;
  };

  const HoursDay& day_;
  const Pen& pen_;
  Dim unit_, left_, width_, y_;
  std::size_t rowsFrom_ = 0;
  Dim legendX_;
  bool isSomeFit_ = false;
  std::map<Hatch, Told> told_;        // of the hours that are not fit
  std::map<int, std::string> coats_;  // names of the planned ones by number
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing hoursChart(const HoursDay& day, const Pen& pen, Dim width) {
  if (day.rows.empty()) return {};
  return HoursWriter(day, pen, width).draw();
}

}  // namespace drawings
