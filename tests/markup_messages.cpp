// What is refused in a document, and with which words.
#include "markup/read.h"

#include <catch2/catch.hpp>

namespace {

std::string messagesFor(const std::string& text) {
  base::Diagnostics messages;
  markup::readMarkdown(text, "quote.md", messages);
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d);
  return all;
}

}  // namespace

TEST_CASE("headings outside the two levels are refused") {
  CHECK(messagesFor("a\n\n### Deep\n") ==
        "quote.md:3: error: headings have two levels\n  hint: write '## ', or make the words **strong**\n");
  CHECK(messagesFor("## Price {wied}\n") ==
        "quote.md:1: error: 'wied' is not an attribute of a heading; did you mean 'wide'?\n"
        "  hint: known are {wide}, {small}, {whole} and {fenced}\n");
  CHECK(messagesFor("Total\n---\n") ==
        "quote.md:1: error: a line of dashes makes a heading of these words\n"
        "  hint: put an empty line between them for a page break, or write '## ' for a heading\n");
  CHECK(messagesFor("a\n\n##\n") ==
        "quote.md:1: error: a heading without words\n"
        "  hint: write some behind the #, or take it away\n");
}

TEST_CASE("boxes without a known kind are refused") {
  CHECK(messagesFor("\n> Watch out\n") ==
        "quote.md:2: error: a quote must begin with its kind\n  hint: write '> [!note]' above it\n");
  CHECK(messagesFor("> - a\n") ==
        "quote.md:1: error: a quote must begin with its kind\n  hint: write '> [!note]' above it\n");
  CHECK(messagesFor("> \\[!note] a\n") ==
        "quote.md:1: error: a quote must begin with its kind\n  hint: write '> [!note]' above it\n");
  CHECK(messagesFor("> [!Warnign] a\n") ==
        "quote.md:1: error: 'Warnign' is not a kind of box; did you mean 'warning'?\n"
        "  hint: known are note, caution, warning, danger, side, figures, columns, signs, totals, keep, "
        "letter, matrix, steps, address, cards, profiles, orders, answers, go\n");
  CHECK(messagesFor("> [!note] a\n> b\n> [!caution] c\n") ==
        "quote.md:3: error: a box begins amid other words\n"
        "  hint: put an empty line without '>' before it\n");
  CHECK(messagesFor("> [!note] a\n>\n> [!caution] c\n") ==
        "quote.md:3: error: a box begins amid other words\n"
        "  hint: put an empty line without '>' before it\n");
  CHECK(messagesFor("[!note] a\n") ==
        "quote.md:1: error: a box begins amid other words\n  hint: begin each of its lines with '>'\n");
  CHECK(messagesFor("> [!note] a\n> > [!note] b\n> > > [!note] c\n") ==
        "quote.md:3: error: boxes may hold boxes, but no deeper\n"
        "  hint: end the inner box first\n");
}

TEST_CASE("code and HTML are refused") {
  CHECK(messagesFor("a\n\n    b\n") ==
        "quote.md:3: error: code has no place in a document\n"
        "  hint: indent by fewer than four blanks, and take ``` or ~~~ away\n");
  CHECK(messagesFor("```\nb\n```\n") ==
        "quote.md:2: error: code has no place in a document\n"
        "  hint: indent by fewer than four blanks, and take ``` or ~~~ away\n");
  CHECK(messagesFor("a `b`\n") ==
        "quote.md:1: error: code has no place in a document\n  hint: take the ` away, or write \\`\n");
  CHECK(messagesFor("a\nb <b>c\n") ==
        "quote.md:2: error: '<b>' is HTML, which has no place in a document\n"
        "  hint: write \\< for a less-than sign\n");
  CHECK(messagesFor("<!-- a\nb -->\n") ==
        "quote.md:1: error: HTML has no place in a document\n"
        "  hint: write \\< for a less-than sign, {{! ... }} for a comment\n");
  CHECK(messagesFor("3 < 5 & 7 > 2\n") == "");
}

TEST_CASE("drawings that are not drawings, link definitions and unknown entities are refused") {
  CHECK(messagesFor("a ![b](c.png)\n") ==
        "quote.md:1: error: 'c.png' is not a drawing\n  hint: name one, such as ![words](figure:plan)\n");
  CHECK(messagesFor("[a]: https://b.example\n") ==
        "quote.md:1: error: link definitions are not read\n"
        "  hint: write the address behind the words: [words](https://...)\n");
  CHECK(messagesFor("&pound;5\n") ==
        "quote.md:1: error: '&pound;' is not known\n  hint: type the letter itself\n");
  CHECK(messagesFor("&#xD800;\n") ==
        "quote.md:1: error: '&#xD800;' is not known\n  hint: type the letter itself\n");
}

