// What Open-Meteo calls the elements, in its JSON and its CSV.
#pragma once

#include "forecast/series.h"

namespace forecast {

struct OpenMeteoName {
  Element element;
  const char *key, *oldKey;  // the old one until 2023; null = the same
};

inline constexpr OpenMeteoName openMeteoNames[] = {
    {Element::Air, "temperature_2m", nullptr},
    {Element::Humidity, "relative_humidity_2m", "relativehumidity_2m"},
    {Element::Cloud, "cloud_cover", "cloudcover"},
    {Element::Wind, "wind_speed_10m", "windspeed_10m"},
    {Element::Rain, "precipitation", nullptr}};

inline constexpr auto openMeteoFetch =
    "save it again with these hourly variables: temperature_2m, relative_humidity_2m, cloud_cover, "
    "wind_speed_10m, "
    "precipitation";

}  // namespace forecast
