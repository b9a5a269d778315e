#include "model/names.h"

#include <stdexcept>

namespace model {

const char* nameOf(Uptake uptake) {
  switch (uptake) {
    case Uptake::Tight:
      return "tight";
    case Uptake::Medium:
      return "medium";
    case Uptake::Open:
      return "open";
    case Uptake::Thirsty:
      return "thirsty";
  }
  throw std::logic_error("internal error: unknown uptake");
}

const char* nameOf(DayHold::Why why) {
  switch (why) {
    case DayHold::Why::DaysOff:
      return "days_off";
    case DayHold::Why::BoardsDry:
      return "boards_dry";
    case DayHold::Why::CoatDry:
      return "coat_dry";
    case DayHold::Why::Weather:
      return "weather";
    case DayHold::Why::BeforeCoat:
      return "before_coat";
  }
  throw std::logic_error("internal error: unknown reason of a day");
}

const char* nameOf(WeatherLimit gate) {
  switch (gate) {
    case WeatherLimit::AirCold:
      return "air_cold";
    case WeatherLimit::AirHot:
      return "air_hot";
    case WeatherLimit::BoardsHot:
      return "boards_hot";
    case WeatherLimit::Dew:
      return "dew";
    case WeatherLimit::DewBefore:
      return "dew_before_dry";
    case WeatherLimit::Damp:
      return "damp";
    case WeatherLimit::Rain:
      return "rain";
    case WeatherLimit::Wet:
      return "boards_wet";
    case WeatherLimit::RainBefore:
      return "rain_before_safe";
    case WeatherLimit::Wind:
      return "wind";
    case WeatherLimit::Dark:
      return "dark";
    case WeatherLimit::Moisture:
      return "moisture";
    case WeatherLimit::Unknown:
      return "unknown";
  }
  throw std::logic_error("internal error: no such gate");
}

}  // namespace model
