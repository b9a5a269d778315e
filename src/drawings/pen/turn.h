// Directions in whole numbers: places on a page must not depend on a machine's arithmetic.
#pragma once

#include "base/fixed.h"

namespace drawings {

/// A direction as cosine and sine in billionths.
struct Turn {
  std::int64_t cos = unit, sin = 0;
  static constexpr std::int64_t unit = 1'000'000'000;
};
Turn turnBy(int degrees);

}  // namespace drawings
