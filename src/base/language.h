// The words of one language, as read from content/languages: what code says in a document, and the texts of
// the content translated.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace base {

/// The forms a phrase takes with a number, as the Unicode CLDR names them ('few' is 2 to 4 in Polish).
enum class PluralForm { One, Few, Many, Other };

/// Which whole numbers take which form: Unicode CLDR, 'Language Plural Rules', cardinals. Fractions are never
/// counted in words here.
enum class PluralRule {
  Other,       // one form for all: Vietnamese
  OneOther,    // 1, and the rest: English, Spanish (whose 'many' is for whole millions)
  OneFewMany,  // 1; 2 to 4 but not 12 to 14, by the last digits; the rest: Polish
};

PluralForm formOf(PluralRule rule, std::int64_t n);

/// The forms every counted phrase has in such a language.
const std::vector<PluralForm>& formsOf(PluralRule rule);

/// A phrase with places like '{deck}' for what is put into it. One that counts has a text for each form.
struct Phrase {
  std::map<PluralForm, std::string> forms;  // a phrase that counts nothing: only 'Other'
  bool isCounted = false;
};

/// What stands in the places of a phrase, by name.
using Values = std::map<std::string, std::string>;

struct Language {
  std::string id;    // BCP 47: 'es'
  std::string name;  // as its speakers call it: 'español'
  PluralRule plural = PluralRule::OneOther;
  std::map<std::string, Phrase> words;         // by key: 'dates.long'
  std::map<std::string, std::string> content;  // texts of the content by path: 'tasks.sand.name'

  bool has(const std::string& key) const { return words.contains(key); }

  /// The phrase of a key, filled in. A key or value that is missing is a mistake of ours: std::logic_error.
  std::string operator()(const std::string& key, const Values& values = {}) const;

  /// The form of a phrase for n; '{n}' in it is the number in figures and '{words}' in words, while it is
  /// small.
  std::string counted(const std::string& key, std::int64_t n, Values values = {}) const;

  /// 'one' to 'twelve', figures from there on.
  std::string spelled(std::int64_t n) const;

  /// 'a', 'a and b', 'a, b and c'.
  std::string joined(const std::vector<std::string>& parts) const;
};

/// The places of a phrase: 'deck' for '{deck}', in their order, each once.
std::vector<std::string> placesOf(const std::string& phrase);

/// The first letter in capitals, when it is a small Latin one.
std::string capitalised(std::string s);

}  // namespace base
