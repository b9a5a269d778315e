// Where the litres go: a bar for each deck, split by coat, on one scale.
#include "base/quantity_words.h"
#include "drawings/pen/hatch.h"
#include "drawings/plans/plan_words.h"

#include <algorithm>

namespace drawings {

namespace {

constexpr Hatch hatches[] = {Hatch::Wood, Hatch::Slash, Hatch::Tight, Hatch::Crossed};
constexpr std::size_t mostCoats = std::size(hatches);

class LitresWriter {
 public:
  LitresWriter(const std::vector<LitreRow>& rows, const Pen& pen, Dim width)
      : rows_(rows), pen_(pen), width_(width), unit_(Dim::milli(pen.theme.unit)) {
    left_ = Dim::milli(pen.theme.sideWidth) + Dim::milli(pen.theme.gutter);
    for (const auto& row : rows) {
      most_ = std::max(most_, sum(row).millionths);
      all_ += sum(row);
      coats_ = std::max(coats_, std::min(row.coats.size(), mostCoats));
    }
    const Dim figures = boldWords(pen, "table", amount(all_)).width + Dim::mm(3);
    room_ = std::max(width - left_ - figures, Dim::mm(20));
  }

  typeset::Drawing draw() {
    putLegend();
    const Dim top = y_;
    y_ += unit_;
    for (const auto& row : rows_) putRow(row);
    putAxis(top);
    putTotal();
    out_.size = {width_, y_};
    out_.alt = alt();
    return std::move(out_);
  }

 private:
  static base::Count sum(const LitreRow& row) {
    base::Count all;
    for (const auto c : row.coats) all += c;
    return all;
  }

  std::string number(base::Count c) const {
    const auto& form = pen_.region.numbers;
    return base::decimal(c.millionths, isUs(pen_) ? 2 : 1, form.decimal, form.group);
  }
  std::string unit() const { return pen_.language(isUs(pen_) ? "units.gallon" : "units.litre"); }
  std::string coatName(std::size_t n) const {
    return pen_.language("coats.names." + std::to_string(std::min(n, mostCoats - 1) + 1));
  }
  std::string amount(base::Count c) const { return number(c) + "\u00a0" + unit(); }
  Dim on(base::Count c) const {
    return {base::mulDiv(c.millionths, room_.raw, std::max<std::int64_t>(most_, 1), base::Round::HalfUp)};
  }
  Dim rise(const char* style) const { return Dim::milli(pen_.theme.styles.at(style).rise); }
  Dim leading(const char* style) const { return Dim::milli(pen_.theme.styles.at(style).leading); }

  void putLegend() {
    Dim x = left_;
    const Dim base = y_ + rise("note");
    for (std::size_t n = 0; n < coats_; ++n) {
      const ShapedText w = words(pen_, "note", coatName(n));
      const Dim high = tenths(26), wide = Dim::mm(6);
      putHatched(out_.items, {{x, base - high}, {wide, high}}, hatches[n], pen_);
      put(out_.items, w, {x + wide + tenths(15), base});
      x += wide + w.width + Dim::mm(6);
    }
    y_ += leading("note") + unit_;
  }

  void putRow(const LitreRow& row) {
    const auto lines = wrapped(pen_, "table", row.name, left_ - Dim::mm(2), 2);
    const Dim high = unit_ * 4, text = leading("table") * static_cast<std::int64_t>(lines.size());
    const Dim whole = std::max(high, text) + unit_;
    const Dim middle = y_ + whole / 2, top = middle - high / 2;
    Dim base = middle - text / 2 + rise("table");
    for (const auto& l : lines) {
      put(out_.items, words(pen_, "table", l), {{}, base});
      base += leading("table");
    }
    Dim x = left_;
    base::Count before;
    for (std::size_t n = 0; n < row.coats.size(); ++n) {
      before += row.coats[n];
      const Dim to = left_ + on(before);
      const Rect part = {{x, top}, {to - x, high}};
      if (part.size.w > Dim{}) {
        putHatched(out_.items, part, hatches[std::min(n, mostCoats - 1)], pen_);
        putOnPatch(out_.items, words(pen_, "drawing", number(row.coats[n])), part);
      }
      x = to;
    }
    const ShapedText w = words(pen_, "table", amount(sum(row)));
    put(out_.items, w, {width_ - w.width, middle + w.height / 2});
    y_ += whole;
  }

  /// The smallest round step that leaves at least 12 mm between two figures.
  base::Count axisStep() const {
    for (std::int64_t ten = 10'000;; ten *= 10)
      for (const std::int64_t n : {1, 2, 5})
        if (on({n * ten}) >= Dim::mm(12)) return {n * ten};
  }

  void putAxis(Dim top) {
    const auto ink = colour(pen_, "ink");
    put(out_.items, line({left_, top}, {left_, y_ + unit_}, Stroke{ink, hundredthsPt(100), {}, false}));
    if (most_ <= 0) return;
    const base::Count step = axisStep();
    const int places = step.millionths % 1'000'000 == 0 ? 0 : step.millionths % 100'000 == 0 ? 1 : 2;
    const auto& form = pen_.region.numbers;
    const Dim base = y_ + unit_ + rise("drawing");
    for (base::Count at; at.millionths <= most_; at += step) {
      const Dim x = left_ + on(at);
      put(out_.items, line({x, y_}, {x, y_ + unit_}, Stroke{ink, hundredthsPt(50), {}, false}));
      const ShapedText w = words(
          pen_, "note", base::decimal(at.millionths, at.isZero() ? 0 : places, form.decimal, form.group));
      put(out_.items, w, {x - w.width / 2, base});
    }
    put(out_.items, line({left_, y_}, {left_ + on({most_}), y_}, Stroke{ink, hundredthsPt(50), {}, false}));
    y_ += unit_ + leading("drawing");
  }

  void putTotal() {
    const Stroke rule = {colour(pen_, "ink"), hundredthsPt(50), {}, false};
    y_ += unit_;
    put(out_.items, line({{}, y_}, {width_, y_}, rule));
    const Dim base = y_ + unit_ + rise("table");
    put(out_.items, boldWords(pen_, "table", pen_.language("litres_chart.together")), {{}, base});
    const ShapedText w = boldWords(pen_, "table", amount(all_));
    put(out_.items, w, {width_ - w.width, base});
    y_ += unit_ + leading("table");
  }

  std::string alt() const {
    std::string text = pen_.language(isUs(pen_) ? "litres_chart.alt_gallons" : "litres_chart.alt_litres");
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      text += (i == 0 ? " " : "; ") + rows_[i].name + " " + amount(sum(rows_[i]));
      if (rows_[i].coats.size() < 2) continue;
      for (std::size_t n = 0; n < rows_[i].coats.size(); ++n)
        text += (n == 0 ? " (" : ", ") + coatName(n) + " " + number(rows_[i].coats[n]);
      text += ")";
    }
    return text + "; " + pen_.language("litres_chart.together") + " " + amount(all_) + ".";
  }

  const std::vector<LitreRow>& rows_;
  const Pen& pen_;
  Dim width_, unit_, left_, room_, y_;
  std::int64_t most_ = 0;  // of a row
  base::Count all_;
  std::size_t coats_ = 0;
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing litresChart(const std::vector<LitreRow>& rows, const Pen& pen, Dim width) {
  if (rows.empty()) return {};
  return LitresWriter(rows, pen, width).draw();
}

}  // namespace drawings
