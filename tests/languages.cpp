// Languages: the forms of counted phrases, what a file of words may get wrong, and that code and files name
// the same words.
#include "english.h"
#include "fixtures.h"
#include "input/content/texts.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>

namespace fs = std::filesystem;
using base::PluralForm;
using base::PluralRule;

namespace {

/// A file in a folder of its own.
struct File {
  fs::path path;
  explicit File(const std::string& text) {
    path = fs::temp_directory_path() / "planksheaf-language.yaml";
    std::ofstream(path) << text;
  }
  ~File() { fs::remove(path); }
};

/// A small English, and all that is said about another file of words.
base::Language smallEnglish(base::Diagnostics& messages) {
  const File file(
      "name: English\nplural: one other\nwords:\n  greet: 'Hello {name}'\n  title: {quote: Quote}\n"
      "  days: {one: '{n}~day', other: '{n}~days'}\n");
  return input::readLanguage(file.path.string(), "en", nullptr, {}, messages);
}

model::Content smallContent() {
  model::Content c;
  c.timbers["oak"].name = "oak";
  model::Task sand;
  sand.id = "sand";
  sand.name = "sand";
  sand.offer = "Plug into the {cutout}.";
  c.tasks = {sand};
  return c;
}

std::string messagesOf(const std::string& text) {
  base::Diagnostics messages;
  const auto english = smallEnglish(messages);
  REQUIRE(messages.ok());
  const File file(text);
  input::readLanguage(file.path.string(), "xx", &english, smallContent(), messages);
  std::string all;
  for (const auto& d : messages.all()) {
    auto line = base::format(d);
    all += line.substr(file.path.string().size() + 1);
  }
  return all;
}

const std::string goodContent =
    "content:\n  timbers: {oak: Eiche}\n  tasks:\n    sand: {name: a, offer: 'b {cutout}'}\n";

}  // namespace

TEST_CASE("counted phrases take the forms of the Unicode CLDR") {
  // Unicode CLDR, Language Plural Rules, cardinals: English and Spanish 'one' is 1; Polish 'few' is 2 to 4 by
  // the last digit except 12 to 14, 'many' the rest.
  for (const int n : {0, 2, 5, 11, 21, 101})
    CHECK(base::formOf(PluralRule::OneOther, n) == PluralForm::Other);
  CHECK(base::formOf(PluralRule::OneOther, 1) == PluralForm::One);
  CHECK(base::formOf(PluralRule::OneFewMany, 1) == PluralForm::One);
  for (const int n : {2, 3, 4, 22, 33, 104, 1002})
    CHECK(base::formOf(PluralRule::OneFewMany, n) == PluralForm::Few);
  for (const int n : {0, 5, 11, 12, 13, 14, 21, 25, 112, 1000})
    CHECK(base::formOf(PluralRule::OneFewMany, n) == PluralForm::Many);
  for (const int n : {0, 1, 2}) CHECK(base::formOf(PluralRule::Other, n) == PluralForm::Other);
}

TEST_CASE("a phrase is filled in, and a number takes its form") {
  const auto& w = english();
  CHECK(w("furniture.foot", {{"document", "Quote"}, {"ref", "T-1"}}) == "Quote · job T-1");
  CHECK(w.counted("waits.days", 1) == "1\u00A0day");
  CHECK(w.counted("waits.days", 4) == "4\u00A0days");
  CHECK(w.counted("crew.people", 3) == "three people");
  CHECK(w.counted("crew.people", 13) == "13 people");
  CHECK(w.joined({"a"}) == "a");
  CHECK(w.joined({"a", "b", "c"}) == "a, b and c");
  CHECK_THROWS_AS(w("furniture.nothing"), std::logic_error);
  CHECK_THROWS_AS(w("furniture.foot"), std::logic_error);
  CHECK_THROWS_AS(w("waits.days"), std::logic_error);
}

