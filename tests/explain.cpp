// The formulas the office reads are sums it can do again: each is worked out here from its own words, and has
// to come to the value beside it within the rounding of what is printed.
#include "sheets/explain/explain.h"

#include "estimate/estimate.h"
#include "fixtures.h"
#include "schedule/plan.h"

#include "english.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <numbers>

using namespace fixtures;

namespace {

/// What a printed number may stand for.
struct Range {
  double low = 0, high = 0;
};
Range operator+(Range a, Range b) { return {a.low + b.low, a.high + b.high}; }
Range operator-(Range a, Range b) { return {a.low - b.high, a.high - b.low}; }
Range operator*(Range a, Range b) { return {a.low * b.low, a.high * b.high}; }
Range operator/(Range a, Range b) { return {a.low / b.high, a.high / b.low}; }

/// A unit in metres, feet, litres or gallons, and half of the last place it is printed to.
struct Unit {
  double size = 1, halfStep = 0;
};
const std::map<std::string, Unit> units = {
    {"m", {1, 0.005}},    {"mm", {0.001, 0.05}}, {"ft", {1, 0}},    {"in", {1 / 12.0, 1 / 32.0}},
    {"m²", {1, 0.005}},   {"ft²", {1, 0.005}},   {"L", {1, 0.005}}, {"gal", {1, 0.005}},
    {"m²/L", {1, 0.005}}, {"ft²/gal", {1, 0.5}}, {"h", {1, 0.005}}, {"%", {0.01, 0.0005}},
};

std::vector<std::string> split(const std::string& s, const std::string& by) {
  std::vector<std::string> parts;
  for (std::size_t from = 0, to = 0; to != std::string::npos; from = to + by.size()) {
    to = s.find(by, from);
    parts.push_back(s.substr(from, to == std::string::npos ? to : to - from));
  }
  return parts;
}

std::string replaced(std::string s, const std::string& what, const std::string& with) {
  for (auto at = s.find(what); at != std::string::npos; at = s.find(what, at + with.size()))
    s.replace(at, what.size(), with);
  return s;
}

/// '1,234.5', '3/4'.
double number(const std::string& word) {
  const auto fraction = split(replaced(word, ",", ""), "/");
  const double n = std::stod(fraction.at(0));
  return fraction.size() == 1 ? n : n / std::stod(fraction.at(1));
}

/// '12.40 m', '9 ft 5 1/2 in', '3'; no-break spaces hold it together.
Range quantity(const std::string& words) {
  Range sum;
  double n = 0;
  for (const auto& part : split(words, "\u00A0")) {
    if (std::isdigit(static_cast<unsigned char>(part.at(0)))) {
      n += number(replaced(part, "\u2044", "/"));
      continue;
    }
    const Unit unit = units.at(part);
    sum = sum + Range{(n - unit.halfStep) * unit.size, (n + unit.halfStep) * unit.size};
    n = 0;
  }
  // Lengths in feet alone are rounded to the same sixteenth of an inch as the others.
  const bool isFeet = words.ends_with("\u00A0ft");
  return sum + (isFeet ? Range{n - 1 / 384.0, n + 1 / 384.0} : Range{n, n});
}

/// Works out '12.40 m × 6.20 m − π/4 × (1.20 m)²'. Words explain and count nothing; only 'likely' is a value,
/// and ', rounded up' holds for the product before it.
class Sum {
 public:
  Sum(std::string text, Range likely) : likely_(likely) {
    for (const auto& [what, with] : {std::pair{", rounded up,", " ⌈"},
                                     {", rounded up", " ⌈"},
                                     {"(", "( "},
                                     {")", " ) "},
                                     {") ²", ")²"},
                                     {"π/4", "π / 4"},
                                     {" %", "\u00A0%"},
                                     {"% of ", "% × "},
                                     {" x ", " × "}})
      text = replaced(text, what, with);
    for (const auto& word : split(text, " ")) {
      const bool isWord = word.empty() || std::isalpha(static_cast<unsigned char>(word[0]));
      if (!isWord || word == "likely") words_.push_back(word);
    }
  }

  Range work() {
    const Range r = terms();
    CHECK(at_ == words_.size());
    return r;
  }

 private:
  bool takes(const std::string& word) {
    const bool isNext = at_ < words_.size() && words_[at_] == word;
    at_ += isNext ? 1 : 0;
    return isNext;
  }

  Range terms() {
    Range r = factors();
    while (true) {
      if (takes("+")) r = r + factors();
      else if (takes("−")) r = r - factors();
      else return r;
    }
  }

