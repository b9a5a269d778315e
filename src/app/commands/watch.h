// Rebuilds a pack whenever something it is made from is saved.
#pragma once

#include "app/commands/commands.h"

namespace app {

/// Makes the pack, then waits: a save of job, firm, template, theme or content makes it again within a
/// tenth of a second and says what was saved, which documents differ and how long it took. Mistakes are told
/// and waited out. Ends when it is interrupted, or nobody listens (2). Throws std::runtime_error when files
/// cannot be watched.
int watch(const std::string& job, const PackOrder& order);

}  // namespace app
