// Names of the model's values, as files and keys of words write them.
#pragma once

#include "model/plan.h"

namespace model {

/// 'tight' to 'thirsty'.
const char* nameOf(Uptake uptake);
/// 'air_cold', as plan.schema.json lists them.
const char* nameOf(WeatherLimit gate);
/// 'days_off' to 'before_coat'.
const char* nameOf(DayHold::Why why);

}  // namespace model
