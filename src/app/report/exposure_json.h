// What the work does to the crew, as JSON.
#pragma once

#include "app/pack/compute.h"

#include <nlohmann/json_fwd.hpp>

namespace app {

/// The object 'exposure' of content/schemas/figures.schema.json; numbers are rounded to what can be measured.
nlohmann::ordered_json exposureJson(const model::JobResult& x);

}  // namespace app
