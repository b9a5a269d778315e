// Every computed figure as JSON, by the names of content/schemas/figures.schema.json.
#pragma once

#include "app/compute.h"

namespace app {

/// One JSON object, indented, with a line break at the end. Amounts of money are decimal strings.
std::string figuresJson(const Computation& x);

}  // namespace app
