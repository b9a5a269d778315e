// The lines of a price as a firm's accounts take them.
#pragma once

#include "model/job_result.h"

#include <optional>
#include <string>
#include <vector>

namespace app {

struct PriceRow {
  std::string kind;                 // by the names of content/schemas/figures.schema.json
  std::string text;                 // what the customer pays for, in the language of the job's content
  std::optional<std::string> area;  // nothing = the whole job
  base::Count quantity;
  std::string unit;  // m2, ft2, L, gal, day or lot
  base::Money amount;
};

/// Before tax, without the discount.
std::vector<PriceRow> priceRows(const model::JobResult& x);

/// '8686.10': no groups, a point, all digits of the coin.
std::string plainMoney(base::Money m, int digits);

/// The amount for one of its quantity, with the fewest digits, those of the coin at least, that multiplied
/// and rounded give the amount again.
std::string rateOf(const PriceRow& row, int digits);

/// The rows as comma-separated values after RFC 4180 (2005), a head line first, a discount last
/// with an amount below zero. 'tax_pct' is the rate of tax on a row, in per cent.
std::string priceCsv(const model::JobResult& x);

}  // namespace app
