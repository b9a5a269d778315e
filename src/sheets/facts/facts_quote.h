// Facts about the price by area, how it is paid and how it is accepted.
#pragma once

#include "model/job_result.h"
#include "sheets/facts/facts.h"
#include "sheets/words/formatter.h"

namespace sheets {

/// The lines of the quote, added up: work on each area, materials (product and consumables) and what is done
/// for the whole job (preparation, travel, disposal). Together they are the subtotal.
struct PriceParts {
  struct Part {
    base::Money amount, cost;  // cost: direct, for the office only
  };
  std::vector<Part> areas;  // in the job's order
  Part materials, site;
};
PriceParts priceParts(const model::JobResult& x);

/// 'offer': how the price is shown and its parts; 'trust', 'payment' and 'accept'.
void addOffer(Facts& facts, const model::JobResult& x, const Formatter& w);

/// An address that writes the e-mail by which a customer accepts (RFC 6068).
std::string acceptanceMail(const model::JobResult& x);

}  // namespace sheets
