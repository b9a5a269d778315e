// Will the product do? The chance that a job takes more than there is. Statistics: doubles that never meet
// money.
#pragma once

#include "model/estimate.h"

namespace records {

/// The share of Student's t distribution up to t; 'freedom' is whole, 1 or more. Series in closed form:
/// Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4; from memory.
double studentShare(double t, int freedom);

/// The chance that the coats take more than 'have' with the loss.
///
/// A coat's need is a triangle from low over likely to high. Where n finished jobs taught its rate, its
/// logarithm is the t of the next job instead (see learn.h): n + 2 degrees of freedom, for the first guess of
/// the spread weighs three jobs, and the spread by the square root of 1 + 1 / (n + 1), for the mean is
/// uncertain, too. The coats of a job are thirsty together: all lie at the same share of their range.
base::Share chanceOfMore(base::Volume have, const std::vector<model::CoatNeed>& coats, base::Share loss);

/// With what is bought and opened; one more is the smallest tin that at least halves the chance,
/// or the largest there is. A tin that is shut in the shed goes before one to buy.
model::Enough enoughFor(const model::JobInputs& c, const model::Estimate& e,
                        const model::ProductNeed& product);

}  // namespace records
