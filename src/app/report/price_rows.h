// The lines of a price as a firm's accounts take them.
#pragma once

#include "app/pack/compute.h"
#include "sheets/words/formatter.h"

namespace app {

struct PriceRow {
  std::string kind;                 // by the names of content/schemas/figures.schema.json
  std::string text;                 // what the customer pays for, in the language of 'w'
  std::optional<std::string> area;  // nothing = the whole job
  base::Count quantity;
  std::string unit;  // m2, ft2, L, gal, day or lot
  base::Money rate, amount;
};

/// Before tax, without the discount.
std::vector<PriceRow> priceRows(const Computation& x, const sheets::Formatter& w);

/// '8686.10': no groups, a point, all digits of the coin.
std::string plainMoney(base::Money m, int digits);

/// The rows as comma-separated values after RFC 4180 (2005), a head line first, a discount last
/// with an amount below zero. 'tax_pct' is the rate of tax on a row, in per cent.
std::string priceCsv(const Computation& x, const sheets::Formatter& w);

}  // namespace app
