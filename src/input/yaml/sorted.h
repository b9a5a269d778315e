// Mistakes in the order of their lines, whatever the order of reading.
#pragma once

#include "base/diagnostic.h"

#include <algorithm>

namespace input {

inline void forwardSorted(const base::Diagnostics& from, base::Diagnostics& to) {
  std::vector<base::Diagnostic> all = from.all();
  std::stable_sort(all.begin(), all.end(), [](const base::Diagnostic& a, const base::Diagnostic& b) {
    return a.pos.line != b.pos.line ? a.pos.line < b.pos.line : a.pos.column < b.pos.column;
  });
  for (base::Diagnostic& d : all) {
    if (d.severity == base::Severity::Error) {
      to.error(std::move(d.pos), std::move(d.path), std::move(d.message), std::move(d.hint));
    } else {
      to.warn(std::move(d.pos), std::move(d.path), std::move(d.message), std::move(d.hint));
    }
  }
}

}  // namespace input
