// Every computed figure as JSON, by the names of content/schemas/figures.schema.json.
#pragma once

#include "app/pack/compute.h"

namespace app {

/// Local ISO 8601 with the minutes it is ahead of UTC: '2027-03-16T07:30:00+13:00'.
std::string isoWithOffset(base::LocalTime t, int offset);

/// One JSON object, indented, with a line break at the end. Amounts of money are decimal strings.
std::string figuresJson(const model::JobResult& x);

}  // namespace app
