// In which order the boards of a deck are coated, so that no edge dries before the next board meets it.
#pragma once

#include "model/plan.h"

namespace schedule {

/// Each deck and coat of the estimate, in its order. Boards in a strip = open time x crew rate / (length of a
/// board x pitch), at least one; where boards differ in length, as many as their own sizes allow. The crew
/// rate is that of laying the coat, the whole crew together; cutting in goes a strip ahead and is not
/// counted. The open time is the product's at the warmest surface of the hours the coat is planned for, at 20
/// C where no weather is known. Strips run from the side away from the way out towards it, and hold every
/// board once.
///
/// Stairs are laid tread by tread: from the top step down, standing on dry treads below, or from the foot up
/// where the way out lies at the top. Screens, fascia and rails, areas that others measured and decks without
/// boards have no strips, only the open time.
std::vector<model::WetEdge> wetEdges(const model::JobInputs& c, const model::Content& content,
                                     const model::Estimate& e, const model::Plan& plan);

}  // namespace schedule
