#include "pdf/images/shrink.h"

#include <algorithm>
#include <cstdlib>
#include <vector>

namespace pdf {
namespace {

struct Sum {
  std::size_t colour[3] = {}, alpha = 0, pixels = 0;

  void add(const char* rgba) {
    ++pixels;
    const std::size_t weight = static_cast<unsigned char>(rgba[3]);
    if (weight == 0) return;
    for (std::size_t i = 0; i < 3; ++i) colour[i] += weight * static_cast<unsigned char>(rgba[i]);
    alpha += weight;
  }
};

std::size_t nearest(std::size_t sum, std::size_t of) { return (sum + of / 2) / of; }

/// Whether another colour would look the same on any ground, to less than a shade in 255.
bool looksLike(const Sum& sum, const char* colour, std::size_t alpha) {
  for (std::size_t i = 0; sum.alpha > 0 && i < 3; ++i) {
    const auto mean = static_cast<int>(nearest(sum.colour[i], sum.alpha));
    const int other = static_cast<unsigned char>(colour[i]);
    if (static_cast<std::size_t>(std::abs(mean - other)) * alpha >= 255) return false;
  }
  return true;
}

}  // namespace

Pixels shrink(Pixels in, std::size_t rows) {
  const std::size_t side = rows == 0 ? 1 : std::max<std::size_t>(1, in.height / rows);
  Pixels out{(in.width + side - 1) / side, (in.height + side - 1) / side, {}};
  out.rgba.reserve(4 * out.width * out.height);
  std::vector<Sum> sums;
  for (std::size_t top = 0; top < in.height; top += side) {
    sums.assign(out.width, {});
    for (std::size_t y = top; y < std::min(top + side, in.height); ++y) {
      const char* pixel = in.rgba.data() + 4 * y * in.width;
      for (std::size_t x = 0; x < out.width; ++x)
        for (std::size_t end = std::min((x + 1) * side, in.width), i = x * side; i < end; ++i, pixel += 4)
          sums[x].add(pixel);
    }
    char colour[3] = {'\xFF', '\xFF', '\xFF'};
    for (const Sum& sum : sums) {
      const std::size_t alpha = nearest(sum.alpha, sum.pixels);
      if (!looksLike(sum, colour, alpha))
        for (std::size_t i = 0; i < 3; ++i) colour[i] = static_cast<char>(nearest(sum.colour[i], sum.alpha));
      out.rgba.append(colour, 3);
      out.rgba += static_cast<char>(alpha);
    }
  }
  return out;
}

}  // namespace pdf
