// A fingerprint of content, for identifiers that must not come from the clock. Not for secrets.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace pdf {

/// Two 64-bit FNV-1a sums with different beginnings.
class Digest {
 public:
  void add(std::string_view bytes) {
    for (const char c : bytes)
      for (std::uint64_t& sum : sums_) sum = (sum ^ static_cast<unsigned char>(c)) * 0x100000001B3u;
    for (std::uint64_t& sum : sums_) sum = (sum ^ 0x100) * 0x100000001B3u;  // 'ab' + 'c' is not 'a' + 'bc'
  }
  std::array<std::uint64_t, 2> value() const { return sums_; }

 private:
  std::array<std::uint64_t, 2> sums_ = {0xCBF29CE484222325u, 0x9E3779B97F4A7C15u};
};

}  // namespace pdf
