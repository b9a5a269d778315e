// Whatever people type comes back from the page as typed, and harms nothing around it.
#include "markup/dump.h"
#include "markup/read.h"
#include "sheets/template/fill.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

namespace {

using sheets::FactList;
using sheets::Facts;

const sheets::Template everywhere = {"all.md",
                                     "# {{x}}\n"
                                     "\n"
                                     "## {{x}} {wide}\n"
                                     "\n"
                                     "{{x}}\n"
                                     "\n"
                                     "Before **{{x}}** between *{{x}}*, behind{{x}}.\n"
                                     "\n"
                                     "- {{x}}\n"
                                     "- last\n"
                                     "\n"
                                     "| a | b |\n"
                                     "|---|--:|\n"
                                     "{{#rows}}\n"
                                     "| {{x}} | {{n}} |\n"
                                     "{{/rows}}\n"
                                     "\n"
                                     "> [!note] {{x}}\n"
                                     "> {{x}}\n"
                                     ">\n"
                                     "> | | |\n"
                                     "> |---|---|\n"
                                     "> {{#rows}}\n"
                                     "> | **{{x}}** | {{n}} |\n"
                                     "> {{/rows}}\n"
                                     "\n"
                                     "![{{x}}](figure:plan)\n"
                                     "\n"
                                     "[{{x}}](https://a.example)\n"};

/// White space as one blank, or as one line break if there is one in it.
std::string collapsed(const std::string& s) {
  std::string out, gap;
  for (const char c : s) {
    if (static_cast<unsigned char>(c) <= ' ' || c == '\x7F') {
      if (gap != "\n") gap = c == '\n' ? "\n" : " ";
      continue;
    }
    if (!out.empty()) out += gap;
    gap.clear();
    out += c;
  }
  return out;
}

std::string shown(const std::string& s) {
  std::string out;
  for (const char c : s) out += c == '\n' ? "\\n" : std::string(1, c);
  return out;
}

std::string spaced(std::string s) {
  for (char& c : s) c = c == '\n' ? ' ' : c;
  return s;
}

/// The tree of the template above when 'x' is 'typed'.
std::string expected(const std::string& typed) {
  const std::string x = shown(typed);
  return "heading 1: " + x + "\nheading 2 wide: " + x + "\nparagraph: " + x + "\nparagraph: Before **" + x +
         "** between *" + x + "*, behind" + x + ".\nlist dash\n  item\n    paragraph: " + x +
         "\n  item\n    paragraph: last\ntable left 3 right 2\n  head: a | b\n  row: " + x +
         " | 1\n  row: " + x + " | 2\nbox note: " + x + "\n  paragraph: " + x +
         "\n  table left 3 left 3\n    row: **" + x + "** | 1\n    row: **" + x +
         "** | 2\nfigure plan: " + spaced(typed) + "\nparagraph: [" + x + "](https://a.example)\n";
}

std::string withAll(std::string s, const std::string& from, const std::string& to) {
  for (auto at = s.find(from); at != std::string::npos; at = s.find(from, at + to.size()))
    s.replace(at, from.size(), to);
  return s;
}

/// Quotes of print are as good as those typed.
std::string straight(std::string s) { return withAll(withAll(std::move(s), "\u2018", "'"), "\u2019", "'"); }

/// Without the word joiners that keep typed marks from being taken for a template's; they print nothing.
std::string printed(std::string tree) { return withAll(std::move(tree), "\u2060", ""); }

void check(const std::string& x) {
  const Facts facts = {{"x", x}, {"rows", FactList{{{"x", x}, {"n", "1"}}, {{"x", x}, {"n", "2"}}}}};
  base::Diagnostics messages;
  const auto filled = sheets::fillWithLines(everywhere, {}, facts, messages);
  const auto document = markup::readMarkdown(filled.text, filled.lines, messages);
  INFO(filled.text);
  for (const auto& d : messages.all()) FAIL_CHECK(base::format(d));
  CHECK(straight(printed(markup::dump(document))) == straight(expected(collapsed(x))));
  CHECK(markup::dump(document).find("____") ==
        std::string::npos);                                        // only a template draws a line to write on
  CHECK(markup::dump(document).find("[ ]") == std::string::npos);  // or a box to tick
}

}  // namespace

