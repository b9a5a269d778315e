// A computed job becomes every drawing that its documents may name.
#pragma once

#include "app/pack/shipped.h"
#include "drawings/drawings.h"
#include "model/job_result.h"
#include "typeset/drawing_request.h"

namespace app {

/// Photographs that cannot be read are mistakes of the job.
void checkPhotos(const model::Job& job, base::Diagnostics& messages);
/// Upright and no finer than paper shows; messages for files that are no sound pictures.
std::vector<drawings::Photograph> photographsOf(const model::Job& job, base::Diagnostics& messages);

/// Each is drawn when a document asks for it, so all that is handed in must outlive them.
typeset::Drawings drawingsOf(const model::JobResult& x, const Shipped& shipped, const typeset::Fonts& fonts,
                             const std::vector<drawings::Photograph>& photos);

}  // namespace app
