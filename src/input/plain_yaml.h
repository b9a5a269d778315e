// The part of YAML that nearly every file keeps to, read in one go: many times as fast as the library.
#pragma once

#include "input/tree.h"

namespace input {

/// The tree that the library would give, or nothing for whatever is not plain: mistakes, anchors, tags, values
/// over several lines, escapes, empty items, long or quoted keys. 'text' comes from cleanText.
std::optional<Node> readPlainYaml(const std::string& text);

}  // namespace input
