// The hours of a day: fit for a coat or why not, and under the same clock what each of the crew does.
#include "drawings/charts/hours_runs.h"
#include "drawings/pen/hatch.h"
#include "model/names.h"

#include <algorithm>

namespace drawings {

namespace {

class HoursWriter {
 public:
  HoursWriter(const HoursDay& day, const Pen& pen, Dim width) : day_(day), pen_(pen), width_(width) {
    left_ = Dim::milli(pen.theme.sideWidth) + Dim::milli(pen.theme.gutter);
  }

  typeset::Drawing draw() {
    putClock();
    for (const auto& row : day_.rows) putRow(row);
    for (const auto& person : day_.people) putPerson(person);
    out_.size = {width_, y_};
    out_.alt = alt();
    return std::move(out_);
  }

 private:
  Dim on(int minutes) const {
    const int from = day_.from * 60, all = (day_.until - day_.from) * 60;
    return left_ + (width_ - left_) * std::clamp(minutes - from, 0, all) / all;
  }
  Stroke stroke(std::int64_t hundredths) const {
    return {colour(pen_, "ink"), hundredthsPt(hundredths), {}, false};
  }

  /// Each label stands over its hour; those at the ends keep inside the drawing.
  void putClock() {
    const Dim base = Dim::pt(9);
    Dim free = left_ - Dim::mm(3);
    for (std::size_t i = 0; i < day_.clock.size(); ++i) {
      const ShapedText w = legible(pen_, "table", day_.clock[i], i % 2 == 0);
      const Dim x = std::min(on((day_.from + static_cast<int>(i)) * 60) - w.width / 2, width_ - w.width);
      if (x < free) continue;
      put(out_.items, w, {x, base});
      free = x + w.width + Dim::mm(1);
    }
    y_ = Dim::pt(13);
  }

  /// Hour lines behind the bars of one row.
  void putGrid(Dim top, Dim end) {
    Path lines;
    for (int hour = day_.from; hour <= day_.until; ++hour) {
      moveTo(lines, {on(hour * 60), top});
      lineTo(lines, {on(hour * 60), end});
    }
    lines.stroke = Stroke{colour(pen_, "rule"), hundredthsPt(30), {}, false};
    out_.items.push_back({std::move(lines), typeset::artifact});
  }

  void putName(const std::string& name, const char* style, Dim top, Dim high) {
    const auto lines = wrapped(pen_, legibleSpan(pen_, style, name), left_ - Dim::mm(2), 2);
    const Dim leading = Dim::pt(12);
    Dim base = top + (high - leading * static_cast<std::int64_t>(lines.size())) / 2 + Dim::pt(9);
    for (const auto& line : lines) {
      put(out_.items, legible(pen_, style, line), {{}, base});
      base += leading;
    }
  }

  void putRow(const HoursRow& row) {
    const Dim high = Dim::pt(day_.rows.size() > 2 ? 17 : 20);
    putName(row.name, "rowHead", y_, high);
    for (const auto& part : partsOf(row.hours, day_)) {
      const Rect box = {{on(part.at.from), y_}, {on(part.at.until) - on(part.at.from), high}};
      if (box.size.w <= Dim{}) continue;
      put(out_.items, drawings::box(box, colour(pen_, "white"), std::nullopt));
      if (!isFit(part.kind)) putHatched(out_.items, box, hatchOf(part.kind), pen_);
      putPart(part, box);
    }
    putFrames(row, high);
    y_ += high + Dim::pt(4);
  }

  /// Fit hours in a heavy frame, the last start as a broken line in it.
  void putFrames(const HoursRow& row, Dim high) {
    std::optional<Span> fit;
    const auto close = [&] {
      if (fit)
        put(out_.items,
            box({{on(fit->from), y_ - Dim::pt(1)}, {on(fit->until) - on(fit->from), high + Dim::pt(2)}},
                std::nullopt, stroke(240)));
      fit.reset();
    };
    for (const auto& part : partsOf(row.hours, day_)) {
      if (!isFit(part.kind)) {
        close();
        continue;
      }
      if (part.kind == HoursPart::Kind::ToFinish && fit) {
        Stroke broken = stroke(120);
        broken.dash = {Dim::pt(3), Dim::pt(2)};
        put(out_.items, line({on(part.at.from), y_}, {on(part.at.from), y_ + high}, broken));
      }
      fit = fit ? Span{fit->from, part.at.until} : part.at;
    }
    close();
  }

  void putPart(const HoursPart& part, const Rect& box) {
    const Dim air = Dim::mm(1);
    for (const auto& text : {wordsOf(part), shortWordsOf(part)}) {
      const bool isLarge = part.kind == HoursPart::Kind::Fit;
      for (const bool large : {isLarge, false}) {
        auto span = legibleSpan(pen_, "drawing", text);
        span.face = model::Face::SansBold;
        if (large) span.size = Dim::pt(13);
        const ShapedText w = words(pen_, span);
        if (w.width + air * 2 > box.size.w) continue;
        const Point middle = {box.at.x + box.size.w / 2, box.at.y + box.size.h / 2};
        put(out_.items, drawings::box({{middle.x - w.width / 2 - air / 2, middle.y - w.height / 2 - air},
                                       {w.width + air, w.height + air * 2}},
                                      colour(pen_, "white"), std::nullopt));
        putCentred(out_.items, w, middle);
        return;
      }
    }
  }

