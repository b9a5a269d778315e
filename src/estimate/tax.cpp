#include "estimate/tax.h"

namespace estimate {
namespace {

/// A credit carries the same tax as the sale it takes back, whatever the rounding.
base::Money taxOn(base::Money net, const model::TaxRule& rule) {
  const base::Money zero;
  return net < zero ? zero - share(zero - net, rule.rate, rule.rounding)
                    : share(net, rule.rate, rule.rounding);
}

}  // namespace

base::Money tax(const std::vector<base::Money>& net, const model::TaxRule& rule) {
  base::Money sum, onLines;
  for (const auto& line : net) {
    sum += line;
    if (rule.onLines) onLines += taxOn(line, rule);
  }
  return rule.onLines ? onLines : taxOn(sum, rule);
}

}  // namespace estimate
