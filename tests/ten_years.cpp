// What ten years cost: the factors and sums of life-cycle costing, and what a quote says of them.
#include "app/report/figures_json.h"
#include "estimate/life_cycle.h"
#include "model/names.h"
#include "safety_jobs.h"
#include "sheets/explain/explain.h"

#include <nlohmann/json.hpp>

using namespace estimate;
using namespace safety_jobs;
using base::Money;
using base::Share;

namespace {

constexpr Share percent(int n) { return Share::whole(n); }

/// To six places, as the tables of the handbook print it.
std::int64_t sixPlaces(Factor f) { return base::divide(f.value, 1'000'000'000, base::Round::HalfUp); }

/// In ten-thousandths, so that sums can be compared finer than to the cent.
constexpr Money fine(std::int64_t whole) { return {whole * 10'000}; }
bool isNear(Money m, double expected, double tolerance) {
  return std::abs(static_cast<double>(m.minor) / 10'000 - expected) <= tolerance;
}

struct FactorCase {
  int discount, rise, years;  // %
  std::int64_t millionths;
};

/// First cost, the same amount at the end of some years, and what comes back at the end of the last.
struct CostCase {
  std::int64_t first, yearly, back;
  int discount, from, years;  // %; the first year of the yearly amount, and the last
  double expected, tolerance;
};

Money valueOf(const CostCase& c) {
  std::vector<Payment> payments{{fine(c.first), 0}, {Money{} - fine(c.back), c.years}};
  for (int year = c.from; year <= c.years; ++year) payments.push_back({fine(c.yearly), year});
  return presentValue(payments, {percent(c.discount), {}});
}

std::string asking(const std::string& job) { return replaced(job, "price: {", "price: {ten_years: true, "); }

std::string said(const std::string& job) {
  base::Diagnostics messages;
  CHECK_FALSE(compute(app::JobText{"job.yaml", job}, {}, messages));
  std::string all;
  for (const auto& d : messages.all()) {
    if (d.severity == base::Severity::Error) all += base::format(d);
  }
  return all;
}

}  // namespace

// NIST Handbook 135, Life-Cycle Costing Manual (1995): SPV = (1 + d)^-n. Values worked out from the formula.
TEST_CASE("the single present value is that of the handbook", "[ten years]") {
  constexpr FactorCase cases[] = {
      {3, 0, 1, 970874},  {3, 0, 2, 942596},  {3, 0, 3, 915142},  {3, 0, 4, 888487},  {3, 0, 5, 862609},
      {3, 0, 7, 813092},  {3, 0, 10, 744094}, {3, 0, 12, 701380}, {7, 0, 2, 873439},  {7, 0, 5, 712986},
      {7, 0, 10, 508349}, {7, 0, 20, 258419}, {7, 0, 30, 131367}, {8, 0, 2, 857339},  {8, 0, 3, 793832},
      {8, 0, 4, 735030},  {8, 0, 10, 463193}, {8, 0, 12, 397114}, {8, 0, 15, 315242}, {8, 0, 20, 214548},
      {8, 0, 25, 146018}, {8, 0, 30, 99377}};
  for (const auto& c : cases) {
    INFO(c.discount << " %, year " << c.years);
    CHECK(sixPlaces(singlePresentValue({percent(c.discount), percent(c.rise)}, c.years)) == c.millionths);
  }
}

// The same handbook: UPV = ((1 + d)^n - 1) / (d (1 + d)^n), and with prices that rise by e
// UPV* = (1 + e) / (d - e) (1 - ((1 + e) / (1 + d))^n), n where d = e. Values worked out from the formulas.
TEST_CASE("the uniform present value is that of the handbook, prices rising or not", "[ten years]") {
  constexpr FactorCase cases[] = {
      {3, 0, 3, 2828611},   {3, 0, 4, 3717098},   {3, 0, 5, 4579707},   {3, 0, 7, 6230283},
      {3, 0, 10, 8530203},  {3, 0, 12, 9954004},  {3, 0, 15, 11937935}, {7, 0, 3, 2624316},
      {7, 0, 4, 3387211},   {7, 0, 5, 4100197},   {7, 0, 7, 5389289},   {7, 0, 15, 9107914},
      {7, 0, 25, 11653583}, {8, 0, 1, 925926},    {8, 0, 2, 1783265},   {8, 0, 4, 3312127},
      {8, 0, 5, 3992710},   {8, 0, 7, 5206370},   {8, 0, 10, 6710081},  {8, 0, 15, 8559479},
      {8, 0, 25, 10674776}, {8, 0, 30, 11257783}, {3, 1, 10, 8991899},  {3, 2, 25, 22076619},
      {3, 3, 10, 10000000}, {3, -2, 10, 7683613}, {5, 0, 10, 7721735}};
  for (const auto& c : cases) {
    INFO(c.discount << " %, rising " << c.rise << " %, years " << c.years);
    CHECK(sixPlaces(uniformPresentValue({percent(c.discount), percent(c.rise)}, c.years)) == c.millionths);
  }
}

// Worked examples as courses in engineering economics hand them out, one of 5 %, ten years, and two of the
// notes CE 332, 'Engineering Economics': 55,000 + 750 a year and 40,000 + 3,000 a year from year 4 on. Theirs
// are four-digit table factors.
TEST_CASE("a present value is that of worked examples", "[ten years]") {
  constexpr CostCase cases[] = {{7500, 6000, 500, 5, 1, 10, 53523.45, 0.5},
                                {55000, 750, 5000, 6, 4, 15, 58193, 3},
                                {40000, 3000, 2000, 6, 4, 15, 60283, 3}};
  for (const auto& c : cases) CHECK(isNear(valueOf(c), c.expected, c.tolerance));
}

// Two worked examples of a course in engineering economics, 15 %, by four-digit table factors; the others
// worked out as the handbook does, present value over UPV.
TEST_CASE("an equivalent annual cost is that of worked examples", "[ten years]") {
  constexpr CostCase cases[] = {
      {20000, 8500, 5000, 15, 1, 3, 15820, 3},     {15000, 7000, 3000, 15, 1, 2, 14831.2, 3},
      {5400, 300, 500, 5, 1, 15, 797.0772, 0.005}, {1800, 0, 0, 8, 1, 7, 345.7303, 0.005},
      {2500, 620, 0, 0, 1, 12, 828.3333, 0.005},   {9900, 250, 1000, 3, 1, 25, 791.1081, 0.005}};
  for (const auto& c : cases)
    CHECK(isNear(equivalentAnnualCost(valueOf(c), percent(c.discount), c.years), c.expected, c.tolerance));
}

// PMT = P i / (1 - (1 + i)^-n), by the month: the same sum. Worked out from the formula.
TEST_CASE("a loan is paid back by the same sum each month", "[ten years]") {
  CHECK(isNear(equivalentAnnualCost(fine(10000), {500'000}, 12), 860.6643, 0.005));
  CHECK(isNear(equivalentAnnualCost(fine(5000), {7'990'000 / 12}, 24), 226.1137, 0.005));
  CHECK(isNear(equivalentAnnualCost(fine(7500), {}, 10), 750, 0.005));
}

// NIST Handbook 135 (1995), recurring costs that are not annual: the sum of their SPV. Coats at k, 2k ...
// strictly before the ten years are over. Worked out.
TEST_CASE("coats every few years are discounted one by one", "[ten years]") {
  struct Case {
    std::int64_t first, coat;
    int years, discount;
    double presentValue, perYear;
  };
  constexpr Case cases[] = {{4000, 1200, 2, 3, 8149.5717, 955.3784},
                            {4000, 1200, 3, 3, 7022.8512, 823.2924},
                            {3500, 800, 5, 3, 4190.087, 491.206},
                            {4200, 1100, 2, 0, 8600, 860}};
  for (const auto& c : cases) {
    const auto t = tenYears({.today = fine(c.first),
                             .visit = fine(c.coat),
                             .sanding = {},
                             .visitMonths = 12 * c.years,
                             .firstSanding = 50,
                             .nextSanding = 50},
                            {percent(c.discount), {}});
    CHECK(isNear(t.presentValue, c.presentValue, 0.005));
    CHECK(isNear(t.perYear, c.perYear, 0.005));
  }
}

TEST_CASE("a sanding takes the place of the visit it meets, and visits count from it", "[ten years]") {
  const auto t = tenYears({.today = {100},
                           .visit = {10},
                           .sanding = {50},
                           .visitMonths = 18,
                           .firstSanding = 4,
                           .nextSanding = 4},
                          {});
  std::string years;
  for (const auto& o : t.outlays)
    years += std::to_string(o.year) + (o.kind == model::TenYears::Kind::Sanding ? "s " : " ");
  // months 0, 18, 36, sanding 48, 66, 84, sanding 96, 114
  CHECK(years == "0 2 3 4s 6 7 8s 10 ");
  CHECK(t.sum.minor == 100 + 5 * 10 + 2 * 50);
  CHECK(t.presentValue == t.sum);  // at 0 %
  CHECK(t.perYear.minor == 25);
}

TEST_CASE("ten years of a job are its total and later jobs priced as if they were quoted", "[ten years]") {
  const auto x = computed(asking(plainJob));
  REQUIRE(x.tenYears);
  const auto& t = *x.tenYears;
  // Weathered boards that are not sanded: by the firm's file in the third year, and eight years on.
  REQUIRE(t.outlays.size() == 10);
  CHECK(t.outlays[0].amount == x.price.total);
  CHECK(t.outlays[3].kind == model::TenYears::Kind::Sanding);
  base::Date visit{};
  for (const auto& e : x.plan.events) {
    if (model::nameOf(e) == "maintenance") visit = e.at.day;
  }
  auto later = replaced(plainJob, "start: 2027-03-16", "start: " + base::isoDate(visit));
  later = replaced(later, "state: weathered", "state: oiled\n    coats: 1");
  const auto y = computed(later);
  auto sanded = replaced(later, "coats: 1", "coats: 2");
  const auto z =
      computed(replaced(sanded, "work: [wash, oil]", "work: [wash, sand, oil]\nsanding: [40, 60, 80]"));
  for (std::size_t year = 1; year < 10; ++year) {
    CHECK(t.outlays[year].year == static_cast<int>(year));
    CHECK(t.outlays[year].amount == (year == 3 ? z.price.total : y.price.total));
  }
  CHECK(t.sum == x.price.total + y.price.total * 8 + z.price.total);
  const auto j = nlohmann::json::parse(app::figuresJson(x));
  CHECK(j["ten_years"]["outlays"].size() == 10);
  CHECK(j["ten_years"]["discount_rate_pct"] == 3.0);
  CHECK_FALSE(nlohmann::json::parse(app::figuresJson(y)).contains("ten_years"));
}

TEST_CASE("a quote tells of ten years when asked, with what they are reckoned by", "[ten years]") {
  const auto x = computed(asking(plainJob));
  const std::string quote = together(documents(x, {"quote"}).at("quote"));
  for (const char* words :
       {"Over ten years", "2027 to 2036, at today’s prices, incl. GST. An estimate, not an offer.",
        "today’s work is", "eight visits, a wash and a coat,", "one sanding, with its coats",
        "This assumes a visit every 12\u00A0months, and sanding when the boards need it.",
        "If money paid later counts 3\u00A0% a year less"}) {
    INFO(words << "\n" << quote);
    CHECK(holds(quote, words));
  }
  CHECK_FALSE(holds(together(documents(computed(plainJob), {"quote"}).at("quote")), "ten years"));
  std::string about;
  for (const auto& e : sheets::explain(x)) {
    if (e.about == "ten years") about += e.name + ": " + e.formula + "\n";
  }
  CHECK(holds(about, "NIST Handbook 135"));
}

TEST_CASE("ten years that cannot be told are refused", "[ten years]") {
  CHECK(said(inRegion(asking(plainJob), "gb")) ==
        "job.yaml:19:20: error: price.ten_years: 'Withyplank Jetty and Deck Care' does not say what it "
        "reckons with\n"
        "  hint: write 'ten_years:' into 'firm.yaml'; 'planksheaf help method' tells its keys\n");
  CHECK(said(replaced(asking(plainJob), "work: [wash, oil]", "work: [wash]")) ==
        "job.yaml:19:20: error: price.ten_years: the job lays no coat, so no later visit follows from it\n"
        "  hint: add 'oil' to 'work', or leave 'ten_years' out\n");
  CHECK(said(replaced(asking(plainJob), "timber: larch", "timber: radiata-treated")) ==
        "job.yaml:19:20: error: price.ten_years: the boards of 'Deck' may hold arsenic, and within ten years "
        "they "
        "would be sanded\n"
        "  hint: leave 'ten_years' out, or write 'licensed_for: [treated]' where your papers allow it\n");
}
