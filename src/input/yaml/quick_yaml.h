// What nearly every file keeps to, read by libyaml: many times as fast as yaml-cpp, which explains mistakes.
#pragma once

#include "input/yaml/node.h"

#include <optional>

namespace input {

/// The tree that yaml-cpp would give, or nothing where it has something to say: mistakes, anchors, tags,
/// marks of a document; and where the two may differ: values over several lines, keys that are no words.
/// 'text' comes from cleanText.
std::optional<Node> readQuickly(const std::string& text);

}  // namespace input
