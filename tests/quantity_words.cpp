#include "base/quantity_words.h"

#include <catch2/catch.hpp>

using namespace base;

TEST_CASE("decimals are rounded once, halves away from zero, and grouped") {
  CHECK(decimal(1'234'565'000, 2, ".", ",") == "1,234.57");
  CHECK(decimal(1'234'564'999, 2, ".", ",") == "1,234.56");
  CHECK(decimal(1'234'565'000, 2, ",", "\u202f") == "1\u202f234,57");
  CHECK(decimal(1'234'567'000'000, 0, ".", ",") == "1,234,567");
  CHECK(decimal(999'999, 2, ".", ",") == "1.00");
  CHECK(decimal(5'000, 2, ".", ",") == "0.01");
  CHECK(decimal(0, 1, ".", ",") == "0.0");
  CHECK(decimal(123, 6, ".", ",") == "0.000123");
}

TEST_CASE("a negative number has a minus sign unless it rounds to zero") {
  CHECK(decimal(-5'000, 2, ".", ",") == "\u22120.01");
  CHECK(decimal(-4'999, 2, ".", ",") == "0.00");
  CHECK(decimal(-1'000'000'000, 0, ".", ",") == "\u22121,000");
}

TEST_CASE("areas are told in square metres and square feet") {
  CHECK(inSquareMetres(squareMetres(76)) == 76'000'000);
  CHECK(inSquareMetres({1'999'999}) == 1);  // cut off, so that only the last step rounds
  // 1 ft2 = 0.092 903 04 m2: NIST SP 811 (2008), App. B.8.
  CHECK(inSquareFeet({10 * 92'903'040'000}) == 10'000'000);
}

TEST_CASE("feet and inches go to the nearest quarter") {
  CHECK(feetAndInches({486 * 25'400'000LL}) == "40'-6\"");
  CHECK(feetAndInches({84 * 25'400'000LL + 12'700'000}) == "7'-0½\"");
  CHECK(feetAndInches({8 * 25'400'000LL}) == "8\"");
  CHECK(feetAndInches(millimetres(3658)) == "12'-0\"");  // 144.02 in
  CHECK(feetAndInches({12 * 25'400'000LL - 1}) == "1'-0\"");
}
