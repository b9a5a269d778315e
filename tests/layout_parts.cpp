// The parts of a page: heads in the side column, boxes, lines to write on, tags.
#include "layout_shapes.h"
#include "near.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace sample;
using markup::Callout;
using markup::Mark;
using typeset::Dim;
using typeset::Role;

namespace {

std::vector<Role> rolesOf(const typeset::Document& document) {
  std::vector<Role> out;
  for (const typeset::Tag& tag : document.tags) out.push_back(tag.role);
  return out;
}

}  // namespace

TEST_CASE("a page is told line by line in its dump", "[layout]") {
  const Result r = layOut({title("Deck"), section("Weather"), paragraph("We coat **dry** boards.")});
  // Title: 70 + 3.5 + 21; its 31.5 pt fill three lines; hairline 10.5 below them, text 3.5 below that: the
  // baseline is 70 + 42 + 14 + 10.5.
  const std::string expected =
      "1 P text 56.69 94.50 w 61.94 Vollkorn-Medium 23.00 #7a4522 'Quote'\n"
      "1 H1 text 192.76 94.50 w 50.85 Vollkorn-Medium 23.00 #211b17 'Deck'\n"
      "1 - path 56.69 122.50 470.55 0.00 line 0.50 #9c9083\n"
      "1 H2 text 56.69 136.50 w 46.40 Vollkorn-SemiBold 12.00 #211b17 'Weather'\n"
      "1 P text 192.76 136.50 w 37.91 Vollkorn-Regular 10.50 #211b17 'We coat '\n"
      "1 P text 230.66 136.50 w 16.78 Vollkorn-SemiBold 10.50 #211b17 'dry'\n"
      "1 P text 247.44 136.50 w 35.95 Vollkorn-Regular 10.50 #211b17 ' boards.'\n";
  CHECK(r.dump.substr(0, expected.size()) == expected);
}

TEST_CASE("the letter's pairs flow through three columns", "[layout]") {
  const Result r =
      layOut({title("T"), box(Callout::Letter, "",
                              {list(Mark::Dash, {"**Number** 26-014", "**For** Hana / Kettle Point",
                                                 "**Until** Wed", "**Date** Mon"})})});
  CHECK(find(r.dump, "Number").x == near(left).margin(0.01));
  CHECK(find(r.dump, "For").x == near(textX).margin(0.01));
  CHECK(find(r.dump, "Until").x == near(half).margin(0.01));
  CHECK(find(r.dump, "Date").x == near(left).margin(0.01));
  CHECK(find(r.dump, "26-014").y - find(r.dump, "Number").y == near(14));      // 3.5 of the label, 10.5 down
  CHECK(find(r.dump, "Kettle Point").y - find(r.dump, "Hana").y == near(14));  // the forced break
  CHECK(find(r.dump, "Date").y > find(r.dump, "26-014").y);
}

TEST_CASE("a strip of figures begins in the side column between two heavy rules", "[layout]") {
  const Result r = layOut(
      {box(Callout::Figures, "",
           {list(Mark::Dash, {"**$8,686.10** to pay", "**4 days** on site", "**Mon 9 Feb** start"})})});
  const Words first = find(r.dump, "$8,686.10"), second = find(r.dump, "4 days"),
              third = find(r.dump, "Mon 9 Feb");
  CHECK(first.x == near(left).margin(0.01));
  CHECK(second.x == near(textX).margin(0.01));
  CHECK(third.x == near(half).margin(0.01));
  CHECK(first.size == 20);
  const auto rules = shapesOf(r.dump, heavy);
  REQUIRE(rules.size() == 2);
  CHECK(rules[1].y - first.y == near(24.5));  // 3.5 of its line, 3.5, a label of 10.5, 7
}

