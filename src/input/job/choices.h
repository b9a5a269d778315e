// The ways of 'choices:', each laid over the rest of its job.
#pragma once

#include "input/yaml/node.h"
#include "model/content.h"
#include "model/job.h"

namespace input {

/// The keys of a choice that take the place of the job's, but for 'coats', 'areas' and 'leave_out'.
inline constexpr const char* choiceKeys[] = {"work", "sanding", "product", "colour"};

/// A job's tree as an item of its 'choices:' has it, without that list: 'coats' holds for all areas, areas
/// merge key by key with those of the same name, all else takes the place of the job's own. What does not fit
/// is left out.
Node withChoice(const Node& root, const Node& choice);
/// Whether an item of 'choices:' leaves out an area of the job.
bool isLeftOut(const Node& choice, const Node& area);

/// An area of the list by its name; the list's size where there is none.
std::size_t areaNamed(const Node& areas, const std::string& name);

}  // namespace input
