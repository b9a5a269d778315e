// What a template's author is told.
#include "sheets/template/fill.h"

#include <catch2/catch.hpp>

using sheets::Fact;
using sheets::FactList;
using sheets::Facts;

namespace {

Facts facts() {
  return {{"customer", Facts{{"name", "Inga"}, {"phone", "555 0191"}}},
          {"areas", FactList{{{"title", "Landing"}, {"litres", "7.5"}}, {{"title", "Stairs"}}}},
          {"rows", FactList{}},
          {"hasNote", Fact::yes(false)},
          {"note", ""}};
}

/// All messages about one template.
std::string messagesFor(const std::string& text,
                        const std::map<std::string, sheets::Template>& partials = {}) {
  base::Diagnostics messages;
  const std::string filled = sheets::fill({"quote.md", text}, partials, facts(), messages);
  if (!messages.ok()) CHECK(filled.empty());
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d);
  return all;
}

}  // namespace

TEST_CASE("an unknown name in a template is reported with the name that was meant") {
  CHECK(messagesFor("Dear\n  {{custmer.name}},") ==
        "quote.md:2:3: error: {{custmer.name}}: 'custmer' is not known here; did you mean 'customer'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
  CHECK(messagesFor("{{customer.nmae}}") ==
        "quote.md:1:1: error: {{customer.nmae}}: 'customer' has no 'nmae'; did you mean 'name'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
  CHECK(messagesFor("{{#araes}}{{what}}{{/araes}}") ==
        "quote.md:1:1: error: {{#araes}}: 'araes' is not known here; did you mean 'areas'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
  CHECK(messagesFor("{{^xyzzy}}none{{/xyzzy}}") ==
        "quote.md:1:1: error: {{^xyzzy}}: 'xyzzy' is not known here\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
}

TEST_CASE("a name used outside its list or group is reported with where it belongs") {
  CHECK(messagesFor("{{title}}") ==
        "quote.md:1:1: error: {{title}}: 'title' is not known here\n"
        "  hint: it is known inside {{#areas}} ... {{/areas}}\n");
  CHECK(messagesFor("{{phone}}") ==
        "quote.md:1:1: error: {{phone}}: 'phone' is not known here\n  hint: write {{customer.phone}}\n");
  CHECK(messagesFor("{{areas.title}}") ==
        "quote.md:1:1: error: {{areas.title}}: 'areas' is a list and has no names of its own\n"
        "  hint: write {{#areas}}{{title}}{{/areas}}\n");
  CHECK(messagesFor("{{note.title}}") ==
        "quote.md:1:1: error: {{note.title}}: 'note' is a word and has no names of its own\n"
        "  hint: write {{note}}\n");
}

TEST_CASE("a name that only some items of a list have is reported once") {
  CHECK(messagesFor("{{#areas}}{{litres}}{{/areas}}") ==
        "quote.md:1:11: error: {{litres}}: 'litres' is not known here; did you mean 'title'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
}

TEST_CASE("names inside the section of an empty list cannot be checked and are let pass") {
  CHECK(messagesFor("{{#rows}}{{anything}}{{/rows}}").empty());
}

TEST_CASE("names inside a section that is not printed are checked all the same") {
  CHECK(messagesFor("{{#hasNote}}{{note}}{{notte}}{{/hasNote}}") ==
        "quote.md:1:21: error: {{notte}}: 'notte' is not known here; did you mean 'note'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
}

TEST_CASE("a variable that names no word is refused") {
  CHECK(messagesFor("{{areas}}") ==
        "quote.md:1:1: error: {{areas}}: is a list, not a word\n  hint: write {{#areas}} ... {{/areas}}\n");
  CHECK(messagesFor("{{customer}}") ==
        "quote.md:1:1: error: {{customer}}: is a group of names, not a word\n"
        "  hint: write {{customer.name}}\n");
  CHECK(messagesFor("{{hasNote}}") ==
        "quote.md:1:1: error: {{hasNote}}: is yes or no, not a word\n"
        "  hint: write {{#hasNote}} ... {{/hasNote}}\n");
}

TEST_CASE("sections that are not closed, or closed in the wrong order, are reported") {
  CHECK(messagesFor("a\n{{#areas}}\nb\n") ==
        "quote.md:2:1: error: {{#areas}}: this section is never closed\n  hint: add {{/areas}}\n");
  CHECK(messagesFor("{{#areas}}\n{{#note}}\n{{/areas}}\n{{/note}}\n") ==
        "quote.md:3:1: error: {{/areas}}: {{#note}} of line 2 is still open\n"
        "  hint: put {{/note}} before it\n"
        "quote.md:4:1: error: {{/note}}: no section of this name is open here\n"
        "  hint: take it away\n");
  CHECK(messagesFor("{{#note}}{{/notes}}{{/note}}") ==
        "quote.md:1:10: error: {{/notes}}: no section of this name is open here\n"
        "  hint: {{/note}} is expected next\n");
}

TEST_CASE("tags outside the strict subset are refused") {
  CHECK(messagesFor("é{{{note}}}!") ==
        "quote.md:1:2: error: {{{note}}}: prints a value without escaping it\n  hint: write {{note}}\n");
  CHECK(messagesFor("{{& note}}") ==
        "quote.md:1:1: error: {{& note}}: prints a value without escaping it\n  hint: write {{note}}\n");
  CHECK(messagesFor("{{=<% %>=}}") ==
        "quote.md:1:1: error: {{=<% %>=}}: the marks of a tag cannot be changed\n"
        "  hint: write {{name}}\n");
  CHECK(messagesFor("{{note|upper}}") ==
        "quote.md:1:1: error: {{note|upper}}: 'note|upper' is not a name\n"
        "  hint: names are made of letters, digits and '_', joined by '.'\n");
  CHECK(messagesFor("{{.}}") ==
        "quote.md:1:1: error: {{.}}: '.' is not a name\n"
        "  hint: names are made of letters, digits and '_', joined by '.'\n");
  CHECK(messagesFor("a {{note\n}} b") ==
        "quote.md:1:3: error: this tag is not closed\n  hint: end it with }} on the same line\n");
  CHECK(messagesFor("a\n\x01") == "quote.md:2:1: error: control character U+0001\n  hint: delete it\n");
}

TEST_CASE("partials that are missing or contain themselves are reported") {
  CHECK(messagesFor("{{>feet}}", {{"foot", {"foot.md", ""}}}) ==
        "quote.md:1:1: error: {{>feet}}: there is no partial 'feet'; did you mean 'foot'?\n"
        "  hint: write {{>foot}}\n");
  CHECK(messagesFor("{{>a}}", {{"a", {"a.md", "x\n{{>b}}"}}, {"b", {"b.md", "{{>a}}"}}}) ==
        "b.md:1:1: error: {{>a}}: this partial contains itself\n"
        "  hint: take it out of its own file\n");
}

TEST_CASE("a mistake in a partial is reported once, with the partial's file") {
  CHECK(messagesFor("{{#areas}}\n{{>row}}\n{{>row}}\n{{/areas}}", {{"row", {"row.md", "\n{{#note}}"}}}) ==
        "row.md:2:1: error: {{#note}}: this section is never closed\n  hint: add {{/note}}\n");
}

TEST_CASE("all mistakes of a template come in one run") {
  CHECK(messagesFor("{{hasNotes}}\n{{nota}}") ==
        "quote.md:1:1: error: {{hasNotes}}: 'hasNotes' is not known here; did you mean 'hasNote'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n"
        "quote.md:2:1: error: {{nota}}: 'nota' is not known here; did you mean 'note'?\n"
        "  hint: 'planksheaf facts JOB' lists every name\n");
}

TEST_CASE("templates too large, too deep or too long when filled are refused") {
  CHECK(messagesFor(std::string(262'145, 'x')) ==
        "quote.md: error: the template is longer than 256 KiB\n"
        "  hint: check that it is the right file\n");

  std::string deep;
  for (int i = 0; i < 65; ++i) deep += "{{#customer}}";
  for (int i = 0; i < 65; ++i) deep += "{{/customer}}";
  CHECK(messagesFor(deep) ==
        "quote.md:1:833: error: {{#customer}}: more than 64 sections inside one another\n"
        "  hint: close some before\n");  // 64 * 13 + 1

  std::string loops, ends;
  for (int i = 0; i < 5; ++i) loops += "{{#areas}}", ends += "{{/areas}}";
  CHECK(messagesFor(loops + std::string(200'000, 'x') + ends) ==  // 32 times 200 kB
        "quote.md:1:51: error: the filled text would be longer than 4 MiB\n"
        "  hint: look for loops inside loops\n");

  std::map<std::string, sheets::Template> doubling;
  for (char c = 'a'; c < 'z'; ++c) {
    const std::string next(1, static_cast<char>(c + 1));
    doubling[std::string(1, c)] = {"p.md", "{{>" + next + "}}{{>" + next + "}}"};
  }
  doubling["z"] = {"z.md", ""};
  CHECK(messagesFor("{{>a}}", doubling) ==
        "p.md:1:1: error: the template with its partials is longer than 256 KiB\n"
        "  hint: look for partials that hold each other many times\n");
}
