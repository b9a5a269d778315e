// Looks for sheets that hold much, made from a theme.
#pragma once

#include "model/theme.h"

namespace app {

/// The look of sheets for the office: tables as small as notes.
model::Theme dense(model::Theme theme);
/// The look of a sheet that has grown too long to be read out: reading as small as notes, on a grid
/// that may be tighter by so many per cent.
model::Theme close(model::Theme theme, int tighten);

}  // namespace app
