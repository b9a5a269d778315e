// How warm the boards get in the course of a day, above the strips of fit hours.
#pragma once

#include "drawings/pen/paths.h"

#include <functional>

namespace drawings {

/// Draws the surface of each deck against the dew point and the product's limit, from 'top' on between 'left'
/// and 'width'; 'on' says where a minute of the clock stands. Decks of one course share a curve. Returns the
/// height taken: none where the weather of no hour is known.
Dim putSurface(Items& items, const HoursDay& day, const Pen& pen, const std::function<Dim(int)>& on, Dim left,
               Dim width, Dim top);

}  // namespace drawings