TEST_CASE("a figure too wide for its place moves those beside it, and all keep their size", "[layout]") {
  const Result r = layOut(
      {box(Callout::Figures, "", {list(Mark::Dash, {"**NZ$1,208,686.10** to pay", "**4 days** on site"})})});
  const Words wide = find(r.dump, "NZ$1,208,686.10"), next = find(r.dump, "4 days");
  CHECK(wide.size == 20);
  CHECK(next.size == 20);
  CHECK(next.y == wide.y);
  CHECK(next.x > textX);
}

TEST_CASE("figures too wide together are set as much smaller as they need, on one line", "[layout]") {
  const Result r = layOut({box(Callout::Figures, "",
                               {list(Mark::Dash, {"**NZ$1,208,686.10** to pay", "**NZ$1,208,686.10** paid",
                                                  "**31 December 2027** due", "**14 days** left"})})});
  const Words first = find(r.dump, "NZ$1,208,686.10"), last = find(r.dump, "14 days");
  CHECK(first.size < 20);
  CHECK(first.size > 15);
  CHECK(last.size == first.size);
  CHECK(last.y == first.y);
  CHECK(find(r.dump, "31 December 2027").y == first.y);
}

TEST_CASE("lines to write on fill their cells and carry their words", "[layout]") {
  const Result r = layOut(
      {section("Acceptance"), table("l2 l1", "", {"Ruth Calder ____ | ____", "____ Name | ____ Date"})});
  const auto lines = shapesOf(r.dump, thin);
  REQUIRE(lines.size() == 4);
  const Words name = find(r.dump, "Ruth Calder"), label = find(r.dump, "Name");
  CHECK(lines[0].x == near(textX).margin(0.01));
  CHECK(lines[1].x + lines[1].w == near(right).margin(0.01));
  CHECK(name.y == near(lines[0].y - 3.5));
  CHECK(label.y == near(lines[2].y + 10.5));
  CHECK(label.face == "Carlito-Bold");
  CHECK(label.size == 9);
  CHECK(lines[2].y - lines[0].y >= 20.9);
  CHECK(r.dump.find("____") == std::string::npos);
}

TEST_CASE("one cell that wraps among many rows does not move them apart, several do", "[layout]") {
  const std::string wraps =
      "a sentence that is longer than the column in which it stands, so that it has to go on";
  const auto step = [&](std::vector<std::string> rows) {
    const Result r = layOut({section("Marks"), table("l1 l2", "what | do", rows)});
    return find(r.dump, "Bb").y - find(r.dump, "Aa").y;
  };
  CHECK(step({"Aa | x", "Bb | x", "Cc | " + wraps, "Dd | x"}) == near(14));
  CHECK(step({"Aa | x", "Bb | x", "Cc | " + wraps, "Dd | " + wraps}) > 14.5);
}

TEST_CASE("lines to write on that end a document go on to the foot of the page, not beyond", "[layout]") {
  const auto linesOf = [](const std::string& row) {
    const Result r = layOut({section("Record"), table("l1 l2", "date | what", {row, row})});
    CHECK(r.document.pages.size() == 1);
    return shapesOf(r.dump, thin).size();
  };
  CHECK(linesOf("____ | ____") == 2 * 13);  // the first row, and twelve times the last
  CHECK(linesOf("____ Name | ____ Date") == 2 * 2);
  std::vector<std::string> rows(20, "____ | ____");
  const Result full = layOut({section("Record"), table("l1 l2", "date | what", rows)});
  CHECK(full.document.pages.size() == 1);
  CHECK(shapesOf(full.dump, thin).size() > 2 * 20);
}

TEST_CASE("rows for writing are at least 8 mm apart", "[layout]") {
  // Common practice for forms filled in by hand; no source.
  const Result r = layOut({section("Record"), table("l1 l2", "date | what", {"____ | ____", "____ | ____"})});
  const auto lines = shapesOf(r.dump, thin);
  REQUIRE(lines.size() >= 4);
  CHECK(lines[2].y - lines[0].y >= 8 * 72 / 25.4);
}

