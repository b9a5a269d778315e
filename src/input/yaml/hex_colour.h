// Colours as they are written: '#7a4522'.
#pragma once

#include "input/yaml/cursor.h"
#include "model/theme.h"

namespace input {

/// '#7a4522'
model::Colour colour(const Field& f);

}  // namespace input
