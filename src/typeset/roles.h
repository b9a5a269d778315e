// The names of structure elements, as in PDF: ISO 32000-1:2008, 14.8.4.
#pragma once

#include "typeset/page.h"

namespace typeset {

const char* roleName(Role role);

}  // namespace typeset
