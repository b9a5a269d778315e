// The coins of currencies.
#pragma once

#include <optional>
#include <string>

namespace base {

/// Digits after the point of a currency's smallest coin, by ISO 4217; nothing for an unknown code.
std::optional<int> currencyDigits(const std::string& code);

}  // namespace base
