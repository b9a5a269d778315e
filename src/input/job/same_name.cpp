#include "input/job/same_name.h"

#include <fontconfig/fontconfig.h>

namespace input {

bool isSameButForCapitals(const std::string& a, const std::string& b) {
  const auto letters = [](const std::string& s) { return reinterpret_cast<const FcChar8*>(s.c_str()); };
  return FcStrCmpIgnoreCase(letters(a), letters(b)) == 0;  // it has Unicode's case folding
}

}  // namespace input
