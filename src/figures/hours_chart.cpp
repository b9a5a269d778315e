// The hours of a day for each deck: fit for a coat or why not, with the planned coats framed.
#include "figures/hatch.h"
#include "figures/surface_curve.h"
#include "model/names.h"

#include <algorithm>

namespace figures {

namespace {

/// The first reason speaks; that it is dark outweighs the rest.
model::Gate reasonOf(const model::Hour& hour) {
  const auto& all = hour.reasons;
  const bool isDark = std::find(all.begin(), all.end(), model::Gate::Dark) != all.end();
  return isDark || all.empty() ? model::Gate::Dark : all.front();
}

/// What is too hot leans one way, what is too wet the other.
Hatch hatchOf(model::Gate gate) {
  switch (gate) {
    case model::Gate::AirHot:
    case model::Gate::BoardsHot:
      return Hatch::Slash;
    case model::Gate::Dew:
    case model::Gate::DewBefore:
    case model::Gate::Damp:
    case model::Gate::Rain:
    case model::Gate::Wet:
    case model::Gate::RainBefore:
    case model::Gate::Moisture:
      return Hatch::Backslash;
    case model::Gate::AirCold:
    case model::Gate::Wind:
    case model::Gate::Unknown:
      return Hatch::Upright;
    case model::Gate::Dark:
      return Hatch::Level;
  }
  throw std::logic_error("internal error: no such gate");
}

/// Hours in a row that are alike.
struct Run {
  int from = 0, until = 0;  // minutes of the clock
  std::optional<model::Gate> reason;
};

std::vector<Run> runsOf(const std::vector<model::Hour>& hours, int from, int until) {
  std::vector<Run> runs;
  for (const auto& hour : hours) {
    const int start = std::max(hour.at.minutes, from), end = std::min(hour.at.minutes + 60, until);
    if (start >= end) continue;
    const auto reason = hour.isFit ? std::nullopt : std::optional(reasonOf(hour));
    if (!runs.empty() && runs.back().until == start && runs.back().reason == reason) runs.back().until = end;
    else runs.push_back({start, end, reason});
  }
  return runs;
}

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
  std::string reason(model::Gate gate) const {
    return pen_.language("hours_chart.reasons." + std::string(model::nameOf(gate)));
  }
  std::string letter(model::Gate gate) const {
    return pen_.language("hours_chart.letters." + std::string(model::nameOf(gate)));
  }

  void putClock() {
    const Dim base = y_ + rise("drawing");
    for (std::size_t i = 0; i < day_.clock.size(); ++i) {
      const Words w = words(pen_, "drawing", day_.clock[i]);
      const Dim x = on((day_.from + 2 * static_cast<int>(i)) * 60);
      put(out_.items, w, {std::min(x - w.width / 2, width_ - w.width), base});
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
    for (const auto& run : runsOf(row.hours, day_.from * 60, day_.until * 60)) {
      const Rect part = {{on(run.from), top}, {on(run.until) - on(run.from), high}};
      put(out_.items, box(part, colour(pen_, "white"), std::nullopt));
      putHatched(out_.items, part, run.reason ? hatchOf(*run.reason) : Hatch::Wood, pen_);
      if (run.reason) putReason(*run.reason, part);
    }
    for (const auto& coat : row.coats) {
      const Dim over = tenths(4);
      const Rect frame = {{on(coat.from), top - over}, {on(coat.until) - on(coat.from), high + over * 2}};
      put(out_.items, box(frame, std::nullopt, Stroke{colour(pen_, "ink"), hundredthsPt(200), {}, false}));
      for (const auto& w : {boldWords(pen_, "drawing", coat.name),
                            boldWords(pen_, "drawing", coat.name.substr(0, coat.name.find(' ')))}) {
        const std::size_t before = out_.items.size();
        putOnPatch(out_.items, w, frame);
        if (out_.items.size() > before) break;
      }
    }
    y_ += whole + unit_;
  }

  /// In words where they have room, else as a letter.
  void putReason(model::Gate gate, const Rect& part) {
    const std::size_t before = out_.items.size();
    putOnPatch(out_.items, words(pen_, "drawing", reason(gate)), part);
    if (out_.items.size() > before) return;
    const Words w = words(pen_, "drawing", letter(gate));
    const Dim air = tenths(5);
    const Point middle = {part.at.x + part.size.w / 2, part.at.y + part.size.h / 2};
    put(out_.items, box({{middle.x - w.width / 2 - air, middle.y - w.height / 2 - air},
                         {w.width + air * 2, w.height + air * 2}},
                        colour(pen_, "white"), std::nullopt));
    putCentred(out_.items, w, middle);
    if (std::find(letters_.begin(), letters_.end(), gate) == letters_.end()) letters_.push_back(gate);
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
      const Words w = words(pen_, "drawing", text);
      const Dim at = std::clamp(x - w.width / 2, left_, width_ - w.width);
      put(out_.items, w, {at, y_ + unit_ + tenths(5) + rise("drawing")});
    }
    if (isShown) y_ += unit_ + tenths(5) + leading("drawing");
  }

  void putLegend() {
    std::string text = pen_.language("hours_chart.legend");
    for (const auto gate : letters_) text += "; " + letter(gate) + "\u00a0" + reason(gate);
    y_ += unit_;
    for (const auto& l : wrapped(pen_, "note", text + ".", width_ - left_, 4)) {
      put(out_.items, words(pen_, "note", l), {left_, y_ + rise("note")});
      y_ += leading("note");
    }
  }

  std::string alt() const {
    std::string text = surfaceAlt() + pen_.language("hours_chart.alt");
    for (std::size_t i = 0; i < day_.rows.size(); ++i) {
      text += (i == 0 ? " " : "; ") + day_.rows[i].name + ": ";
      bool isFirst = true;
      for (const auto& run : runsOf(day_.rows[i].hours, day_.from * 60, day_.until * 60)) {
        text +=
            (isFirst ? "" : ", ") +
            pen_.language("hours_chart.alt_run",
                          {{"from", hourOf(run.from)},
                           {"to", hourOf(run.until)},
                           {"what", run.reason ? reason(*run.reason) : pen_.language("hours_chart.fit")}});
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
  static std::string hourOf(int minutes) { return std::to_string(minutes / 60); }

  const HoursDay& day_;
  const Pen& pen_;
  Dim unit_, left_, width_, y_;
  std::size_t rowsFrom_ = 0;
  std::vector<model::Gate> letters_;  // shown without words
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing hoursChart(const HoursDay& day, const Pen& pen, Dim width) {
  if (day.rows.empty()) return {};
  return HoursWriter(day, pen, width).draw();
}

}  // namespace figures
