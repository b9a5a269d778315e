// A computed job becomes every drawing that its documents may name.
#pragma once

#include "app/pack/compute.h"
#include "model/job_result.h"
#include "typeset/drawing_request.h"

namespace app {

/// Each is drawn when a document asks for it, so all that is handed in must outlive them.
typeset::Drawings drawingsOf(const model::JobResult& x, const Shipped& shipped, const typeset::Fonts& fonts);

}  // namespace app
