// The head of a template says what document it is.
#pragma once

#include "base/diagnostic.h"
#include "model/document.h"

#include <optional>
#include <string>
#include <vector>

namespace input {

struct TemplateText {
  std::optional<model::DocumentKind> document;  // nothing for a part of other templates: it has no head
  std::string body;
  int firstLine = 1;  // of the body, in the file
};

/// Takes the front matter, YAML between two lines of '---' at the very top, from a template. Its mistakes go
/// to 'messages'.
TemplateText readTemplate(const std::string& text, const std::string& file, base::Diagnostics& messages);

/// Reads the list of the documents that a pack holds, each one of 'known'.
std::vector<std::string> readPackList(const std::string& file, const std::vector<std::string>& known,
                                      base::Diagnostics& messages);

}  // namespace input
