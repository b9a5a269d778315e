// How far places lie apart.
#pragma once

#include "schedule/weather/sun.h"

namespace schedule {

/// Great circle on a sphere of 6,371 km (IUGG mean radius); haversine formula.
double kilometres(Place a, Place b);

}  // namespace schedule