  void putPerson(const PersonLane& person) {
    const Dim high = Dim::pt(person.bars.empty() ? 10 : 13), top = y_ + Dim::pt(1);
    putName(person.name, "rowHead", top, high);
    std::string notes;
    if (person.bars.empty()) {
      notes = person.text;
    } else {
      putGrid(y_, top + high + Dim::pt(2));
      for (const auto& bar : person.bars)
        if (!putBar(bar, top, high) && !bar.note.empty()) notes += (notes.empty() ? "" : ", ") + bar.note;
    }
    y_ = top + high + Dim::pt(2);
    if (notes.empty()) return;
    const Dim after = person.bars.empty() ? left_ : on(person.bars.back().until) + Dim::mm(1);
    const ShapedText whole = legible(pen_, "drawing", notes);
    if (after + whole.width + Dim::mm(1) <= width_) {
      const Dim base = top + high / 2 + whole.height / 2, air = Dim::mm(1) / 2;
      put(out_.items,
          box({{after - air, base - whole.height - air}, {whole.width + air * 2, whole.height + air * 2}},
              colour(pen_, "white"), std::nullopt));
      put(out_.items, whole, {after, base});
      return;
    }
    const Dim leading = Dim::pt(11);
    constexpr std::size_t most = 6;
    if (person.bars.empty()) y_ = top;
    for (const auto& line : wrapped(pen_, legibleSpan(pen_, "drawing", notes), width_ - left_, most)) {
      put(out_.items, legible(pen_, "drawing", line), {left_, y_ + Dim::pt(8)});
      y_ += leading;
    }
    y_ += Dim::pt(2);
  }

  /// Whether it tells all its words.
  bool putBar(const PersonBar& bar, Dim top, Dim high) {
    const Rect box = {{on(bar.from), top}, {on(bar.until) - on(bar.from), high}};
    put(out_.items, drawings::box(box, colour(pen_, bar.isWork ? "tint" : "white"), stroke(70)));
    for (const auto& text : {bar.words, bar.word}) {
      const ShapedText w = legible(pen_, "drawing", text, bar.isWork);
      if (w.width + Dim::mm(1) > box.size.w) continue;
      putCentred(out_.items, w, {box.at.x + box.size.w / 2, box.at.y + box.size.h / 2});
      return text == bar.words;
    }
    return false;
  }

  std::string wordsOf(const HoursPart& part) const {
    switch (part.kind) {
      case HoursPart::Kind::Fit:
        return pen_.language(day_.lastStart ? "hours_chart.fit_to_start" : "hours_chart.fit");
      case HoursPart::Kind::ToFinish:
        return pen_.language("hours_chart.to_finish");
      case HoursPart::Kind::TooLate:
        return pen_.language(day_.isWiped ? "hours_chart.too_late_to_wipe" : "hours_chart.too_late");
      case HoursPart::Kind::Unfit:
        break;
    }
    return part.reason ? pen_.language("hours_chart.reasons." + std::string(model::nameOf(*part.reason)))
                       : pen_.language("hours_chart.part_hour");
  }
  std::string shortWordsOf(const HoursPart& part) const {
    switch (part.kind) {
      case HoursPart::Kind::Fit:
        return pen_.language("hours_chart.fit");
      case HoursPart::Kind::ToFinish:
        return pen_.language("hours_chart.finish");
      case HoursPart::Kind::TooLate:
        return pen_.language("hours_chart.late");
      case HoursPart::Kind::Unfit:
        break;
    }
    return part.reason ? pen_.language("hours_chart.shorts." + std::string(model::nameOf(*part.reason))) : "";
  }

  std::string alt() const {
    std::string text = pen_.language("hours_chart.alt");
    for (std::size_t i = 0; i < day_.rows.size(); ++i) {
      text += (i == 0 ? " " : "; ") + day_.rows[i].name + ": ";
      bool isFirst = true;
      for (const auto& part : partsOf(day_.rows[i].hours, day_)) {
        text += (isFirst ? "" : ", ") + pen_.language("hours_chart.alt_run", {{"from", clockOf(part.at.from)},
                                                                              {"to", clockOf(part.at.until)},
                                                                              {"what", wordsOf(part)}});
        isFirst = false;
      }
    }
    text += ".";
    for (const auto& person : day_.people) text += " " + person.name + ": " + person.text + ".";
    return text;
  }
  /// Full hours as '8'.
  static std::string clockOf(int minutes) {
    return minutes % 60 == 0 ? std::to_string(minutes / 60) : base::isoClock(minutes);
  }

  const HoursDay& day_;
  const Pen& pen_;
  Dim left_, width_, y_;
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing hoursChart(const HoursDay& day, const Pen& pen, Dim width) {
  if (day.rows.empty() && day.people.empty()) return {};
  return HoursWriter(day, pen, width).draw();
}

}  // namespace drawings
