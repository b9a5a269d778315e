// Mistakes in the order of their files and lines, whatever the order of reading.
#pragma once

#include "base/diagnostic.h"

#include <algorithm>
#include <tuple>

namespace input {

inline void forwardSorted(const base::Diagnostics& from, base::Diagnostics& to) {
  std::vector<base::Diagnostic> all = from.all();
  std::stable_sort(all.begin(), all.end(), [](const base::Diagnostic& a, const base::Diagnostic& b) {
    return std::tie(a.pos.file, a.pos.line, a.pos.column) < std::tie(b.pos.file, b.pos.line, b.pos.column);
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