TEST_CASE("labelled columns stand side by side", "[layout]") {
  const Result r =
      layOut({section("Included"), box(Callout::Columns, "",
                                       {paragraph("**In the price**"), list(Mark::Dash, {"Walls covered"}),
                                        paragraph("**Not in the price**"), list(Mark::Cross, {"Wiring"})})});
  CHECK(find(r.dump, "In the price").x == near(textX).margin(0.01));
  CHECK(find(r.dump, "Not in the price").x == near(half).margin(0.01));
  CHECK(find(r.dump, "In the price").face == "Carlito-Bold");
  CHECK(find(r.dump, "Walls covered").y == find(r.dump, "Wiring").y);
}

TEST_CASE("neighbours share one rule", "[layout]") {
  const Result r =
      layOut({section("One", true), table("l1 l1", " | a", {"x | 1", "y | 2"}), section("Two", true),
              table("l1 l1", " | b", {"z | 3", "u | 4"}), section("Three"), paragraph("Words.")});
  CHECK(shapesOf(r.dump, heavy).size() == 3);     // above, between, below
  CHECK(shapesOf(r.dump, hairline).size() == 2);  // between the rows; none above the last section
}

TEST_CASE("the head of a section meets the first line of its matter, whatever its size", "[layout]") {
  const Result r =
      layOut({section("Stop", false, true), paragraph("**Anyone may stop the work.**"), section("Next"),
              box(Callout::Figures, "", {list(Mark::Dash, {"**Mon 15 Feb** wash"})})});
  CHECK(find(r.dump, "Stop").y == find(r.dump, "Anyone may stop the work.").y);
  CHECK(find(r.dump, "Anyone may stop the work.").size == 15);
  CHECK(find(r.dump, "Next").y == find(r.dump, "Mon 15 Feb").y);
}

TEST_CASE("tags tell headings, lists, tables and links in reading order", "[layout]") {
  const Result r = layOut({title("T"), section("S"), paragraph("See <example.org> now."),
                           list(Mark::Number, {"One."}), table("l1 r1", "a | b", {"c | 1.00"})});
  const std::vector<Role> expected = {Role::Document, Role::H1,    Role::P,  Role::H2,  Role::P,
                                      Role::Link,     Role::L,     Role::LI, Role::Lbl, Role::LBody,
                                      Role::Table,    Role::THead, Role::TR, Role::TH,  Role::TH,
                                      Role::TBody,    Role::TR,    Role::TD, Role::TD};
  CHECK(rolesOf(r.document) == expected);
  for (std::size_t i = 1; i < r.document.tags.size(); ++i)
    CHECK(r.document.tags[i].parent < static_cast<int>(i));
  CHECK(r.document.tags[13].scope == typeset::Scope::Column);
  CHECK(r.document.tags[6].isOrdered);
  CHECK(r.dump.find("link ") != std::string::npos);
  REQUIRE(r.document.bookmarks.size() == 2);
  CHECK(r.document.bookmarks[1].title == "S");
  CHECK(r.document.bookmarks[1].level == 2);
}

TEST_CASE("a paragraph over two pages keeps one tag", "[layout]") {
  markup::Blocks blocks;
  for (int i = 0; i < 33; ++i) blocks.push_back(paragraph("One line of text."));
  std::string words;
  for (int i = 0; i < 200; ++i) words += "timber ";
  blocks.push_back(paragraph(words));
  const Result r = layOut(blocks);
  REQUIRE(r.document.pages.size() == 2);
  std::vector<int> tags;
  for (const typeset::Page& page : r.document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* run = std::get_if<typeset::TextRun>(&item.what))
        if (run->text.rfind("timber", 0) == 0) tags.push_back(item.tag);
  CHECK(std::count(tags.begin(), tags.end(), tags.front()) == static_cast<std::ptrdiff_t>(tags.size()));
}

