// Rows of words as columns.
#pragma once

#include <string>
#include <vector>

namespace app {

using TextRow = std::vector<std::string>;

/// Columns as wide as their longest field, two spaces before each. All rows have the same number of fields.
std::string textTable(const std::vector<TextRow>& rows);

}  // namespace app
