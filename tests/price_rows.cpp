// The lines of a price for the accounts, read back as a spreadsheet would: RFC 4180 (2005).
#include "app/report/price_rows.h"

#include "app/report/csv.h"
#include "safety_jobs.h"

using namespace safety_jobs;

TEST_CASE("lines of a price name what is paid for, where, in which unit") {
  const auto x = example("porch");
  const auto rows = app::priceRows(x);
  REQUIRE(rows.size() == x.price.lines.size());
  CHECK(rows[0].kind == "wash");
  CHECK(rows[0].text == "Washing");
  CHECK(rows[0].area == "Back porch");
  CHECK(rows[0].unit == "ft2");
  base::Money sum;
  for (const auto& row : rows) {
    sum += row.amount;
    if (row.kind == "product") CHECK(row.unit == "gal");
    CHECK(row.area.has_value() == (row.kind == "wash" || row.kind == "fix" || row.kind == "oil"));
  }
  CHECK(sum == x.price.subtotal);
}

TEST_CASE("the accounts read a line each, the discount last") {
  const auto x = example("lakeside");
  const std::string csv = app::priceCsv(x);
  const std::string head =
      "\xEF\xBB\xBFref,customer,kind,text,area,quantity,unit,rate,amount,tax_pct,currency\r\n";
  CHECK(csv.substr(0, head.size()) == head);
  const std::string last = "WP-2027-022,Sallowmere Bathing Club,discount,Discount,,1,lot,";
  const std::size_t at = csv.rfind(last);
  REQUIRE(at != std::string::npos);
  const std::string less = app::plainMoney(base::Money{} - x.price.discount, 2);
  CHECK(csv.substr(at + last.size()) == less + "," + less + ",20,GBP\r\n");
}

TEST_CASE("quantity times rate is the amount, with the fewest digits of the coin that give it") {
  const auto rate = [](base::Money amount, std::int64_t hundredths, int digits) {
    return app::rateOf({"wash", "Washing", {}, {hundredths * 10'000}, "m2", amount}, digits);
  };
  CHECK(rate({98'99}, 100, 2) == "98.99");
  CHECK(rate({120'00}, 300, 2) == "40.00");
  CHECK(rate({98'99}, 4000, 2) == "2.4748");    // 2.47 would give 98.80, 2.475 99.00
  CHECK(rate({98'99}, 43'056, 2) == "0.2299");  // 0.230 would give 99.03
  CHECK(rate({4950}, 4000, 0) == "123.75");     // of a currency without coins: 124 would give 4,960
  CHECK(rate({98'990}, 4000, 3) == "2.47475");  // of one with three digits: 2.475 would give 99.000
  CHECK(rate({-62'18}, 100, 2) == "-62.18");
  CHECK(rate({}, 4000, 2) == "0.00");
}

TEST_CASE("a cell that a spreadsheet would compute is text, a number below zero stays one") {
  CHECK(app::csvLine({"=1+1", "-3.50", "-3-4", "a, \"b\"", "@x"}) ==
        "'=1+1,-3.50,'-3-4,\"a, \"\"b\"\"\",'@x\r\n");
}
