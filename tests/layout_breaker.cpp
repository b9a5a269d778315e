// Total-fit line breaking against the worked example of its paper.
#include "typeset/lines/breaker.h"

#include <catch2/catch.hpp>

#include <map>
#include <string>

using typeset::BreakItem;
using Kind = typeset::BreakItem::Kind;

namespace {

/// The paragraph of Knuth and Plass, Breaking Paragraphs into Lines, Software: Practice and Experience 11
/// (1981): the frog king in widths of 1/18 em, with the places where words may be hyphenated. From memory.
std::vector<BreakItem> frogKing() {
  const int widths[] = {9,  10, 8,  10, 8, 6, 9, 10, 5, 6,  10, 5,  15,
                        10, 9,  10, 10, 7, 7, 7, 10, 9, 13, 10, 10, 8};
  const std::string text =
      "In olden times when wish-ing still helped one, there lived a king whose daugh-ters were all "
      "beau-ti-ful; "
      "and the young-est was so beau-ti-ful that the sun it-self, which has seen so much, was aston-ished "
      "when-ever it shone in her face. Close by the king's castle lay a great dark for-est, and un-der an "
      "old "
      "lime=tree in the for-est was a well, and when the day was very warm, the king's child went out into "
      "the "
      "for-est and sat down by the side of the cool foun-tain; and when she was bored she took a golden "
      "ball, "
      "and threw it up on high and caught it; and this ball was her fa-vor-ite play-thing.";
  std::vector<BreakItem> items = {{Kind::Box, 18, 0, 0, 0, false}};
  char last = ' ';
  for (const char c : text) {
    if (c == '-') {
      items.push_back({Kind::Penalty, 6, 0, 0, 50, true});
    } else if (c == ' ') {
      const int stretch = last == ',' || last == ';' ? 4 : last == '.' ? 6 : 3;
      const int shrink = last == ';' || last == '.' ? 1 : 2;
      items.push_back({Kind::Glue, last == '.' ? 8 : 6, stretch, shrink, 0, false});
    } else {
      const int width = c == 'I' || c == '=' ? 6 : c == 'C' ? 13 : c >= 'a' && c <= 'z' ? widths[c - 'a'] : 5;
      items.push_back({Kind::Box, width, 0, 0, 0, false});
      if (c == '=') items.push_back({Kind::Penalty, 0, 0, 0, 50, true});
    }
    last = c;
  }
  items.push_back({Kind::Penalty, 0, 0, 0, typeset::neverBreak, false});
  items.push_back({Kind::Glue, 0, 1'000'000, 0, 0, false});
  items.push_back({Kind::Penalty, 0, 0, 0, typeset::mustBreak, true});
  return items;
}

std::vector<std::int64_t> thousandths(const std::vector<typeset::BrokenLine>& lines) {
  std::vector<std::int64_t> out;
  for (const auto& line : lines) out.push_back((line.ratio + (line.ratio < 0 ? -500 : 500)) / 1000);
  return out;
}

}  // namespace

TEST_CASE("the frog king breaks as in the paper on total-fit breaking", "[layout][breaker]") {
  // Knuth and Plass (1981), the example set 390 units wide with tolerance 1: ratios rebuilt from memory.
  const auto lines = typeset::breakIntoLines(frogKing(), {390, 0, 1'000'000});
  CHECK(thousandths(lines) ==
        std::vector<std::int64_t>{857, 0, 280, 1000, 67, -278, 536, -167, 700, -176, 357, 0});
}

TEST_CASE("lines that cannot keep to the rules come out instead of getting lost", "[layout][breaker]") {
  const std::vector<BreakItem> items = {
      {Kind::Box, 50, 0, 0, 0, false},  {Kind::Glue, 5, 1, 1, 0, false},
      {Kind::Box, 200, 0, 0, 0, false}, {Kind::Glue, 5, 1, 1, 0, false},
      {Kind::Box, 20, 0, 0, 0, false},  {Kind::Penalty, 0, 0, 0, typeset::mustBreak, false}};
  const auto lines = typeset::breakIntoLines(items, {100, 0, 1'000'000});
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].end == 3);
  CHECK(lines[0].ratio < -1'000'000);  // overfull
  CHECK(lines[1].begin == 4);
  CHECK(lines[1].end == 5);
}

TEST_CASE("an empty paragraph has no lines", "[layout][breaker]") {
  CHECK(typeset::breakIntoLines({}, {100, 0, 1'000'000}).empty());
}

namespace {

BreakItem box(std::int64_t width) { return {Kind::Box, width, 0, 0, 0, false}; }
BreakItem glue(std::int64_t width, std::int64_t stretch, std::int64_t shrink) {
  return {Kind::Glue, width, stretch, shrink, 0, false};
}
const BreakItem hyphen = {Kind::Penalty, 5, 0, 0, 50, true};
const BreakItem end = {Kind::Penalty, 0, 0, 0, typeset::mustBreak, false};

}  // namespace

TEST_CASE("two hyphens in a row cost more than one line of wider white", "[layout][breaker]") {
  // Two lines that fit, each with a hyphen: (1 + 50)^2 each, and 3000 for the pair. A second line broken at
  // its glue, stretched by 33 of 39: (1 + 100 x 0.846^3)^2 = 3790, not 2601 + 3000. In thousandths.
  const auto lines =
      typeset::breakIntoLines({box(45), glue(10, 10, 0), box(40), hyphen, box(30), glue(10, 39, 0), box(27),
                               glue(10, 39, 0), box(18), hyphen, box(20), glue(0, 1'000'000, 0), end},
                              {100, 0, 1'000'000});
  REQUIRE(lines.size() == 3);
  CHECK(lines[0].end == 3);
  CHECK(lines[1].end == 7);
}

TEST_CASE("a tight line beside a loose one costs more than a loose line beside a good one",
          "[layout][breaker]") {
  // Shrunk by 0.6, then stretched by 0.6: (1 + 21.6)^2 each, and 3000 for the change. Stretched by 0.8, then
  // as it is: (1 + 51.2)^2 = 2725.
  const auto lines = typeset::breakIntoLines({box(41), glue(10, 10, 5), box(41), glue(10, 10, 5), box(4),
                                              glue(2, 10, 5), box(42), glue(10, 10, 5), box(42), end},
                                             {100, 0, 1'000'000});
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].end == 3);
}
