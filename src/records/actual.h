// What the recorded coats really took.
#pragma once

#include "base/diagnostic.h"
#include "model/estimate.h"

namespace records {

/// The job's records beside the planned coats. Litres given for several decks together are shared out in
/// proportion to the planned ones, to the last nanolitre; those of the parts of a coat are added up.
std::vector<model::ActualCoat> actualCoats(const model::JobInputs& c, const model::Estimate& e);

/// The same, and what is left over of the product that was there. By the books nothing while a coat has no
/// record with its litres, and where they are more than there was; as counted nothing where the job does not
/// say.
model::AsLaid asLaid(const model::JobInputs& c, const model::Estimate& e, const model::ProductNeed& product);

/// Litres that look like a slip of the pen: less than half of the plan, or more than twice as much.
bool isFarFromPlan(base::Volume used, base::Volume planned);

/// Warns of such litres, and where more was used than was bought and in stock.
void warnOfUse(const model::JobInputs& c, const model::AsLaid& laid, const model::ProductNeed& product,
               base::Diagnostics& messages);

/// Those that are not there yet.
void addBatches(std::vector<std::string>& all, const std::vector<std::string>& more);

/// A spreading rate as a product's table has it: without the job's loss, which is added again to whatever is
/// planned with it.
base::Spread withoutLoss(base::Spread asLaid, base::Share loss);

}  // namespace records
