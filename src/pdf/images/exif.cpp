// Exif 2.3 (CIPA DC-008, 2012), 4.5.4 and 4.6.4, tag Orientation; the tag stands in a TIFF directory. From
// memory.
#include "pdf/images/exif.h"

#include <cstdint>

namespace pdf {
namespace {

using std::size_t;

/// Numbers in a stretch of bytes; 0 behind its end.
class Numbers {
 public:
  Numbers(std::string_view bytes, bool isLittle) : bytes_(bytes), isLittle_(isLittle) {}
  std::uint32_t at(size_t place, size_t length) const {
    std::uint32_t value = 0;
    if (place > bytes_.size() || bytes_.size() - place < length) return 0;
    for (size_t i = 0; i < length; ++i)
      value = value << 8 | static_cast<unsigned char>(bytes_[place + (isLittle_ ? length - 1 - i : i)]);
    return value;
  }

 private:
  std::string_view bytes_;
  bool isLittle_;
};

int orientationIn(std::string_view tiff) {
  const bool isLittle = tiff.starts_with("II");
  if (!isLittle && !tiff.starts_with("MM")) return 1;
  const Numbers n(tiff, isLittle);
  const size_t directory = n.at(4, 4);
  const size_t count = n.at(directory, 2);
  for (size_t i = 0; i < count; ++i) {
    const size_t entry = directory + 2 + 12 * i;
    if (entry + 12 > tiff.size()) break;
    if (n.at(entry, 2) != 0x0112) continue;
    const std::uint32_t value = n.at(entry + 8, 2);
    return value >= 1 && value <= 8 ? static_cast<int>(value) : 1;
  }
  return 1;
}

}  // namespace

int orientationOf(std::string_view jpeg) {
  const Numbers n(jpeg, false);
  constexpr std::string_view mark("Exif\0\0", 6);
  for (size_t at = 2; at + 4 <= jpeg.size() && n.at(at, 1) == 0xFF && n.at(at + 1, 1) != 0xDA;) {
    const size_t length = n.at(at + 2, 2);
    if (n.at(at + 1, 1) == 0xFF) {  // filling
      ++at;
      continue;
    }
    const std::string_view part = jpeg.substr(at + 4, length < 2 ? 0 : length - 2);
    if (n.at(at + 1, 1) == 0xE1 && part.starts_with(mark)) return orientationIn(part.substr(mark.size()));
    at += 2 + length;
  }
  return 1;
}

void makeUpright(typeset::Image& image, int orientation) {
  if (orientation == 1) return;
  const auto w = static_cast<size_t>(image.width), h = static_cast<size_t>(image.height);
  const bool isOnSide = orientation >= 5;
  const bool fromRight = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
  const bool fromBelow = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
  const size_t across = isOnSide ? h : w, down = isOnSide ? w : h;
  std::string upright;
  upright.reserve(image.rgb.size());
  for (size_t y = 0; y < down; ++y)
    for (size_t x = 0; x < across; ++x) {
      const size_t column = isOnSide ? y : x, row = isOnSide ? x : y;
      const size_t from = (fromBelow ? h - 1 - row : row) * w + (fromRight ? w - 1 - column : column);
      upright.append(image.rgb, from * 3, 3);
    }
  image.rgb = std::move(upright);
  image.width = static_cast<int>(across);
  image.height = static_cast<int>(down);
}

}  // namespace pdf
