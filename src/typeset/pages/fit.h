// How closely a document is set so that its last page is worth its paper.
#pragma once

#include "typeset/page.h"

#include <cstdint>
#include <vector>

namespace typeset {

/// Where a page other than the last has to end above its foot, so that the last one gets more.
struct EarlyFoot {
  std::size_t page = SIZE_MAX;
  Dim above;
};

/// The theme on grids whose unit is a little smaller, as far as it allows, the widest first; the last one
/// also closes up the white between sections. Type stays as large.
std::vector<model::Theme> tighter(const model::Theme& theme);

}  // namespace typeset
