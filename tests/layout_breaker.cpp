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
