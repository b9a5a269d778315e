// The drawings of the day plan: the strips and the fit hours of each day.
#pragma once

#include "drawings/drawings.h"
#include "model/job_result.h"
#include "typeset/drawing_request.h"

namespace app {

/// Adds 'strips-1', 'hours-1' and so on, by the number of the day, as the day plan's facts name them.
void addDayDrawings(typeset::Drawings& drawings, const model::JobResult& x, const drawings::Pen& pen,
                    typeset::Dim width);

}  // namespace app
