// What a price is made of: one bar, split, and a legend whose amounts add up.
#include "drawings/pen/hatch.h"

#include <algorithm>

namespace drawings {

namespace {

constexpr std::size_t mostColumns = 4;  // of the legend
const Dim swatch = tenths(55);          // with the gap behind it

Hatch hatchOf(PricePart::About about) {
  switch (about) {
    case PricePart::About::Wash:
      return Hatch::Level;
    case PricePart::About::Fix:
      return Hatch::Dots;
    case PricePart::About::Sand:
      return Hatch::Tight;
    case PricePart::About::Oil:
      return Hatch::Accent;
    case PricePart::About::Cover:
      return Hatch::Plain;
    case PricePart::About::Product:
      return Hatch::Wood;
    case PricePart::About::Materials:
      return Hatch::Backslash;
    case PricePart::About::Travel:
      return Hatch::Upright;
    case PricePart::About::Disposal:
      return Hatch::Crossed;
    case PricePart::About::Tax:
      return Hatch::Dashes;
  }
  return Hatch::Plain;
}

class PriceWriter {
 public:
  PriceWriter(const std::vector<PricePart>& parts, const PriceTotal& total, const Pen& pen, Dim width)
      : parts_(parts), total_(total), pen_(pen), width_(width), unit_(Dim::milli(pen.theme.unit)) {}

  typeset::Drawing draw() {
    putBar();
    putLegend();
    out_.size = {width_, y_};
    out_.alt = alt();
    return std::move(out_);
  }

 private:
  void putBar() {
    base::Money all, before;
    for (const auto& p : parts_) all += p.amount;
    const Dim high = unit_ * 6;
    Dim x;
    for (const auto& p : parts_) {
      before += p.amount;
      if (all.minor <= 0) break;
      const Dim to = {base::mulDiv(before.minor, width_.raw, all.minor, base::Round::HalfUp)};
      const Rect part = {{x, y_}, {to - x, high}};
      putHatched(out_.items, part, hatchOf(p.about), pen_);
      putOnPatch(out_.items, words(pen_, "drawing", p.name), part);
      x = to;
    }
    y_ += high + unit_ * 2;
  }

  struct Entry {
    const PricePart* part;  // none: the total
    ShapedText name, amount;
  };

  std::vector<Entry> entries() const {
    std::vector<Entry> list;
    for (const auto& p : parts_)
      list.push_back({&p, words(pen_, "drawing", p.name), words(pen_, "drawing", p.words)});
    list.push_back(
        {nullptr, boldWords(pen_, "drawing", total_.name), boldWords(pen_, "drawing", total_.words)});
    return list;
  }

  static std::size_t rowsOf(std::size_t entries, std::size_t columns) {
    return (entries + columns - 1) / columns;
  }

  /// The least width of each column when the entries run down 'columns' of them.
  static std::vector<Dim> columnsOf(const std::vector<Entry>& list, std::size_t columns) {
    const std::size_t rows = rowsOf(list.size(), columns);
    std::vector<Dim> widths;
    for (std::size_t from = 0; from < list.size(); from += rows) {
      Dim name, amount;
      for (std::size_t i = from; i < std::min(from + rows, list.size()); ++i) {
        name = std::max(name, swatch + list[i].name.width);
        amount = std::max(amount, list[i].amount.width);
      }
      widths.push_back(name + Dim::mm(3) + amount);
    }
    return widths;
  }

  /// Runs down the columns, as many as fit; the total is the last entry.
  void putLegend() {
    const auto list = entries();
    const Dim gutter = Dim::milli(pen_.theme.gutter);
    std::vector<Dim> columns;
    Dim spare;
    for (std::size_t n = mostColumns; n > 0; --n) {
      columns = columnsOf(list, n);
      spare = width_ + gutter;
      for (const Dim w : columns) spare = spare - w - gutter;
      if (spare >= Dim{}) break;
    }
    const Dim more = std::max(spare, Dim{}) / static_cast<std::int64_t>(columns.size());
    const std::size_t rows = rowsOf(list.size(), columns.size());
    const auto& style = pen_.theme.styles.at("drawing");
    const Dim leading = Dim::milli(style.leading) + unit_;
    Dim x;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      const Dim end = x + columns[c] + more;
      Dim base = y_ + Dim::milli(style.rise);
      for (std::size_t i = c * rows; i < std::min((c + 1) * rows, list.size()); ++i, base += leading)
        putEntry(list[i], x, end, base);
      x = end + gutter;
    }
    y_ += leading * static_cast<std::int64_t>(rows);
  }

  void putEntry(const Entry& e, Dim left, Dim end, Dim base) {
    const Dim high = tenths(26);
    if (e.part)
      putHatched(out_.items, {{left, base - high}, {swatch - tenths(15), high}}, hatchOf(e.part->about),
                 pen_);
    put(out_.items, e.name, {left + (e.part ? swatch : Dim{}), base});
    put(out_.items, e.amount, {end - e.amount.width, base});
  }

  std::string alt() const {
    std::string text = pen_.language("price_chart.alt") + " ";
    for (const auto& p : parts_) text += p.name + " " + p.words + "; ";
    return text + total_.name + " " + total_.words + ".";
  }

  const std::vector<PricePart>& parts_;
  const PriceTotal& total_;
  const Pen& pen_;
  Dim width_, unit_, y_;
  typeset::Drawing out_;
};

}  // namespace

typeset::Drawing priceChart(const std::vector<PricePart>& parts, const PriceTotal& total, const Pen& pen,
                            Dim width) {
  if (parts.empty()) return {};
  return PriceWriter(parts, total, pen, width).draw();
}

}  // namespace drawings
