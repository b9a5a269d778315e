// Names that tell things apart for people.
#pragma once

#include <string>

namespace input {

/// The same, capitals of any script left aside: 'Äste' and 'äste'.
bool isSameButForCapitals(const std::string& a, const std::string& b);

}  // namespace input
