// What comes out of a template.
#include "base/signs.h"
#include "sheets/template/fill.h"

#include <catch2/catch.hpp>

using sheets::Fact;
using sheets::FactList;
using sheets::Facts;

namespace {

std::string filled(const std::string& text, const Facts& facts,
                   const std::map<std::string, sheets::Template>& partials = {}) {
  base::Diagnostics messages;
  const std::string out = sheets::fill({"quote.md", text}, partials, facts, messages);
  for (const auto& d : messages.all()) FAIL_CHECK(base::format(d));
  return out;
}

const Facts twoRows = {
    {"rows", FactList{{{"what", "oil"}, {"price", "42.00"}}, {{"what", "rags"}, {"price", "7"}}}}};

}  // namespace

TEST_CASE("words are printed as typed, whatever they hold") {
  CHECK(filled("{{x}}", {{"x", "2*3 | #1 <b> \\ \"q\""}}) == "2\\*3 \\| \\#1 \\<b\\> \\\\ \\\"q\\\"");
  CHECK(filled("{{x}}", {{"x", " \t a \r\t b\x01 "}}) == "a b");
  CHECK(filled("{{x}}", {{"x", "12\u00A0m\u00B2"}}) == "12\u00A0m\u00B2");
  CHECK(filled("{{x}}", {{"x", "{{y}}"}}) == "\\{\\{y\\}\\}");
}

TEST_CASE("a line break in a word stays one, without leaving its line") {
  CHECK(filled("| {{x}} |", {{"x", "\n4 Mill Bay Road, \n\n Ferncombe\n"}}) ==
        std::string("| 4 Mill Bay Road\\,") + base::lineBreakSign + "Ferncombe |");
}

TEST_CASE("emphasis around a value gets edges that no value can undo") {
  const std::string edge = base::edgeSign;
  CHECK(filled("**{{x}}**s *a* {{x}}", {{"x", "(b)"}}) == "**" + edge + "\\(b\\)" + edge + "**s *a* \\(b\\)");
  CHECK(filled("**{{#x}}{{x}}{{/x}}**", {{"x", "b"}}) == "**" + edge + "b" + edge + "**");
}

TEST_CASE("an empty word, a no and an empty list close their sections and open the inverted ones") {
  const Facts facts = {{"word", ""}, {"no", Fact::yes(false)}, {"list", FactList{}}, {"full", "x"}};
  for (const std::string name : {"word", "no", "list"})
    CHECK(filled("{{#" + name + "}}A{{/" + name + "}}{{^" + name + "}}B{{/" + name + "}}", facts) == "B");
  CHECK(filled("{{#full}}{{full}}{{/full}}{{^full}}B{{/full}}", facts) == "x");
  CHECK(filled("[{{word}}]", facts) == "[]");
}

TEST_CASE("names are looked up inside out") {
  const Facts facts = {{"unit", "L"},
                       {"tin", Facts{{"size", "2.5"}, {"unit", "litres"}}},
                       {"areas", FactList{{{"title", "Landing"}}}}};
  CHECK(filled("{{#tin}}{{size}} {{unit}}{{/tin}} {{unit}} {{tin.size}}", facts) == "2\\.5 litres L 2\\.5");
  CHECK(filled("{{#areas}}{{title}} {{unit}}{{/areas}}", facts) == "Landing L");
}

TEST_CASE("a loop in a table leaves no blank lines between its rows") {
  CHECK(filled("| a | b |\n|---|--:|\n{{#rows}}\n| {{what}} | {{price}} |\n{{/rows}}\n\nAfter.\n", twoRows) ==
        "| a | b |\n|---|--:|\n| oil | 42\\.00 |\n| rags | 7 |\n\nAfter.\n");
}

TEST_CASE("a loop in a table in a quote leaves nothing behind but its rows") {
  CHECK(
      filled(
          "> [!totals]\n>\n> | | |\n> |---|---|\n> {{#rows}}\n> {{! one row }}\n> | {{what}} | {{price}} |\n"
          "  > {{/rows}}  \n\nAfter.\n",
          twoRows) ==
      "> [!totals]\n>\n> | | |\n> |---|---|\n> | oil | 42\\.00 |\n> | rags | 7 |\n\nAfter.\n");
}

TEST_CASE("an empty line after a section stays") {
  CHECK(filled("{{#rows}}\n- {{what}}\n{{/rows}}\n\nAfter.\n", twoRows) == "- oil\n- rags\n\nAfter.\n");
  CHECK(filled("{{#rows}}\n{{#what}}\n- {{what}}\n{{/what}}\n{{/rows}}\n  \n{{^rows}}{{/rows}}\nx",
               twoRows) == "- oil\n- rags\n  \nx");
}

TEST_CASE("tags amid words keep their line") {
  CHECK(filled("a {{! note }} b{{#rows}} {{what}}{{/rows}}\nc", twoRows) == "a  b oil rags\nc");
}

TEST_CASE("a comment over several lines vanishes with its lines") {
  CHECK(filled("a\n{{! for the\n office }}\nb\n", {}) == "a\nb\n");
}

TEST_CASE("a partial alone on its line brings its quote marks to each of its lines") {
  const std::map<std::string, sheets::Template> partials = {
      {"row", {"row.md", "{{#rows}}\n| {{what}} |\n\n{{/rows}}"}}, {"outer", {"o.md", "o\n  {{>row}}"}}};
  CHECK(filled("a\n> {{>row}}\nb\n", twoRows, partials) == "a\n> | oil |\n> \n> | rags |\n> \nb\n");
  CHECK(filled("> {{>outer}}\n", twoRows, partials) == "> o\n>   | oil |\n>   \n>   | rags |\n>   \n");
}

TEST_CASE("a partial amid words goes in without its last line break") {
  CHECK(filled("Call {{>phone}} now\n", {{"number", "5"}}, {{"phone", {"p.md", "{{number}}\n"}}}) ==
        "Call 5 now\n");
  CHECK(filled("| {{>phone}} |\n", {{"number", "5"}}, {{"phone", {"p.md", "**{{number}}**"}}}) ==
        std::string("| **") + base::edgeSign + "5" + base::edgeSign + "** |\n");
}

TEST_CASE("braces that meet where a partial ends make no tag") {
  CHECK(filled("{{>p}}{{x}}{{>p}}{x", {{"x", "1"}}, {{"p", {"p.md", "{"}}}) == "{1{{x");
}

TEST_CASE("Windows line ends and a byte order mark make no difference") {
  CHECK(filled("\xEF\xBB\xBF{{#rows}}\r\n- {{what}}\r\n{{/rows}}\r\nx\r\n", twoRows) == "- oil\n- rags\nx\n");
}

TEST_CASE("each line of the filled text knows its line in the template") {
  base::Diagnostics messages;
  const auto out = sheets::fillWithLines({"quote.md", "# T\n{{#rows}}\n{{>row}}\n{{/rows}}\nend"},
                                         {{"row", {"row.md", "\n- {{what}}\n"}}}, twoRows, messages);
  CHECK(out.text == "# T\n\n- oil\n\n- rags\nend");
  std::string lines;
  for (const auto& pos : out.lines) lines += pos.file + ":" + std::to_string(pos.line) + " ";
  CHECK(lines == "quote.md:1 row.md:1 row.md:2 row.md:1 row.md:2 quote.md:5 ");
}
