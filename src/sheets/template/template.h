// The text of a template.
#pragma once

#include <string>

namespace sheets {

struct Template {
  std::string file;  // for messages
  std::string text;
  int firstLine = 1;  // in the file: below the head of a document
};

}  // namespace sheets