TEST_CASE("the first letter is put in capitals in any of our alphabets") {
  CHECK(base::capitalised("oil") == "Oil");
  CHECK(base::capitalised("óleo") == "Óleo");
  CHECK(base::capitalised("ścieranie") == "Ścieranie");
  CHECK(base::capitalised("żywica") == "Żywica");
  CHECK(base::capitalised("łata") == "Łata");
  CHECK(base::capitalised("Łata") == "Łata");
  CHECK(base::capitalised("Ósmy") == "Ósmy");
  CHECK(base::capitalised("9 tins") == "9 tins");
  CHECK(base::capitalised("") == "");
}

TEST_CASE("a language that holds what English holds is taken") {
  CHECK(messagesOf("name: X\nplural: one few many\nwords:\n  greet: '{name}!'\n  title: {quote: Q}\n  days: "
                   "{one: day, few: "
                   "'{n} a', many: '{words} b'}\n" +
                   goodContent) == "");
}

TEST_CASE("a language tells every word that is missing, unknown or has other places than in English") {
  CHECK(messagesOf("name: X\nplural: one few many\nwords:\n  greet: 'Hola {nombre}'\n  title: {quot: Q}\n  "
                   "days: {one: day, "
                   "few: days}\n" +
                   goodContent) ==
        "4:10: error: words.greet: has the places {nombre}, in English {name}\n"
        "  hint: name the same places in braces, in any order\n"
        "5:10: error: words.title: 'title.quote' is missing\n"
        "  hint: in English: Quote\n"
        "5:17: error: words.title.quot: there is no such text to translate; did you mean 'title.quote'?\n"
        "  hint: take it out, or name it as content/languages/en.yaml does\n"
        "6:9: error: words.days: 'many' is missing\n"
        "  hint: write it like many: '{n} days'\n"
        "6:9: error: words.days: the form 'few' does not name its number\n"
        "  hint: write {n} or {words} in it\n"
        "6:9: error: words.days: the form 'many' does not name its number\n"
        "  hint: write {n} or {words} in it\n");
  CHECK(messagesOf("name: X\nplural: two\nwords:\n  greet: '{name'\n  title: {quote: {one: a, other: b}}\n  "
                   "days: days\n" +
                   goodContent) ==
        "2:9: error: plural: 'two' is not a known rule of plurals\n"
        "  hint: known: other, one other or one few many\n"
        "4:10: error: words.greet: a place is not closed\n"
        "  hint: write it like {name}\n"
        "4:10: error: words.greet: has the places none, in English {name}\n"
        "  hint: name the same places in braces, in any order\n"
        "5:18: error: words.title.quote: counts nothing in English\n"
        "  hint: give one text\n"
        "6:9: error: words.days: counts something: a text for each form is needed\n"
        "  hint: give a text for each of the language's 'plural' forms\n");
}

TEST_CASE("a language translates every text of the content and no other") {
  const std::string words =
      "name: X\nplural: other\nwords:\n  greet: '{name}'\n  title: {quote: Q}\n  days: {other: '{n}'}\n";
  CHECK(messagesOf(words) ==
        "1:1: error: 'content' is missing\n"
        "  hint: write it like content: {}\n");
  CHECK(
      messagesOf(words + "content:\n  timbers: {oak: Eiche, aok: Eiche}\n  tasks:\n    sand: {offer: b}\n") ==
      "8:30: error: content.timbers.aok: there is no such text to translate; did you mean 'timbers.oak'?\n"
      "  hint: take it out, or name it as content/languages/en.yaml does\n"
      "10:11: error: content.tasks.sand: 'tasks.sand.name' is missing\n"
      "  hint: in English: sand\n"
      "10:19: error: content.tasks.sand.offer: has the places none, in English {cutout}\n"
      "  hint: name the same places in braces, in any order\n");
}

