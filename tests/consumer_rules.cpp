// Deposits and cancelling in the regions that come with planksheaf, against the law named in each row.
#include "estimate/consumer_rules.h"

#include "app/pack/consumer_check.h"
#include "fixtures.h"
#include "safety_jobs.h"

using namespace base;
using fixtures::cents;
using safety_jobs::shipped;

namespace {

const model::Region& regionOf(const std::string& id) { return shipped().content.regions.at(id); }

Date day(const char* iso) { return *parseDate(iso); }

/// The lawful most in coins, of 'AU-QLD' or 'NZ'; nothing where the law names none. Advice is no law.
std::optional<std::int64_t> lawfulMost(const std::string& place, Money total, Money specialOrders) {
  const auto line = place.find('-');
  std::string id = place.substr(0, line);
  for (char& c : id) c = static_cast<char>(c - 'A' + 'a');
  const auto* cap =
      estimate::depositCapFor(regionOf(id), line == std::string::npos ? "" : place.substr(line + 1), total);
  if (cap == nullptr || cap->isAdvice) return {};
  return estimate::mostDeposit(*cap, total, specialOrders).minor;
}

/// A case whose total is given, and what is said about it.
struct Told {
  model::JobInputs c = fixtures::sampleCase();
  Money total;

  Told(const char* region, const char* state, Money of, Share deposit) : total(of) {
    c.region = &regionOf(region);
    c.job.site.region = region;
    c.job.site.state = state;
    c.job.price.deposit = deposit;
    c.job.price.depositPos = {"job.yaml", 21, 18};
    c.job.startPos = {"job.yaml", 5, 8};
  }

  std::string said() const {
    model::Price price;
    price.total = total;
    price.deposit = share(total, c.job.price.deposit, Round::Down);
    price.depositCap = estimate::depositCapFor(*c.region, c.job.site.state, total);
    Diagnostics messages;
    app::checkConsumerRules(c, price, sheets::Formatter(*c.region, shipped().english), messages);
    std::string all;
    for (const auto& d : messages.all()) all += format(d);
    return all;
  }
};

}  // namespace

