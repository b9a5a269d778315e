// Tax.
#pragma once

#include "model/content.h"

#include <vector>

namespace estimate {

/// Tax on net amounts by a region's rule: on their sum, or on each line and then added up.
base::Money tax(const std::vector<base::Money>& net, const model::TaxRule& rule);

}  // namespace estimate
