// A firm's file over the one that comes with the program.
#pragma once

#include "base/diagnostic.h"
#include "input/yaml/node.h"

#include <optional>
#include <string>

namespace input {

/// Lays 'over' on 'under', key by key: groups merge, all else takes the place of what is below it. Lists
/// whose items have ids merge by them; a new item stands behind the one above it in 'over', and first where
/// there is none. What comes from 'over' has marks that say so.
void layOver(Node& under, Node over);

/// The same without such marks: both are of one file. 'over' is a group.
void layKeys(Node& under, Node over);

/// The tree of a file, with that of another laid over it where there is one ('overlay' is not empty and not
/// only notes). Nothing when the file itself has no tree.
std::optional<Node> readLayered(const std::string& file, const std::string& overlay,
                                base::Diagnostics& messages);

/// There is something of this name, be it only a link to nowhere: it is to be read, or told.
bool isThere(const std::string& file);

}  // namespace input
