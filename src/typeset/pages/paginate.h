// A list of fragments becomes pages.
#pragma once

#include "typeset/layout_context.h"

namespace typeset {

/// Where a page other than the last has to end above its foot, so that the last one gets more.
struct EarlyFoot {
  std::size_t page = SIZE_MAX;
  Dim above;
};

/// The pages that a title or a section begins and ends on.
struct PageRange {
  std::string title;
  bool isTitle = false;
  int line = 0;                     // in the template
  std::size_t first = 0, last = 0;  // counted from 1
};

struct Pagination {
  Dim filled;  // of the last page
  std::vector<PageRange> ranges;
};

/// Fills pages from the top down. What belongs together goes to the next page together; what is taller than a
/// page is broken and warned about. What is flexible is as high as the limits of the policy leave room for.
Pagination paginate(LayoutContext& context, VerticalList&& list, EarlyFoot early);

}  // namespace typeset
