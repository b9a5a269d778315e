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

const char* nameOf(Alternative::Why why) {
  switch (why) {
    case Alternative::Why::Later:
      return "later";
    case Alternative::Why::Order:
      return "order";
    case Alternative::Why::Window:
      return "window";
    case Alternative::Why::Cost:
      return "cost";
    case Alternative::Why::Weather:
      return "weather";
  }
  throw std::logic_error("internal error: unknown reason of an alternative");
}

const char* nameOf(Moment moment) {
  switch (moment) {
    case Moment::CoatStart:
      return "coat_start";
    case Moment::CoatEnd:
      return "coat_end";
    case Moment::Walk:
      return "walk";
    case Moment::Furniture:
      return "furniture";
    case Moment::Rugs:
      return "rugs";
    case Moment::FirstWash:
      return "first_wash";
    case Moment::Maintenance:
      return "maintenance";
  }
  throw std::logic_error("internal error: unknown date of a plan");
}

std::string nameOf(const Event& event) {
  if (event.coat == 0) return nameOf(event.what);
  return "coat_" + std::to_string(event.coat) + (event.what == Moment::CoatStart ? "_start" : "_end");
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
