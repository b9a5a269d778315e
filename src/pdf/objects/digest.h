// A fingerprint of content, for identifiers that must not come from the clock. Not for secrets.
#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <string_view>

namespace pdf {

/// Two 64-bit sums with different beginnings, eight bytes at a time: FNV-1a takes longer than the page
/// itself.
class Digest {
 public:
  void add(std::string_view bytes) {
    std::size_t at = 0;
    for (; at + 8 <= bytes.size(); at += 8) mix(eight(bytes.data() + at));
    std::uint64_t rest = 0;
    for (std::size_t i = at; i < bytes.size(); ++i)
      rest |= std::uint64_t{static_cast<unsigned char>(bytes[i])} << 8 * (i - at);
    mix(rest);
    mix(bytes.size());  // 'ab' + 'c' is not 'a' + 'bc'
  }
  std::array<std::uint64_t, 2> value() const { return sums_; }

 private:
  /// The first byte lowest on every machine.
  static std::uint64_t eight(const char* bytes) {
    std::uint64_t w = 0;
    std::memcpy(&w, bytes, sizeof w);
    return std::endian::native == std::endian::big ? __builtin_bswap64(w) : w;
  }
  void mix(std::uint64_t w) {
    for (std::uint64_t& sum : sums_) {
      sum = (sum ^ w) * 0x9E3779B97F4A7C15u;
      sum ^= sum >> 32;  // a product's high bits know more than its low ones
    }
  }

  std::array<std::uint64_t, 2> sums_ = {0xCBF29CE484222325u, 0x84222325CBF29CE4u};
};

}  // namespace pdf
