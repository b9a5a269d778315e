#pragma once

#include "base/diagnostic.h"
#include "forecast/series.h"

namespace forecast {

/// Reads comma-separated text by its header: columns in any order, each with its unit ('air_c', 'Wind speed
/// (km/h)'), times by the clock of the zone or with an offset of their own, rain of the step that begins at
/// its time, or, in a column named 'rain before', of the one that ends there; and Open-Meteo's CSV with its
/// lines in front. Empty cells are values that are not known. Every mistake is told with its place; nothing
/// is read then.
std::optional<Series> readCsv(const std::string& text, const std::string& file, const std::string& zone,
                              base::Diagnostics& messages);

}  // namespace forecast
