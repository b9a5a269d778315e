// A file of content/languages: words under nested keys, and the texts of the content translated. What English
// has and the file lacks, or the other way round, is a mistake.
#include "base/nearest.h"
#include "input/content/texts.h"
#include "input/read.h"
#include "input/yaml/cursor.h"
#include "input/yaml/overlay.h"
#include "input/yaml/sorted.h"

#include <algorithm>
#include <set>

namespace input {
namespace {

using base::Language;
using base::Phrase;
using base::PluralForm;

constexpr Word<PluralForm> formWords[] = {{"one", PluralForm::One},
                                          {"few", PluralForm::Few},
                                          {"many", PluralForm::Many},
                                          {"other", PluralForm::Other}};
constexpr Word<base::PluralRule> ruleWords[] = {{"other", base::PluralRule::Other},
                                                {"one other", base::PluralRule::OneOther},
                                                {"one few many", base::PluralRule::OneFewMany}};

std::string nameOf(PluralForm form) {
  for (const auto& w : formWords) {
    if (w.value == form) return w.name;
  }
  return {};
}

/// Places of each phrase or group in the file, for what is said of it.
struct Flat {
  std::map<std::string, Field> phrases, groups;
};

/// A group whose keys are all forms is a phrase that counts.
bool isCounted(const Node& node) {
  return !node.entries.empty() && std::all_of(node.entries.begin(), node.entries.end(), [](const Entry& e) {
    return std::any_of(std::begin(formWords), std::end(formWords),
                       [&](const auto& w) { return e.key == w.name; });
  });
}

/// '~' in the file is a no-break space; line breaks stay.
std::string phraseText(const Field& f) {
  std::string s;
  for (const char c : f.word().value_or("")) s += c == '~' ? std::string("\u00A0") : std::string(1, c);
  if (s.empty() && f.isGiven()) f.error("the text is empty", "translate it");
  if (std::count(s.begin(), s.end(), '{') != std::count(s.begin(), s.end(), '}'))
    f.error("a place is not closed", "write it like {name}");
  return s;
}

void flatten(const Field& f, const std::string& key, Flat& flat) {
  const std::string dot = key.empty() ? "" : key + ".";
  if (f.is(Node::Kind::List)) {
    flat.groups.emplace(key, f);
    int n = 0;
    for (const Field& item : f.items()) flatten(item, dot + std::to_string(++n), flat);
  } else if (f.is(Node::Kind::Map) && !isCounted(*f.node())) {
    flat.groups.emplace(key, f);
    Record r(f);
    for (const auto& [name, at, value] : r.all()) flatten(value, dot + name, flat);
    r.finish();
  } else {
    flat.phrases.emplace(key, f);
  }
}

Phrase readPhrase(const Field& f, base::PluralRule rule) {
  Phrase phrase;
  phrase.isCounted = f.is(Node::Kind::Map);
  if (!phrase.isCounted) {
    phrase.forms[PluralForm::Other] = phraseText(f);
    return phrase;
  }
  Record r(f);
  for (const PluralForm form : base::formsOf(rule))
    phrase.forms[form] = phraseText(r.must(nameOf(form), "'{n} days'"));
  r.finish();
  return phrase;
}

std::string wordsOfPlaces(const std::set<std::string>& places) {
  std::string s;
  for (const auto& p : places) s += (s.empty() ? "{" : " {") + p + "}";
  return s.empty() ? "none" : s;
}

std::set<std::string> namedIn(const std::string& text) {
  const auto places = base::placesOf(text);
  return {places.begin(), places.end()};
}

/// The number may stand in figures or in words, and 'one' may do without.
void checkPlaces(const Field& f, const Phrase& phrase, const Phrase& english) {
  if (phrase.isCounted != english.isCounted) {
    f.error(
        english.isCounted ? "counts something: a text for each form is needed" : "counts nothing in English",
        english.isCounted ? "give a text for each of the language's 'plural' forms" : "give one text");
    return;
  }
  const auto split = [&](const std::string& text) {
    auto places = namedIn(text);
    const bool isNumbered = phrase.isCounted && places.erase("n") + places.erase("words") > 0;
    return std::pair{places, isNumbered};
  };
  const auto [wanted, wantsNumber] = split(english.forms.rbegin()->second);
  for (const auto& [form, text] : phrase.forms) {
    const auto [found, isNumbered] = split(text);
    if (found != wanted)
      f.error("has the places " + wordsOfPlaces(found) + ", in English " + wordsOfPlaces(wanted),
              "name the same places in braces, in any order");
    if (wantsNumber && !isNumbered && form != PluralForm::One)
      f.error("the form '" + nameOf(form) + "' does not name its number", "write {n} or {words} in it");
  }
}

/// The innermost group that the file has of what leads to a key.
const Field& groupOf(const Flat& flat, std::string key) {
  while (true) {
    const auto dot = key.rfind('.');
    key = dot == std::string::npos ? "" : key.substr(0, dot);
    const auto found = flat.groups.find(key);
    if (found != flat.groups.end() || key.empty()) return flat.groups.at(key);
  }
}

/// What is missing is the firm's to say where it has a folder: it has brought what is not translated.
void tellMissing(const Flat& flat, const std::string& key, const std::string& text) {
  const Field& group = groupOf(flat, key);
  const auto& source = group.source();
  const std::string hint = "in English: " + text;
  if (source.overlay.empty()) group.error(inQuotes(key) + " is missing", hint);
  else source.messages.error({source.overlay}, group.path(), inQuotes(key) + " is missing", hint);
}

/// Each wanted text is there, and no other. A firm's folder may have taken the place of what a shipped file
/// translates: no mistake of anybody's.
void checkKeys(const Flat& flat, const std::map<std::string, std::string>& wanted, bool isWhole) {
  std::vector<std::string> names;
  for (const auto& [key, text] : wanted) {
    names.push_back(key);
    if (isWhole && !flat.phrases.contains(key) && !flat.groups.contains(key)) tellMissing(flat, key, text);
  }
  for (const auto& [key, f] : flat.phrases) {
    const bool isShipped = !f.source().overlay.empty() && !f.isOverlay();
    if (wanted.contains(key) || isShipped) continue;
    const std::string near = base::nearest(key, names);
    f.error("there is no such text to translate" + base::didYouMean(near),
            "take it out, or name it as content/languages/en.yaml does");
  }
}

/// 'en-US' says what differs from 'en'.
bool isRegional(const std::string& id) { return id.find('-') != std::string::npos; }

void readWords(const Field& f, Language& language, const Language* english) {
  Flat flat;
  flat.groups.emplace("", f);
  flatten(f, "", flat);
  for (const auto& [key, field] : flat.phrases) language.words[key] = readPhrase(field, language.plural);
  if (english == nullptr) return;
  std::map<std::string, std::string> wanted;
  for (const auto& [key, phrase] : english->words) wanted[key] = phrase.forms.rbegin()->second;
  checkKeys(flat, wanted, !isRegional(language.id));
  for (const auto& [key, phrase] : english->words) {
    const auto found = flat.phrases.find(key);
    if (found != flat.phrases.end()) checkPlaces(found->second, language.words.at(key), phrase);
  }
}

void readTexts(const Field& f, Language& language, const model::Content& content) {
  Flat flat;
  flat.groups.emplace("", f);
  flatten(f, "", flat);
  std::map<std::string, std::string> wanted;
  forEachText(content, [&](const std::string& path, const std::string& text) { wanted[path] = text; });
  checkKeys(flat, wanted, !isRegional(language.id));
  for (const auto& [path, field] : flat.phrases) {
    language.content[path] = phraseText(field);
    const auto english = wanted.find(path);
    if (english != wanted.end() && namedIn(language.content[path]) != namedIn(english->second))
      field.error("has the places " + wordsOfPlaces(namedIn(language.content[path])) + ", in English " +
                      wordsOfPlaces(namedIn(english->second)),
                  "name the same places in braces, in any order");
  }
}

}  // namespace

base::Language readLanguage(const std::string& file, const std::string& id, const Language* english,
                            const model::Content& content, base::Diagnostics& out, const std::string& own) {
  Language language = english != nullptr && isRegional(id) ? *english : Language{};
  language.id = id;
  base::Diagnostics messages;
  if (const std::optional<Node> root = readLayered(file, isThere(own) ? own : "", messages)) {
    const Source source{file, messages, false, own};
    Record r(Field(source, &*root, "", root->mark));
    language.name = text(r.must("name", "Español"));
    language.plural = choice(r.must("plural", "one other"), ruleWords, "rule of plurals", language.plural);
    if (const Field f = r.must("words", "{languages: {en: English}}"); f.isGiven())
      readWords(f, language, english);
    // The content is written in English.
    if (english != nullptr && english->id != id) {
      const Field f = isRegional(id) ? r.may("content") : r.must("content", "{}");
      if (f.isGiven()) readTexts(f, language, content);
    }
    r.finish();
  }
  forwardSorted(messages, out);
  return language;
}

}  // namespace input