TEST_CASE("the letterhead has its firm in the text column and lists its lines on the right", "[layout]") {
  const Result r = layOut({title("T"), pageBreak(), paragraph("x")}, true);
  const Words firm = find(r.dump, "Tallowback Deck Care");
  CHECK(firm.size == 18);
  CHECK(firm.y == near(66));
  CHECK(firm.x == near(textX).margin(0.01));
  const Words line = find(r.dump, "03 555 0142");
  CHECK(line.x + line.width == near(right).margin(0.02));
  CHECK(find(r.dump, "T").y == near(98 + 3.5 + 21));
  CHECK(find(r.dump, "page 2 of 2").page == 2);
  CHECK(find(r.dump, "Job 26-014").page == 2);
}

TEST_CASE("the head line is a ruler with a tick every 10 mm", "[layout]") {
  const Result r = layOut({title("T")});
  for (const typeset::Item& item : r.document.pages[0].items) {
    const auto* path = std::get_if<typeset::Path>(&item.what);
    if (!path || path->steps.size() != 34) continue;  // 0 to 160 mm
    for (std::size_t i = 0; i < 17; ++i) {
      const auto n = static_cast<std::int64_t>(i);
      CHECK(path->steps[2 * i].to.x - path->steps[0].to.x == Dim::mm(10) * n);
      CHECK(path->steps[2 * i + 1].to.y - path->steps[2 * i].to.y == Dim::mm(n % 5 == 0 ? 26 : 15) / 10);
    }
    return;
  }
  FAIL("no ruler");
}

TEST_CASE("every word of a long document comes out once, whatever stands beside it", "[layout]") {
  // Blocks in an order drawn by a plain generator, so that every run sees the same documents.
  std::uint32_t seed = 1;
  const auto draw = [&](std::uint32_t n) {
    seed = seed * 1'664'525u + 1'013'904'223u;
    return (seed >> 8) % n;
  };
  int count = 0;
  const auto some = [&](std::uint32_t most) {
    std::string s;
    for (std::uint32_t n = draw(most) + 1; n > 0; --n)
      s += (s.empty() ? "w" : " w") + std::to_string(count++) + "x";
    return s;
  };
  const Callout boxes[] = {Callout::Note, Callout::Danger, Callout::Warning, Callout::Columns, Callout::Keep};
  for (int round = 0; round < 60; ++round) {
    count = 0;
    markup::Blocks blocks;
    for (std::uint32_t n = draw(25) + 1; n > 0; --n) {
      switch (draw(8)) {
        case 0:
          blocks.push_back(section(some(4), draw(3) == 0, draw(5) == 0));
          break;
        case 1:
          blocks.push_back(list(draw(2) ? Mark::Number : Mark::Box, {some(30), some(3)}));
          break;
        case 2:
          blocks.push_back(table("l3 l4 r2", "", {some(9) + "|" + some(40) + "|" + some(2)}));
          break;
        case 3:
          blocks.push_back(table("l3 l4 r2", "|" + some(2) + "|" + some(1),
                                 {some(3) + "|" + some(60) + "|" + some(1), "|" + some(1) + "| 1.00"}));
          break;
        case 4:
          blocks.push_back(box(boxes[draw(5)], some(8), {paragraph(some(20)), paragraph(some(300))}));
          break;
        case 5:
          blocks.push_back(pageBreak());
          break;
        default:
          blocks.push_back(paragraph(some(120)));
      }
    }
    const Result r = layOut(blocks);
    std::map<std::string, int> seen;
    for (const Words& w : wordsOf(r.dump))
      if (w.role != "-")
        for (const std::string& word : split(w.text, ' ')) ++seen[word];
    // Keep and Columns have no title: its words are drawn but not shown.
    int missing = 0;
    for (int i = 0; i < count; ++i) {
      const int times = seen["w" + std::to_string(i) + "x"];
      CHECK(times <= 1);
      missing += times == 0;
    }
    int untitled = 0;
    for (const markup::Block& block : blocks)
      if (const auto* b = std::get_if<markup::Box>(&block.node);
          b && (b->kind == Callout::Keep || b->kind == Callout::Columns))
        untitled += static_cast<int>(split(b->title[0].text, ' ').size());
    CHECK(missing == untitled);
    for (const Words& w : wordsOf(r.dump)) CHECK(w.y <= 820);
  }
}