  Range factors() {
    Range r = factor();
    while (true) {
      if (takes("×")) r = r * factor();
      else if (takes("÷") || takes("/")) r = r / factor();
      else if (takes("⌈")) r = {std::ceil(r.low - 1e-9), std::ceil(r.high - 1e-9)};
      else return r;
    }
  }

  Range factor() {
    if (takes("likely")) return likely_;
    if (takes("π")) return {std::numbers::pi, std::numbers::pi};
    if (!takes("(")) return quantity(words_.at(at_++));
    const Range r = terms();
    if (takes(")²")) return r * r;
    CHECK(takes(")"));
    return r;
  }

  std::vector<std::string> words_;
  Range likely_;
  std::size_t at_ = 0;
};

std::vector<sheets::Explained> explained(const model::JobInputs& c) {
  const auto& content = sampleContent();
  base::Diagnostics messages;
  const auto e = estimate::makeEstimate(c, content);
  const auto plan = schedule::makePlan(c, content, e, messages);
  REQUIRE(messages.all().empty());
  const auto resources = estimate::makeResources(c, content, e, static_cast<int>(plan.days.size()));
  const auto price = estimate::makePrice(c, content, e, resources);
  return sheets::explain({c, content, english(), e, plan, resources, {}, {}, price, {}, {}});
}

/// Checks every formula with numbers in it; gives each as 'area' -> '40.00 m²' for further checks.
std::map<std::string, std::string> checkSums(const model::JobInputs& c) {
  std::map<std::string, std::string> values;
  const auto list = explained(c);
  Range likely;
  for (const auto& x : list) {
    if (x.name == "likely need") likely = quantity(x.value);
  }
  for (const auto& x : list) {
    values.emplace(x.name, x.value);
    const bool isInWords = x.about == "dates" || x.name == "perimeter" || x.name == "edges to cut in" ||
                           x.name == "low and high" || x.name == "chance of more" || x.name == "tins" ||
                           x.name == "days on site" || x.name == "amount of a line" ||
                           x.name == "sum of the lines" || x.name == "tax";
    if (isInWords) continue;
    std::string formula = replaced(replaced(x.formula, " (reeded)", ""), "as given: ", "");
    formula = formula.substr(0, formula.find(" (from "));
    INFO(x.about << ": " << x.name << ": " << x.formula << " = " << x.value);
    const Range sum = Sum(formula, likely).work();
    Range value = quantity(x.value);
    // Money is rounded to the coin, the margin to a tenth of a percent.
    if (x.about == "price")
      value = value + (x.name == "margin reached" ? Range{-0.0005, 0.0005} : Range{-0.005, 0.005});
    CHECK(sum.low <= value.high + 1e-9);
    CHECK(sum.high >= value.low - 1e-9);
  }
  return values;
}

model::JobInputs jobOf(model::Deck deck) {
  model::JobInputs c = sampleCase();
  c.job.areas = {std::move(deck)};
  return c;
}

}  // namespace

TEST_CASE("the sum of a rectangle with cut-outs can be done again", "[explain]") {
  model::Deck deck = sampleDeck();
  deck.without = {
      {model::Circle{base::millimetres(1200)}, {base::metres(1), base::metres(1)}, "tree"},
      {model::Rectangle{base::metres(1), base::millimetres(500)}, {base::metres(4), base::metres(1)}, ""}};
  auto values = checkSums(jobOf(deck));
  CHECK(values.at("area") == "38.37\u00A0m²");             // 40 - 1.1310 - 0.5
  CHECK(values.at("boards") == "40");                      // 4 m / 0.1 m
  CHECK(values.at("length of board") == "383.69\u00A0m");  // 38.369 / 0.1
  CHECK(values.at("fixings") == "1919");                   // 38.369 / (0.1 * 0.4) * 2 = 1918.45
  CHECK(values.at("coat 1") == "4.80\u00A0L");             // 38.369 / 8
  CHECK(values.at("coat 2") == "3.20\u00A0L");             // 38.369 / 12
}

TEST_CASE("the sum of stairs can be done again, with boards and without", "[explain]") {
  model::Deck deck = sampleSteps();
  CHECK(checkSums(jobOf(deck)).at("area") == "2.16\u00A0m²");  // 4 * 1.2 * 0.45
  deck.boards = sampleDeck().boards;
  CHECK(checkSums(jobOf(deck)).at("boards") ==
        "20");  // each of 4: 280 / 100 = 3 on the tread, 170 / 100 = 2 before it
}

