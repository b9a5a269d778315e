// The block tree of everything a document may hold.
#include "base/signs.h"
#include "markup/dump.h"
#include "markup/read.h"

#include <catch2/catch.hpp>

namespace {

markup::Document documentOf(const std::string& text) {
  base::Diagnostics messages;
  auto document = markup::readMarkdown(text, "quote.md", messages);
  for (const auto& d : messages.all()) FAIL_CHECK(base::format(d));
  return document;
}

std::string tree(const std::string& text) { return markup::dump(documentOf(text)); }

}  // namespace

TEST_CASE("headings take their attributes from the braces at their end") {
  CHECK(tree("# Quote\n## Price {wide}\n## Sign here {wide fenced}  \n## Set \\{wide\\}\n## {fenced} A ## "
             "{fenced}\n") ==
        "heading 1: Quote\n"
        "heading 2 wide: Price\n"
        "heading 2 wide fenced: Sign here\n"
        "heading 2: Set {wide}\n"
        "heading 2 fenced: {fenced} A\n");
}

TEST_CASE("paragraphs keep emphasis, links, line breaks and letters by number") {
  CHECK(
      tree("Call *now* or **very *soon* indeed**,\nor [write **us**](mailto:a@b.example).  \nBye\\\nall\n") ==
      "paragraph: Call *now* or **very soon indeed**, or [write ](mailto:a@b.example)"
      "[**us**](mailto:a@b.example).\\nBye\\nall\n");
  CHECK(tree("5&nbsp;m&#178; &lt;&amp;&gt; &quot;x&quot; &#x202F;\n") ==
        "paragraph: 5\u00A0m\u00B2 <&> \"x\" \u202F\n");
  CHECK(tree("<https://planks.example>\n") ==
        "paragraph: [https://planks.example](https://planks.example)\n");
}

TEST_CASE("typed apostrophes become those of print, marks of feet stay") {
  CHECK(tree("The **crew**'s hand's width, the boards' ends, 14'-0\" by 8'.\n") ==
        "paragraph: The **crew**’s hand’s width, the boards’ ends, 14'-0\" by 8'.\n");
  CHECK(tree("It says 'keep off', ('never').\n") == "paragraph: It says ‘keep off’, (‘never’).\n");
  CHECK(tree("[o'hara@tern.example](mailto:o'hara@tern.example)\n").find("o'hara") != std::string::npos);
}

TEST_CASE("the signs of the filled template become line breaks and nothing") {
  const std::string brk = base::lineBreakSign, edge = base::edgeSign;
  CHECK(tree("a" + brk + "b **" + edge + "\\(c\\)" + edge + "**d **" + edge + edge + "**e\n") ==
        "paragraph: a\\nb **(c)**d e\n");
  CHECK(tree("| h |\n|---|\n| a" + brk + "b |\n") == "table left 3\n  head: h\n  row: a\\nb\n");
}

TEST_CASE("a drawing alone is a figure, in a line it is a part of the words") {
  CHECK(tree("![The deck from above](figure:plan)\n\nWear ![gloves](figure:gloves) always\n") ==
        "figure plan: The deck from above\n"
        "paragraph: Wear ![gloves](figure:gloves) always\n");
  CHECK(tree("> [!signs]\n> - ![Gloves](figure:gloves)\n> - ![Boots](figure:boots) **Boots** always\n") ==
        "box signs\n"
        "  list dash\n"
        "    item\n"
        "      paragraph: ![Gloves](figure:gloves)\n"
        "    item\n"
        "      paragraph: ![Boots](figure:boots) **Boots** always\n");
}

TEST_CASE("the mark of a list says what it is") {
  CHECK(tree("3. a\n4. b\n\n- c\n- d\n\n* never\n\n+ done\n\n- [ ] to do\n- [ ] ____\n") ==
        "list number from 3\n  item\n    paragraph: a\n  item\n    paragraph: b\n"
        "list dash\n  item\n    paragraph: c\n  item\n    paragraph: d\n"
        "list cross\n  item\n    paragraph: never\n"
        "list tick\n  item\n    paragraph: done\n"
        "list box\n  item\n    paragraph: to do\n  item\n    paragraph: ____\n");
}

