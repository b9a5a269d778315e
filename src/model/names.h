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
/// 'later' to 'weather'.
const char* nameOf(Alternative::Why why);
/// 'walk' to 'maintenance'; 'coat_start' and 'coat_end' without the coat's number.
const char* nameOf(Moment moment);
/// 'walk', 'coat_1_start'.
std::string nameOf(const Event& event);

}  // namespace model
