// Tax and currencies.
#pragma once

#include "model/content.h"

#include <optional>
#include <string>
#include <vector>

namespace estimate {

/// Tax on net amounts by a region's rule: on their sum, or on each line and then added up.
base::Money tax(const std::vector<base::Money>& net, const model::TaxRule& rule);
/// The tax contained in an amount that includes it: 1/11 at 10 %, 3/23 at 15 %.
base::Money taxWithin(base::Money gross, const model::TaxRule& rule);
/// Digits after the point of a currency's smallest coin, by ISO 4217; nothing for an unknown code.
std::optional<int> currencyDigits(const std::string& code);

}  // namespace estimate
