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

const char* nameOf(Gate gate) {
  switch (gate) {
    case Gate::AirCold:
      return "air_cold";
    case Gate::AirHot:
      return "air_hot";
    case Gate::BoardsHot:
      return "boards_hot";
    case Gate::Dew:
      return "dew";
    case Gate::DewBefore:
      return "dew_before_dry";
    case Gate::Damp:
      return "damp";
    case Gate::Rain:
      return "rain";
    case Gate::Wet:
      return "boards_wet";
    case Gate::RainBefore:
      return "rain_before_safe";
    case Gate::Wind:
      return "wind";
    case Gate::Dark:
      return "dark";
    case Gate::Moisture:
      return "moisture";
    case Gate::Unknown:
      return "unknown";
  }
  throw std::logic_error("internal error: no such gate");
}

}  // namespace model
