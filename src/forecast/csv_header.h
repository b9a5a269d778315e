// What the columns of a table of weather hold.
#pragma once

#include "forecast/csv_rows.h"
#include "forecast/units.h"

namespace forecast {

struct Column {
  std::size_t index = 0;
  Element element = Element::Air;
  Unit unit;
  bool isBefore = false;  // rain of the step that ends at the time
};

struct Header {
  std::optional<std::size_t> time;
  std::vector<Column> columns;  // one for each element that is there
};

/// Reads the names of columns. By Open-Meteo's names alone where 'isOpenMeteo', else by common ones. Errors
/// where a column has no unit, or one we do not know, or stands twice.
Header readHeader(const Row& row, bool isOpenMeteo, const std::string& file, base::Diagnostics& messages);

}  // namespace forecast
