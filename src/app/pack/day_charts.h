// The drawings of the day plan: the strips and the fit hours of each day.
#pragma once

#include "drawings/drawings.h"
#include "sheets/facts/make_facts.h"

#include <map>

namespace app {

/// Adds 'strips-1', 'hours-1' and so on, by the number of the day, as the day plan's facts name them. The
/// strips are as large as their side of this paper leaves room for.
void addDayDrawings(std::map<std::string, typeset::Drawing>& drawings, const sheets::Computed& x,
                    const drawings::Pen& pen, typeset::Dim width, model::Paper paper);

}  // namespace app
