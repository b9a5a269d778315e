// What stands around the text on every page: letterhead or running head, ruler, foot.
#pragma once

#include "typeset/setter.h"

namespace typeset {

/// Draws it on all pages, once their number is known. All of it is decoration to a reader of tags.
void addFurniture(Setter& setter);

}  // namespace typeset
