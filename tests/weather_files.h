// Samples of the weather services' files: one invented day, see tests/weather.
#pragma once

#include "forecast/read.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <string>

namespace weather_files {

inline std::string bytesOf(const std::string& name) {
  std::ifstream in(std::string(SOURCE_DIR) + "/tests/weather/" + name, std::ios::binary);
  REQUIRE(in);
  return {std::istreambuf_iterator<char>(in), {}};
}

struct Answer {
  model::Forecast forecast;
  std::string said;
};

/// Reads text as a file of a name that says nothing.
inline Answer readText(const std::string& bytes, const forecast::Wanted& wanted = {"Etc/UTC", {}}) {
  base::Diagnostics messages;
  Answer answer{forecast::readForecast(bytes, "weather.txt", wanted, messages), {}};
  for (const auto& d : messages.all()) answer.said += base::format(d);
  CHECK(answer.forecast.steps.empty() != messages.ok());
  return answer;
}

/// The text with 'from' replaced; it must stand there.
inline std::string edited(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  if (at == std::string::npos) throw std::logic_error("the sample has no '" + from + "'");
  return text.replace(at, from.size(), to);
}

inline std::string iso(std::chrono::sys_seconds t) {
  const base::Date day = std::chrono::floor<std::chrono::days>(t);
  return base::isoTime({day, static_cast<int>((t - day) / std::chrono::minutes{1})});
}

}  // namespace weather_files
