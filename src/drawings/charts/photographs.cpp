// Photographs with their words.
#include "base/joined.h"
#include "drawings/pen/paths.h"

#include <algorithm>

namespace drawings {

namespace {

const Dim gutter = Dim::mm(5), aboveWords = tenths(12);

Dim scaledTo(Dim side, std::int64_t part, std::int64_t whole) {
  return {base::mulDiv(side.raw, part, whole, base::Round::HalfUp)};
}

/// Photographs of one height in a row.
class Row {
 public:
  Row(const std::vector<Photograph>& photos, const Pen& pen, Dim width) : photos_(photos), pen_(pen) {
    constexpr std::int64_t unit = 1'000'000;
    std::int64_t widths = 0;  // of a row that is one unit high
    for (const auto& photo : photos) widths += photo.image->width * unit / photo.image->height;
    setHeight(scaledTo(width - gutter * static_cast<std::int64_t>(photos.size() - 1), unit, widths));
  }

  /// With the words below.
  Dim height() const { return high_ + below_; }

  void lower(Dim most) { setHeight(std::min(high_, most - below_)); }

  void draw(typeset::Drawing& out) const {
    const Dim lead = Dim::milli(note().leading), baseline = Dim::milli(note().baseline);
    Dim x;
    for (std::size_t i = 0; i < photos_.size(); ++i) {
      const Size size = sizeOf(photos_[i]);
      typeset::PlacedImage placed;
      placed.box = {{x, {}}, size};
      placed.image = photos_[i].image;
      out.items.emplace_back().what = std::move(placed);
      Dim y = high_ + aboveWords;
      for (const auto& line : captions_[i]) {
        put(out.items, words(pen_, "note", line), {x, y + baseline});
        y += lead;
      }
      x += size.w + gutter;
    }
    out.size = {x - gutter, height()};
  }

  bool isPossible() const { return high_ > Dim{}; }

 private:
  const model::TextStyle& note() const { return pen_.theme.styles.at("note"); }
  Size sizeOf(const Photograph& photo) const {
    return {scaledTo(high_, photo.image->width, photo.image->height), high_};
  }

  void setHeight(Dim high) {
    high_ = high;
    captions_.clear();
    std::size_t lines = 0;
    constexpr std::size_t mostLines = 4;
    for (const auto& photo : photos_) {
      captions_.push_back(wrapped(pen_, "note", photo.shows, sizeOf(photo).w, mostLines));
      lines = std::max(lines, captions_.back().size());
    }
    below_ = aboveWords + Dim::milli(note().leading) * static_cast<std::int64_t>(lines);
  }

  const std::vector<Photograph>& photos_;
  const Pen& pen_;
  Dim high_, below_;
  std::vector<std::vector<std::string>> captions_;
};

}  // namespace

typeset::Drawing photographs(const std::vector<Photograph>& photos, const Pen& pen, Size most) {
  typeset::Drawing out;
  if (photos.empty()) return out;
  Row row(photos, pen, most.w);
  // Narrower ones may need another line of words.
  while (row.isPossible() && row.height() > most.h) row.lower(most.h);
  if (!row.isPossible()) return out;
  row.draw(out);
  std::vector<std::string> shown;
  for (const auto& photo : photos) shown.push_back(photo.shows);
  out.alt = pen.language("photographs.alt", {{"shown", base::joined(shown, "; ")}});
  return out;
}

}  // namespace drawings