TEST_CASE("the sum of reeded boards wetted on all faces can be done again", "[explain]") {
  for (const auto wetted : {model::Wetted::Top, model::Wetted::TopAndEdges, model::Wetted::AllFaces}) {
    for (const auto face : {model::BoardFace::Smooth, model::BoardFace::Reeded}) {
      model::Deck deck = sampleDeck();
      deck.boards->wetted = wetted;
      deck.boards->face = face;
      checkSums(jobOf(deck));
    }
  }
  model::Deck deck = sampleDeck();
  deck.boards->face = model::BoardFace::Reeded;
  deck.boards->wetted = model::Wetted::AllFaces;
  // Above 40 * 1.25 = 50, below 40, edges 40 * 2 * 20 / 100 = 16.
  CHECK(checkSums(jobOf(deck)).at("surface that takes product") == "106.00\u00A0m²");
}

TEST_CASE("the sums of strips, screens, rings and measured areas can be done again", "[explain]") {
  const std::vector<std::pair<model::Shape, std::string>> shapes = {
      {model::Strip{base::metres(46), base::millimetres(220)}, "10.12"},  // 46 * 0.22
      {model::Screen{base::metres(6), base::millimetres(1800), 2, percent(65)},
       "14.04"},                                                // 6 * 1.8 * 2 * 0.65
      {model::Circle{base::metres(3)}, "7.07"},                 // pi / 4 * 9
      {model::Ring{base::metres(3), base::metres(1)}, "6.28"},  // pi / 4 * (9 - 1)
      {model::Measured{base::squareMetres(31), {}}, "31.00"}};
  for (const auto& [shape, area] : shapes) {
    model::Deck deck = sampleSteps();
    deck.shape = shape;
    CHECK(checkSums(jobOf(deck)).at("area") == area + "\u00A0m²");
  }
}

TEST_CASE("the sum of a deck with a test patch can be done again", "[explain]") {
  model::Deck deck = sampleDeck();
  deck.testPatch = model::TestPatch{base::squareMetres(1), base::millilitres(125)};
  auto values = checkSums(jobOf(deck));
  CHECK(values.at("coat 1") == "5.00\u00A0L");       // 40 * 0.125
  CHECK(values.at("coat 2") == "3.33\u00A0L");       // the table's 8 : 12, so 40 / 12
  CHECK(values.at("likely need") == "8.75\u00A0L");  // 8.3333 * 1.05
  // The table's 85 % and 120 %, half as far from 100 %: 92.5 % and 110 % of 8.75.
  CHECK(values.at("low and high") == "8.09\u00A0L and 9.63\u00A0L");
}

TEST_CASE("the sums in feet, inches and gallons can be done again", "[explain]") {
  model::Region us = sampleRegion();
  us.units = model::UnitSystem::UsCustomary;
  us.monthFirst = true;
  const auto inches = [](std::int64_t sixteenths) { return base::Length{sixteenths * 25'400'000 / 16}; };
  model::Deck deck = sampleDeck();
  deck.shape = model::Rectangle{inches(16 * 12 * 20), inches(16 * 126)};   // 20 ft x 10 ft 6 in
  deck.boards = model::Boards{inches(16 * 5 + 8), inches(2), inches(16)};  // 5 1/2 in + 1/8 in
  deck.boards->wetted = model::Wetted::TopAndEdges;
  deck.joists = inches(16 * 16);
  model::Deck steps = sampleSteps();
  steps.shape = model::Stairs{3, inches(16 * 48), inches(16 * 11), inches(16 * 7 + 8)};
  steps.rates = {{{350 * 92'903'040'000}, {3'785'411'784}}};  // 350 ft2/gal
  model::JobInputs c = jobOf(deck);
  c.job.areas.push_back(steps);
  c.region = &us;
  auto values = checkSums(c);
  CHECK(values.at("area") == "210.00\u00A0ft²");  // 20 * 10.5
  CHECK(values.at("boards") == "23");             // 126 / 5.625 = 22.4
  CHECK(values.at("fixings") == "672");           // 210 * 144 / (5.625 * 16) * 2
  // 210 * (1 + 2 * 1 / 5.625) = 284.67
  CHECK(values.at("surface that takes product") == "284.67\u00A0ft²");
}

TEST_CASE("the sums of a job with loss, allowance, stock, discount and deposit can be done again",
          "[explain]") {
  model::JobInputs c = sampleCase();
  c.job.allowance = percent(8);
  c.job.inStock = {{"sample-oil", base::millilitres(2500), 1}};
  c.job.price.discount = percent(3);
  auto values = checkSums(c);
  // 40 / 8 + 40 / 12 and, sanded, 2.16 / 10 + 2.16 / 15 L: 8.6933; 5 % loss on top, then 8 %.
  CHECK(values.at("likely need") == "9.13\u00A0L");
  CHECK(values.at("wanted") == "9.86\u00A0L");  // 9.128 * 1.08
  CHECK(values.at("to buy") == "7.36\u00A0L");
}
