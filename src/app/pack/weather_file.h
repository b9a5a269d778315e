// The weather file that a job names.
#pragma once

#include "base/diagnostic.h"
#include "model/job.h"

#include <string>

namespace app {

/// From the job's folder.
std::string weatherPath(const model::Job& job, const std::string& jobFile);

/// Reads the forecast where the job names one and its time zone is known. Errors where it cannot be read; a
/// warning where it is for a place over 50 km from the site.
void readWeatherFile(model::Job& job, const std::string& jobFile, base::Diagnostics& messages);

/// What was understood: 'forecast.json, MET Norway, for 60.00, 10.50, 3 km from the site, Tue 2027-03-16
/// 06:00 to ..., steps of 1 h'. The forecast has steps.
std::string weatherWords(const model::Job& job);

}  // namespace app
