// Money of one currency, counted in its smallest coin, and prices per unit.
#pragma once

#include "base/units.h"

namespace base {

struct Money {
  std::int64_t minor = 0;  // cents; may be negative (a discount)

  friend constexpr Money operator+(Money a, Money b) { return {a.minor + b.minor}; }
  friend constexpr Money operator-(Money a, Money b) { return {a.minor - b.minor}; }
  friend constexpr Money operator*(Money a, std::int64_t n) {
    return {divide(Wide{a.minor} * n, 1, Round::HalfUp)};
  }
  constexpr Money& operator+=(Money b) { return *this = *this + b; }
  friend constexpr auto operator<=>(Money, Money) = default;
};

/// A share of an amount, rounded once to whole coins.
constexpr Money share(Money m, Share s, Round r = Round::HalfUp) {
  return {mulDiv(m.minor, s.millionths, 100'000'000, r)};
}

}  // namespace base
