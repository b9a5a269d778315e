// The drawings of the day plan: the days at a glance, the strips and the hours of each day with a coat.
#pragma once

#include "drawings/drawings.h"
#include "model/job_result.h"
#include "typeset/drawing_request.h"

namespace app {

/// Adds 'days', and 'strips-1', 'hours-1' and so on, by the number of the day, as the day plan's facts name
/// them.
void addDayDrawings(typeset::Drawings& drawings, const model::JobResult& x, const drawings::Pen& pen,
                    typeset::Dim width);

}  // namespace app
