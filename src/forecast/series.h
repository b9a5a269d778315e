// What a weather file says, in UTC and our units, whatever form it came in.
#pragma once

#include "model/weather.h"

#include <array>
#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace forecast {

using Time = std::chrono::sys_seconds;

enum class Element { Air, Humidity, Cloud, Wind, Rain };
constexpr std::size_t elementsOfAir = 4;  // those of a moment; rain has its windows

/// The air at one moment: C, %, % and m/s, by Element; nothing = not known.
struct Instant {
  Time at;
  std::array<std::optional<double>, elementsOfAir> values;

  std::optional<double>& operator[](Element e) { return values[static_cast<std::size_t>(e)]; }
  const std::optional<double>& operator[](Element e) const { return values[static_cast<std::size_t>(e)]; }
};

/// Rain between two moments; windows without a known amount are left out.
struct Rain {
  Time from, until;
  double mm = 0;
};

struct Series {
  std::string service;  // as it wants to be named; empty = none, a table of the firm's own
  std::string fetch;    // which file has what is needed
  std::optional<model::Coordinates> place;
  std::vector<Instant> instants;  // in order of time
  std::vector<Rain> rain;         // in order of time, none over another
};

/// A file that cannot be used: what is wrong where in it, and what to do.
struct Refusal {
  std::string path, message, hint;
  int line = 0, column = 0;
};

}  // namespace forecast
