// Looks that take less paper, made from a theme.
#pragma once

#include "model/theme.h"

#include <vector>

namespace typeset {

/// The theme on grids whose unit is a little smaller, as far as it allows, the widest first; the last one
/// also closes up the white between sections. Type stays as large.
std::vector<model::Theme> tighter(const model::Theme& theme);

/// The theme with the white between sections closed up, then on those grids.
std::vector<model::Theme> closer(model::Theme theme);

/// Tables as small as notes.
model::Theme compactTables(model::Theme theme);
/// Besides, reading as small as notes, on a grid that may be tighter by so much.
model::Theme compactBody(model::Theme theme, base::Share shrink);

/// For a sheet that is read standing up, in bad light: reading never below 10.5 pt on lines of 14 pt, notes
/// and labels never below 9 pt.
model::Theme legible(model::Theme theme);
/// With less white between sections, lines as far apart as they were.
model::Theme closedUp(model::Theme theme);

}  // namespace typeset