TEST_CASE("the most a deposit may be follows state and total", "[law]") {
  const std::optional<std::int64_t> none;
  const struct {
    const char* place;
    std::int64_t total, specialOrders;  // in coins
    std::optional<std::int64_t> most;
  } rows[] = {
      // Queensland Building and Construction Commission, page on deposits: 20 % to $3,300, 10 % to $19,999,
      // 5 % from $20,000
      {"AU-QLD", 3'300'00, 0, 660'00},
      {"AU-QLD", 3'300'01, 0, 330'00},
      {"AU-QLD", 19'999'00, 0, 1'999'90},
      {"AU-QLD", 20'000'00, 0, 1'000'00},
      {"AU-QLD", 60'000'00, 0, 3'000'00},
      // Home Building Act 1989 (NSW), s 8: 10 %; residential building work is over $5,000
      {"AU-NSW", 12'000'00, 0, 1'200'00},
      {"AU-NSW", 4'900'00, 0, none},
      {"AU-NSW", 5'000'00, 0, none},
      // Domestic Building Contracts Act 1995 (Vic), s 11. Painting alone is out (Regulations 2017, reg 7),
      // oiling is not named: taken to bind
      {"AU-VIC", 19'999'00, 0, 1'999'90},
      {"AU-VIC", 20'000'00, 0, 1'000'00},
      {"AU-VIC", 30'000'00, 0, 1'500'00},
      // Home Building Contracts Act 1991 (WA), s 10: 6.5 % between $7,500 and $500,000
      {"AU-WA", 7'499'99, 0, none},
      {"AU-WA", 8'000'00, 0, 520'00},
      {"AU-WA", 12'000'00, 0, 780'00},
      {"AU-WA", 500'000'01, 0, none},
      // Building Work Contractors Act 1995 (SA), s 30; amounts from memory
      {"AU-SA", 12'000'00, 0, 1'000'00},
      {"AU-SA", 30'000'00, 0, 1'500'00},
      // Residential Building Work Contracts and Dispute Resolution Act 2016 (Tas): 10 % under $50,000, 5 %
      // above
      {"AU-TAS", 30'000'00, 0, 3'000'00},
      {"AU-TAS", 50'000'00, 0, 2'500'00},
      // Master Builders ACT: the Building Act sets no most
      {"AU-ACT", 12'000'00, 0, none},
      // Cal. Bus. & Prof. Code 7159.5(a)(3): the lesser of $1,000 and 10 %
      {"US-CA", 9'999'99, 0, 999'99},
      {"US-CA", 10'000'00, 0, 1'000'00},
      {"US-CA", 50'000'00, 0, 1'000'00},
      // NRS 624.970 (Nevada), contracts from 1 October 2023
      {"US-NV", 6'000'00, 0, 600'00},
      {"US-NV", 15'000'00, 0, 1'000'00},
      // M.G.L. c. 142A s 2(a)(6): the greater of one third and special orders, over $1,000
      {"US-MA", 9'000'00, 0, 3'000'00},
      {"US-MA", 9'000'00, 4'000'00, 4'000'00},
      {"US-MA", 1'000'00, 0, none},
      // 10 M.R.S. 1487(5) (Maine): one third, over $3,000
      {"US-ME", 6'000'00, 0, 2'000'00},
      {"US-ME", 3'000'00, 0, none},
      // 73 P.S. 517.9 (Pennsylvania): one third and special orders, over $5,000
      {"US-PA", 6'000'00, 500'00, 2'500'00},
      {"US-PA", 4'800'00, 0, none},
      // Md. Code, Bus. Reg. 8-617(b): one third, never more by a broken coin
      {"US-MD", 10'000'00, 0, 3'333'33},
      {"US-TX", 12'000'00, 0, none},
      // No statute known; Consumer Protection (NZ) advises 10 %
      {"NZ", 12'000'00, 0, none},
      {"GB", 12'000'00, 0, none},
      {"IE", 12'000'00, 0, none},
  };
  for (const auto& row : rows) {
    INFO(row.place << " " << row.total);
    CHECK(lawfulMost(row.place, {row.total}, {row.specialOrders}) == row.most);
  }
  const auto* advice = estimate::depositCapFor(regionOf("nz"), "", {12'000'00});
  REQUIRE(advice);
  CHECK(estimate::mostDeposit(*advice, {12'000'00}, {}) == cents(1'200'00));
}

TEST_CASE("special orders never let a deposit pass the total", "[law]") {
  CHECK(lawfulMost("US-PA", {6'000'00}, {9'000'00}) == 6'000'00);
  CHECK(lawfulMost("US-MA", {6'000'00}, {9'000'00}) == 6'000'00);
}

TEST_CASE("the last day to cancel is counted as the law of the place counts", "[law]") {
  const struct {
    const char *region, *agreed, *holiday, *last;
    bool isUninvited;
  } rows[] = {
      // Fair Trading Act 1986 (NZ), s 36M: 5 working days after the copy is received
      {"nz", "2026-05-28", "2026-06-01", "2026-06-05", true},
      // Australian Consumer Law, s 82: 10 business days
      {"au", "2026-10-09", "", "2026-10-23", true},
      // Consumer Contracts Regulations 2013 (UK), reg 30(2): 14 days after the day of the contract, or after
      // the last goods come
      {"gb", "2026-10-02", "", "2026-10-16", false},
      {"gb", "2026-10-12", "", "2026-10-26", false},
      // Consumer Rights Act 2022 (Ireland), Part 5: 14 days, 30 when the trader called unasked
      {"ie", "2026-10-05", "", "2026-10-19", false},
      {"ie", "2026-10-05", "", "2026-11-04", true},
      // 16 CFR 429.1: third business day; Saturdays count, Sundays and federal holidays do not
      {"us", "2026-12-24", "2026-12-25", "2026-12-29", false},
      {"us", "2026-10-10", "2026-10-12", "2026-10-15", false},
      {"us", "2026-09-02", "2026-09-07", "2026-09-05", false},
  };
  for (const auto& row : rows) {
    INFO(row.region << " " << row.agreed);
    std::vector<Date> holidays;
    if (*row.holiday != '\0') holidays.push_back(day(row.holiday));
    CHECK(isoDate(estimate::lastDayToCancel(regionOf(row.region).cancellation, day(row.agreed),
                                            row.isUninvited, holidays)) == row.last);
  }
}

TEST_CASE("a deposit is held against the most for the total that was computed", "[law]") {
  CHECK(Told("au", "WA", {12'000'00}, Share{6'500'000}).said().empty());
  CHECK(Told("au", "WA", {12'000'00}, Share::whole(10)).said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $1,200.00 on $12,000.00 is more than the "
        "$780.00 "
        "allowed in Western Australia\n"
        "  hint: write 'deposit: 6.5 %' or less; Home Building Contracts Act 1991 (WA), s 10\n");
  CHECK(Told("au", "VIC", {19'999'00}, Share::whole(10)).said().empty());
  CHECK(Told("au", "VIC", {20'000'00}, Share::whole(10)).said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $2,000.00 on $20,000.00 is more than the "
        "$1,000.00 allowed in Victoria\n"
        "  hint: write 'deposit: 5 %' or less; Domestic Building Contracts Act 1995 (Vic), s 11\n");
  CHECK(Told("us", "CA", {12'900'00}, Share::whole(10)).said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $1,290.00 on $12,900.00 is more than the "
        "$1,000.00 allowed in California\n"
        "  hint: write 'deposit: 7.75 %' or less; Cal. Bus. & Prof. Code 7159.5(a)(3)\n");
  CHECK(Told("us", "TX", {12'900'00}, Share::whole(50)).said().empty());
  CHECK(Told("nz", "", {714'81}, Share::whole(20)).said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $142.96 on $714.81 is more than the $71.48 "
        "advised in New Zealand\n"
        "  hint: write 'deposit: 10 %' or less; Consumer Protection (NZ)\n");
  CHECK(Told("nz", "", {714'81}, Share::whole(10)).said().empty());
}

TEST_CASE("special orders of the job raise the deposit that Pennsylvania allows", "[law]") {
  Told told("us", "PA", {6'000'00}, Share::whole(40));  // 2,400.00
  CHECK(told.said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $2,400.00 on $6,000.00 is more than the "
        "$2,000.00 "
        "allowed in Pennsylvania\n"
        "  hint: write 'deposit: 33.33 %' or less; 73 P.S. 517.9\n");
  told.c.job.price.specialOrders = cents(500'00);
  CHECK(told.said().empty());
}

TEST_CASE("a cap known from memory is not told as a fact", "[law]") {
  CHECK(Told("au", "SA", {12'000'00}, Share::whole(10)).said() ==
        "job.yaml:21:18: warning: price.deposit: the deposit of $1,200.00 on $12,000.00 may be more than "
        "the "
        "law of South Australia allows\n"
        "  hint: ask the consumer affairs office of the state or territory; our figure is from memory\n");
}

TEST_CASE("a deposit where the states differ asks for the state", "[law]") {
  CHECK(Told("us", "", {500'00}, Share::whole(10)).said() ==
        "job.yaml:21:18: warning: price.deposit: deposit limits differ by state in United States\n"
        "  hint: add the state to 'site:', like 'state: WY'\n");
  CHECK(Told("us", "", {500'00}, Share{}).said().empty());
}

TEST_CASE("a start inside the days to cancel of an uninvited sale is told", "[law]") {
  Told au("au", "ACT", {5'000'00}, Share{});
  au.c.job.quoted = day("2026-10-09");
  au.c.job.start = day("2026-10-23");
  CHECK(au.said().empty());
  au.c.job.customer.isUninvited = true;
  CHECK(
      au.said() ==
      "job.yaml:5:8: warning: start: you called uninvited, so the customer may cancel until 2026-10-23 even "
      "if they "
      "accept on the day of the quote\n"
      "  hint: take no payment and do no work until then; Australian Consumer Law, s 82, unsolicited "
      "consumer "
      "agreements; check with the consumer affairs office of the state\n");
  au.c.job.start = day("2026-10-26");
  CHECK(au.said().empty());
  au.c.job.crew.off = {day("2026-10-12")};  // a holiday moves the last day to Monday 26 October
  CHECK_FALSE(au.said().empty());
  Told ie("ie", "", {5'000'00}, Share{});
  ie.c.job.quoted = day("2026-10-05");
  ie.c.job.start = day("2026-11-04");
  ie.c.job.customer.isUninvited = true;
  CHECK(
      ie.said() ==
      "job.yaml:5:8: warning: start: you called uninvited, so the customer may cancel until 2026-11-04 even "
      "if they "
      "accept on the day of the quote\n"
      "  hint: work done until then may stay unpaid; Consumer Rights Act 2022 (Ireland), Part 5, "
      "off-premises "
      "contracts; check with the Competition and Consumer Protection Commission\n");
}

TEST_CASE("a job is told its state's cap, or that its state is none", "[law]") {
  const auto said = [](const std::string& job) {
    Diagnostics messages;
    firm_jobs::compute(app::JobText{"job.yaml", job}, {}, messages);
    std::string all;
    for (const auto& d : messages.all()) all += format(d);
    return all;
  };
  const auto inUs = [](const std::string& state, const std::string& deposit) {
    const std::string there =
        safety_jobs::replaced(safety_jobs::replaced(safety_jobs::inRegion(safety_jobs::plainJob, "us"),
                                                    "region: us, ", "region: us, state: " + state + ", "),
                              "timezone: Pacific/Auckland, latitude: -45.0, longitude: 168.7",
                              "timezone: America/New_York, latitude: 36.0, longitude: -82.0");
    return safety_jobs::replaced(there, "deposit: 10 %", "deposit: " + deposit);
  };
  CHECK(said(inUs("CA", "10 %")).empty());
  CHECK(said(inUs("CA", "20 %")).starts_with("job.yaml:19:18: warning: price.deposit: the deposit of $"));
  CHECK(said(inUs("Ontario", "10 %"))
            .starts_with("job.yaml:4:27: error: site.state: 'Ontario' is not a known state\n"
                         "  hint: known: AK, AL, AR, "));
}

TEST_CASE("the quote tells the days to cancel of its region", "[law]") {
  const auto text = [](const char* region) { return regionOf(region).cancellation.text; };
  const auto says = [](const std::string& all, const char* words) {
    return all.find(words) != std::string::npos;
  };
  CHECK(says(text("nz"), "within 5 working days after the day you get your copy of the agreement"));
  CHECK(says(text("ie"),
             "within 14 days of agreeing, or within 30 days if we called on you without being asked"));
  CHECK(says(text("au"), "within 10 business days"));
  CHECK(says(text("au"), "we take no payment and do no work"));
}