TEST_CASE("awkward words come back from every place as typed") {
  for (const std::string x : {"plain",
                              "2*3*4 = *24*",
                              "| a | b |",
                              "# 1.",
                              "1. first",
                              "- [ ] box",
                              "> [!danger]",
                              "<b>bold</b>",
                              "a\\",
                              "\\",
                              "*",
                              "**",
                              "_",
                              "`",
                              "&amp;",
                              "&",
                              "\"quoted\"",
                              "{wide}",
                              "{{y}}",
                              "![x](figure:y)",
                              "[a](b)",
                              "https://a.example",
                              "a@b.example",
                              "~~x~~",
                              "---",
                              "====",
                              "____",
                              "_____________",
                              "[ ] no box",
                              "12\u00A0m\u00B2",
                              "\u00A0x\u00A0",
                              "\U0001F600 caf\u00E9 \u2014 \u201Cso\u201D",
                              "line one\nline two",
                              " a \t b ",
                              "]",
                              "](",
                              "$x$",
                              "+",
                              "x:y"})
    check(x);
  check(std::string(300, 'W'));
  std::string words;
  for (int i = 0; i < 60; ++i) words += "word ";
  check(words);
}

TEST_CASE("random words come back from every place as typed") {
  const std::vector<std::string> alphabet = {
      "a",      "b",      "Z",      "0",          "1",    "9",   ".",     ",",  "-",  "+",  "*",
      "_",      "#",      ">",      "|",          "`",    "~",   "[",     "]",  "(",  ")",  "{",
      "}",      "<",      ">",      "&",          "!",    "\\",  "\"",    "'",  "=",  ":",  ";",
      "/",      "$",      "%",      "^",          "@",    "?",   " ",     " ",  "\t", "\n", "\u00A0",
      "\u00E9", "\u2014", "\u201C", "\U0001F600", "--- ", "1. ", "&amp;", "<b>"};
  std::mt19937 random(1);
  for (int i = 0; i < 4000; ++i) {
    std::string x;
    for (auto n = 1 + random() % 24; n > 0; --n) x += alphabet[random() % alphabet.size()];
    if (!collapsed(x).empty()) check(x);
  }
}

TEST_CASE("no text makes the reader of documents fail") {
  const std::vector<std::string> alphabet = {"a",        "b",     " ",      " ",        "\n",
                                             "\n",       "\n",    "> ",     "- ",       "+ ",
                                             "1. ",      "# ",    "## ",    "|",        "| |\n|---|\n",
                                             "---",      "*",     "**",     "_",        "[",
                                             "](",       ")",     "![",     "figure:x", "[!note]",
                                             "[!side] ", "[ ] ",  "{wide}", "<",        "<b>",
                                             "`",        "```\n", "\\",     "&",        "&amp;",
                                             "&#1;",     "    ",  "\t",     "\r",       "\xA9",
                                             "\xC3",     "=",     ":",      "\u00A0",   std::string(1, '\0')};
  std::mt19937 random(2);
  std::vector<std::string> bad;
  for (int i = 0; i < 20'000; ++i) {
    std::string text;
    for (auto n = 1 + random() % 40; n > 0; --n) text += alphabet[random() % alphabet.size()];
    base::Diagnostics messages;
    const auto document = markup::readMarkdown(text, "x.md", messages);
    const int lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
    for (const auto& block : document.blocks) {
      if (block.line < 0 || block.line > lines) bad.push_back(text);
    }
    markup::dump(document);
  }
  CHECK(bad.empty());
}

TEST_CASE("no template makes the filler fail") {
  const std::vector<std::string> alphabet = {
      "a",      " ",      "\n",        "\n",        "> ",    "|",      "{{x}}",  "{{#x}}",
      "{{/x}}", "{{^x}}", "{{#rows}}", "{{/rows}}", "{{x}}", "{{>p}}", "{{!c}}", "{{",
      "}}",     "{",      "**",        "{{! \n }}", "{{n}}", "\r\n"};
  const Facts facts = {{"x", "1"}, {"n", ""}, {"rows", FactList{{{"x", "2"}}, {{"x", ""}}}}};
  std::mt19937 random(3);
  std::vector<std::string> bad;
  for (int i = 0; i < 20'000; ++i) {
    std::string text, partial;
    for (auto n = 1 + random() % 16; n > 0; --n) text += alphabet[random() % alphabet.size()];
    for (auto n = random() % 6; n > 0; --n) partial += alphabet[random() % alphabet.size()];
    base::Diagnostics messages;
    const auto filled = sheets::fillWithLines({"t.md", text}, {{"p", {"p.md", partial}}}, facts, messages);
    const auto breaks = static_cast<std::size_t>(std::count(filled.text.begin(), filled.text.end(), '\n'));
    const bool hasRest = !filled.text.empty() && filled.text.back() != '\n';
    const bool isWhole = filled.lines.size() == breaks + (hasRest ? 1 : 0) &&
                         filled.text.find_first_of("\1\2") == std::string::npos &&
                         (messages.ok() || filled.text.empty());
    if (!isWhole) bad.push_back(text + " with partial " + partial);
  }
  CHECK(bad.empty());
}