TEST_CASE("an item holds paragraphs and one list below") {
  CHECK(tree("- a\n\n  b\n  - c\n  - d\n- e\n") ==
        "list dash\n"
        "  item\n"
        "    paragraph: a\n"
        "    paragraph: b\n"
        "    list dash\n"
        "      item\n"
        "        paragraph: c\n"
        "      item\n"
        "        paragraph: d\n"
        "  item\n"
        "    paragraph: e\n");
  CHECK(tree("1. a\n   - b\n2. c\n") ==
        "list number from 1\n  item\n    paragraph: a\n    list dash\n      item\n        paragraph: b\n"
        "  item\n    paragraph: c\n");
}

TEST_CASE("an item without words is left out with its mark") {
  CHECK(tree("- a\n-\n- b\n") == "list dash\n  item\n    paragraph: a\n  item\n    paragraph: b\n");
  CHECK(tree("-\n") == "");
}

TEST_CASE("the dashes under a table's head are the weights of its columns") {
  CHECK(tree("| What | Litres | Sum |\n|:-----|:------:|---:|\n| a \\| b | **2** | ____ |\n| c | |\n") ==
        "table left 5 centre 6 right 3\n"
        "  head: What | Litres | Sum\n"
        "  row: a | b | **2** | ____\n"
        "  row: c |  | \n");
}

TEST_CASE("a table whose head is empty has no head") {
  CHECK(tree("a\n\n---\n\n| | |\n|-----|----|\n| b | c |\n\n|  |\n|---|\n| d |\n") ==
        "paragraph: a\n"
        "page break\n"
        "table left 5 left 4\n  row: b | c\n"
        "table left 3\n  row: d\n");
}

TEST_CASE("a quote is a box of the kind it begins with") {
  CHECK(tree("> [!WARNING] Rags can *burn*\n> Hang them up.\n>\n> - outdoors\n\n> [!totals]\n> | | |\n> "
             "|---|---:|\n"
             "> | Sum | 1 |\n\n> [!side]\n") ==
        "box warning: Rags can *burn*\n"
        "  paragraph: Hang them up.\n"
        "  list dash\n"
        "    item\n"
        "      paragraph: outdoors\n"
        "box totals\n"
        "  table left 3 right 3\n"
        "    row: Sum | 1\n"
        "box side\n");
}

TEST_CASE("boxes hold boxes") {
  CHECK(tree("> [!columns]\n> > [!keep]\n> > ## Included\n> > + sanding\n>\n> > [!keep] Not **included**\n> "
             "> * paint\n") ==
        "box columns\n"
        "  box keep\n"
        "    heading 2: Included\n"
        "    list tick\n"
        "      item\n"
        "        paragraph: sanding\n"
        "  box keep: Not **included**\n"
        "    list cross\n"
        "      item\n"
        "        paragraph: paint\n");
}

TEST_CASE("blocks and rows know their line") {
  const auto document = documentOf(
      "# A\n\n---\n\nb\nc\n\n| |\n|---|\n| d |\n| |\n| e |\n\n> [!note] f\n> g\n\n- h\n- i\n\n***\n");
  std::string lines;
  for (const auto& block : document.blocks) lines += std::to_string(block.line) + " ";
  CHECK(lines == "1 3 5 8 14 17 20 ");
  const auto& table = std::get<markup::Table>(document.blocks[3].node);
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[0].line == 10);
  CHECK(table.rows[1].line == 11);
  CHECK(table.rows[2].line == 12);
  const auto& box = std::get<markup::Box>(document.blocks[4].node);
  CHECK(box.body.at(0).line == 15);
  const auto& list = std::get<markup::List>(document.blocks[5].node);
  CHECK(list.items.at(1).body.at(0).line == 18);
}

TEST_CASE("Windows line ends make no difference") {
  CHECK(tree("\xEF\xBB\xBF# A {wide}\r\n\r\n> [!note] b\r\n> | c |\r\n> |---|\r\n") ==
        "heading 1 wide: A\nbox note: b\n  table left 3\n    head: c\n");
}

TEST_CASE("an empty text is an empty document") { CHECK(tree("") == ""); }
