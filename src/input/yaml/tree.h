// YAML text becomes a tree.
#pragma once

#include "base/diagnostic.h"
#include "input/yaml/node.h"

#include <optional>
#include <string>

namespace input {

/// Reads one YAML document. Anchors, aliases, tags, merge keys and what the library would lose in silence are
/// errors. Nothing when there is no tree to go on with.
std::optional<Node> parseTree(const std::string& text, const std::string& file, base::Diagnostics& messages);

/// The same for what cleanText gives, all by yaml-cpp; parseTree reads what is plain YAML faster.
std::optional<Node> parseWithLibrary(const std::string& text, const std::string& file,
                                     base::Diagnostics& messages);

/// The bytes of a file as text: no byte order mark, line ends as '\n', no white space at the end. Nothing
/// (and an error) for what is too long, not UTF-8, or holds control characters or tabs before the first
/// letter of a line.
std::optional<std::string> cleanText(const std::string& bytes, const std::string& file,
                                     base::Diagnostics& messages);

}  // namespace input
