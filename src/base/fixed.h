// Exact fixed-point numbers: everything measured, bought or billed. The only place where rounding happens.
#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>

namespace base {

__extension__ using Wide = __int128;

/// How a half (or any remainder) is rounded.
enum class Round {
  HalfUp,    // halves go away from zero
  HalfDown,  // halves go towards zero
  HalfEven,  // halves go to the even neighbour
  Up,        // towards +infinity
  Down       // towards -infinity
};

/// n / d, rounded once. Throws std::overflow_error when the result does not fit; d must be positive.
constexpr std::int64_t divide(Wide n, Wide d, Round r) {
  // Nearly all fit the machine's own division, which is many times faster than that of 128 bits.
  const bool isShort = n <= INT64_MAX && n >= -INT64_MAX && d <= INT64_MAX;
  Wide q = isShort ? static_cast<std::int64_t>(n) / static_cast<std::int64_t>(d) : n / d;
  const Wide rem = n - q * d;
  const Wide twice = (rem < 0 ? -rem : rem) * 2;
  const int sign = n < 0 ? -1 : 1;
  if (rem != 0) {
    switch (r) {
      case Round::HalfUp:
        q += twice >= d ? sign : 0;
        break;
      case Round::HalfDown:
        q += twice > d ? sign : 0;
        break;
      case Round::HalfEven:
        q += twice > d || (twice == d && q % 2 != 0) ? sign : 0;
        break;
      case Round::Up:
        q += sign > 0 ? 1 : 0;
        break;
      case Round::Down:
        q -= sign < 0 ? 1 : 0;
        break;
    }
  }
  if (q > INT64_MAX || q < INT64_MIN) throw std::overflow_error("number too large");
  return static_cast<std::int64_t>(q);
}

/// a * b / c in 128 bits, rounded once. Throws std::overflow_error when the result does not fit; c > 0.
constexpr std::int64_t mulDiv(std::int64_t a, std::int64_t b, std::int64_t c, Round r) {
  return divide(Wide{a} * b, c, r);
}

/// A quantity of one unit, held as a whole count of millionths of it. Quantities of different units do not
/// mix: adding litres to square metres does not compile. Sums that do not fit throw std::overflow_error.
template <class Unit>
struct Quantity {
  std::int64_t millionths = 0;

  static constexpr Quantity whole(std::int64_t n) { return {n * 1'000'000}; }
  constexpr bool isZero() const { return millionths == 0; }

  friend constexpr Quantity operator+(Quantity a, Quantity b) {
    return {divide(Wide{a.millionths} + b.millionths, 1, Round::HalfUp)};
  }
  friend constexpr Quantity operator-(Quantity a, Quantity b) {
    return {divide(Wide{a.millionths} - b.millionths, 1, Round::HalfUp)};
  }
  friend constexpr Quantity operator*(Quantity a, std::int64_t n) {
    return {divide(Wide{a.millionths} * n, 1, Round::HalfUp)};
  }
  constexpr Quantity& operator+=(Quantity b) { return *this = *this + b; }
  friend constexpr auto operator<=>(Quantity, Quantity) = default;
};

/// q * numerator / denominator, rounded once.
template <class Unit>
constexpr Quantity<Unit> scaled(Quantity<Unit> q, std::int64_t numerator, std::int64_t denominator, Round r) {
  return {mulDiv(q.millionths, numerator, denominator, r)};
}

}  // namespace base
