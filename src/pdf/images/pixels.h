// How large a picture may be.
#pragma once

#include <cstdint>
#include <stdexcept>
#include <string>

namespace pdf {

/// Throws std::runtime_error for more than 16 million pixels: a small file can claim to hold a huge picture.
inline void checkPixels(std::uint32_t width, std::uint32_t height) {
  constexpr std::uint64_t most = 16'000'000;
  if (std::uint64_t{width} * height > most)
    throw std::runtime_error("the picture has " + std::to_string(width) + " x " + std::to_string(height) +
                             " pixels; at most 16 million are allowed");
}

}  // namespace pdf