TEST_CASE("content is translated, what has no words stays") {
  base::Language language;
  language.content = {{"timbers.oak", "roble"}};
  const auto c = input::translated(smallContent(), language);
  CHECK(c.timbers.at("oak").name == "roble");
  CHECK(c.tasks[0].name == "sand");
}

TEST_CASE("every language that comes with the program holds every word and text") {
  base::Diagnostics messages;
  const std::string folder = std::string(SOURCE_DIR) + "/content";
  const auto content = input::readContent(folder, messages);
  CHECK(std::find(content.languages.begin(), content.languages.end(), "en") != content.languages.end());
  for (const auto& id : content.languages) {
    if (id != "en")
      input::readLanguage(folder + "/languages/" + id + ".yaml", id, &english(), content, messages);
  }
  for (const auto& d : messages.all()) FAIL_CHECK(base::format(d));
}

// A key stands in code as a whole ("waits.days"), or its beginning does ("timeline.") where the rest is the
// name of a thing.
TEST_CASE("code and languages name the same words") {
  std::set<std::string> keys, groups, used;
  for (const auto& [key, phrase] : english().words) {
    keys.insert(key);
    groups.insert(key.substr(0, key.find('.')));
  }
  const std::regex literal("\"([a-z_0-9]+)(\\.[a-z_0-9.]*)\"");
  for (const char* folder : {"sheets", "drawings", "app"}) {
    for (const auto& entry : fs::recursive_directory_iterator(std::string(SOURCE_DIR) + "/src/" + folder)) {
      if (!entry.is_regular_file()) continue;
      std::ifstream in(entry.path());
      const std::string code{std::istreambuf_iterator<char>(in), {}};
      for (std::sregex_iterator m(code.begin(), code.end(), literal), end; m != end; ++m) {
        const std::string key = (*m)[1].str() + (*m)[2].str();
        if (!groups.contains((*m)[1].str())) continue;       // a file name or the like
        if (m->prefix().str().ends_with("Pos, ")) continue;  // a key of the job, in a message about it
        INFO(entry.path().filename().string() << ": " << key);
        const bool isBeginning = std::any_of(keys.begin(), keys.end(), [&](const std::string& k) {
          return k.starts_with(key) && k != key && (key.ends_with('.') || k[key.size()] == '.');
        });
        CHECK((keys.contains(key) || isBeginning));
        used.insert(key);
      }
    }
  }
  // What the language itself is made of.
  for (const char* own : {"lists.last", "lists.last_before_i", "lists.more", "numbers.words."})
    used.insert(own);
  for (const auto& key : keys) {
    const bool isUsed = std::any_of(used.begin(), used.end(), [&](const std::string& u) {
      return key == u || (u.ends_with('.') && key.starts_with(u));
    });
    if (!isUsed) FAIL_CHECK("no code says '" << key << "'");
  }
}

// So that a section that English gains is not forgotten in a translation.
TEST_CASE("translated templates tell what the English ones tell") {
  const auto namesIn = [](const fs::path& file) {
    std::ifstream in(file);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    const std::regex tag("\\{\\{[#^/>]?\\s*([a-z_0-9]+)");
    std::set<std::string> names;
    for (std::sregex_iterator m(text.begin(), text.end(), tag), end; m != end; ++m)
      names.insert((*m)[1].str());
    return names;
  };
  const fs::path templates = std::string(SOURCE_DIR) + "/templates";
  int compared = 0;
  for (const auto& folder : fs::directory_iterator(templates)) {
    const auto language = folder.path().filename().string();
    if (!folder.is_directory() || language == "en" || language == "themes") continue;
    for (const auto& file : fs::directory_iterator(folder.path())) {
      const fs::path model = templates / "en" / file.path().filename();
      INFO(language << "/" << file.path().filename().string());
      REQUIRE(fs::exists(model));
      CHECK(namesIn(file.path()) == namesIn(model));
      ++compared;
    }
  }
  CHECK(compared > 5);
}
