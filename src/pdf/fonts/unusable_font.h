// What is thrown when a font file cannot be used.
#pragma once

#include <stdexcept>

namespace pdf {

/// A face's tables contradict each other.
struct UnusableFont : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace pdf