TEST_CASE("only what opens a page, a letter or a telephone may be pressed") {
  const std::string hint = "  hint: begin it with https://, http://, mailto: or tel:\n";
  CHECK(messagesFor("[a](javascript:alert(1))\n") ==
        "quote.md:1: error: 'javascript:alert(1)' is not an address that may be pressed\n" + hint);
  CHECK(messagesFor("a\n\n[b](file:///etc/passwd)\n") ==
        "quote.md:3: error: 'file:///etc/passwd' is not an address that may be pressed\n" + hint);
  CHECK(messagesFor("[a](JavaScript:x)\n") ==
        "quote.md:1: error: 'JavaScript:x' is not an address that may be pressed\n" + hint);
  CHECK(messagesFor("[a](office.pdf)\n") ==
        "quote.md:1: error: 'office.pdf' is not an address that may be pressed\n" + hint);
  CHECK(messagesFor("<data:text/html,x>\n") ==
        "quote.md:1: error: 'data:text/html,x' is not an address that may be pressed\n" + hint);
  CHECK(messagesFor("[a](https://b.example) [a](HTTP://b.example) [a](mailto:a@b.example) [a](tel:111)\n")
            .empty());
}

TEST_CASE("lists too deep, ticked or mixed are refused") {
  CHECK(messagesFor("- a\n  - b\n    - c\n") ==
        "quote.md:3: error: lists nest two deep at most\n"
        "  hint: move these items one level out\n");
  CHECK(messagesFor("- [x] a\n") ==
        "quote.md:1: error: a ticked box cannot be printed\n  hint: write '- [ ]', or '+' for a tick\n");
  CHECK(messagesFor("- [ ] a\n- b\n") ==
        "quote.md:1: error: some items of this list are boxes and some are not\n"
        "  hint: begin each with '[ ]', or none\n");
  const std::string words =
      " error: a list item may hold words and lists, nothing else\n  hint: put an empty line after the "
      "list\n";
  CHECK(messagesFor("- a\n\n  | b |\n  |---|\n") == "quote.md:3:" + words);
  CHECK(messagesFor("- ## a\n") == "quote.md:1:" + words);
  CHECK(messagesFor("- a\n  > [!note] b\n") == "quote.md:2:" + words);
}

TEST_CASE("words that run on into what stands above are reported") {
  CHECK(messagesFor("> [!note] a\n> b\nc\n") ==
        "quote.md:3: error: this line runs on into the box above\n"
        "  hint: put an empty line before it, or begin it with '>'\n");
  CHECK(messagesFor("- a\nb\n") ==
        "quote.md:2: error: this line runs on into the list above\n"
        "  hint: put an empty line before it, or indent it\n");
  CHECK(messagesFor("a\n| b |\n|---|\n") ==
        "quote.md:2: error: this row of a table runs on into the words above\n"
        "  hint: put an empty line before the table, and at least three dashes in each of its columns\n"
        "quote.md:3: error: this row of a table runs on into the words above\n"
        "  hint: put an empty line before the table, and at least three dashes in each of its columns\n");
  CHECK(messagesFor("| a |\n|---|\n| b |\nc\n") ==
        "quote.md:4: error: this line has become a row of the table above\n"
        "  hint: put an empty line before it, or begin it with '|'\n");
}

TEST_CASE("a row with more cells than the table has columns is reported") {
  CHECK(messagesFor("| a |\n|---|\n| b | c |\n| d \\| e |\n") ==
        "quote.md:3: error: this row has 2 cells, the head of its table 1\n"
        "  hint: take some out, or write \\| for a stroke in a cell\n");
}

TEST_CASE("a page break belongs between blocks") {
  CHECK(messagesFor("> [!note]\n>\n> ***\n") ==
        "quote.md:3: error: a page break has no place in a box or a list\n"
        "  hint: put it before or behind, with empty lines around it\n");
}

TEST_CASE("nesting without end is stopped") {
  std::string deep;
  for (int i = 0; i < 100'000; ++i) deep += "- ";
  CHECK(messagesFor(deep + "a") ==
        "quote.md: error: blocks are nested too deeply here\n"
        "  hint: take some '>' or blanks away\n");
}

TEST_CASE("messages about a filled template name the template's line") {
  base::Diagnostics messages;
  markup::readMarkdown("a\n\n### b\n", {{"quote.md", 7, 0}, {"quote.md", 8, 0}, {"part.md", 2, 0}}, messages);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all()[0]) ==
        "part.md:2: error: headings have two levels\n  hint: write '## ', or make the words **strong**\n");
}
