#include "base/language.h"

#include "base/joined.h"

#include <algorithm>
#include <stdexcept>

namespace base {
namespace {

[[noreturn]] void fail(const Language& language, const std::string& key, const std::string& what) {
  throw std::logic_error("internal error: language '" + language.id + "', '" + key + "': " + what);
}

const Phrase& phraseOf(const Language& language, const std::string& key) {
  const auto found = language.words.find(key);
  if (found == language.words.end()) fail(language, key, "no such key");
  return found->second;
}

std::string filled(const Language& language, const std::string& key, const std::string& phrase,
                   const Values& values) {
  std::string s;
  std::size_t at = 0;
  while (true) {
    const auto open = phrase.find('{', at);
    if (open == std::string::npos) return s + phrase.substr(at);
    const auto close = phrase.find('}', open);
    const auto value = values.find(phrase.substr(open + 1, close - open - 1));
    if (close == std::string::npos || value == values.end())
      fail(language, key, "nothing for the place at '" + phrase.substr(open) + "'");
    s += phrase.substr(at, open - at) + value->second;
    at = close + 1;
  }
}

}  // namespace

PluralForm formOf(PluralRule rule, std::int64_t n) {
  switch (rule) {
    case PluralRule::Other:
      return PluralForm::Other;
    case PluralRule::OneOther:
      return n == 1 ? PluralForm::One : PluralForm::Other;
    case PluralRule::OneFewMany: {
      if (n == 1) return PluralForm::One;
      const bool isTeen = n % 100 >= 12 && n % 100 <= 14;
      return n % 10 >= 2 && n % 10 <= 4 && !isTeen ? PluralForm::Few : PluralForm::Many;
    }
  }
  throw std::logic_error("internal error: unknown plural rule");
}

const std::vector<PluralForm>& formsOf(PluralRule rule) {
  static const std::vector<PluralForm> other = {PluralForm::Other},
                                       oneOther = {PluralForm::One, PluralForm::Other},
                                       oneFewMany = {PluralForm::One, PluralForm::Few, PluralForm::Many};
  switch (rule) {
    case PluralRule::Other:
      return other;
    case PluralRule::OneOther:
      return oneOther;
    case PluralRule::OneFewMany:
      return oneFewMany;
  }
  throw std::logic_error("internal error: unknown plural rule");
}

std::string Language::operator()(const std::string& key, const Values& values) const {
  const Phrase& phrase = phraseOf(*this, key);
  if (phrase.isCounted) fail(*this, key, "has to be counted");
  return filled(*this, key, phrase.forms.at(PluralForm::Other), values);
}

std::string Language::counted(const std::string& key, std::int64_t n, Values values) const {
  const Phrase& phrase = phraseOf(*this, key);
  if (!phrase.isCounted) fail(*this, key, "counts nothing");
  const std::string& form = phrase.forms.at(formOf(plural, n));
  values["n"] = std::to_string(n);
  if (form.find("{words}") != std::string::npos) values["words"] = spelled(n);
  return filled(*this, key, form, values);
}

std::string Language::spelled(std::int64_t n) const {
  const std::string key = "numbers.words." + std::to_string(n + 1);  // the list begins with none
  return has(key) ? (*this)(key) : std::to_string(n);
}

std::string Language::joined(const std::vector<std::string>& parts) const {
  if (parts.empty()) return {};
  std::string s = parts.front();
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const bool isLast = i + 1 == parts.size();
    // Spanish says 'e' for 'y' before the sound of i.
    const auto sound = parts[i].substr(0, parts[i][0] == 'h' || parts[i][0] == 'H' ? 2 : 1);
    const bool isI = sound.ends_with('i') || sound.ends_with('I');
    s = (*this)(!isLast ? "lists.more"
                : isI   ? "lists.last_before_i"
                        : "lists.last",
                {{"before", s}, {"word", parts[i]}});
  }
  return s;
}

std::vector<std::string> placesOf(const std::string& phrase) {
  std::vector<std::string> places;
  for (auto open = phrase.find('{'); open != std::string::npos; open = phrase.find('{', open + 1)) {
    const auto close = phrase.find('}', open);
    if (close == std::string::npos) break;
    const auto place = phrase.substr(open + 1, close - open - 1);
    addOnce(places, place);
  }
  return places;
}

std::string capitalised(std::string s) {
  const auto byte = [&](std::size_t i) { return i < s.size() ? static_cast<unsigned char>(s[i]) : 0; };
  if (byte(0) >= 'a' && byte(0) <= 'z') s[0] = static_cast<char>(byte(0) - 'a' + 'A');
  if (byte(0) < 0xC3 || byte(0) > 0xC5) return s;
  const int letter = (byte(0) & 0x1F) << 6 | (byte(1) & 0x3F);
  int capital = letter;
  const bool isLatin1 = letter >= 0xE0 && letter <= 0xFE && letter != 0xF7;
  // In Latin Extended-A capital and small letter stand in pairs; dotless i and the like have no pair.
  const bool smallIsOdd = (letter >= 0x100 && letter <= 0x12F) || (letter >= 0x132 && letter <= 0x137) ||
                          (letter >= 0x14A && letter <= 0x177);
  const bool smallIsEven = (letter >= 0x139 && letter <= 0x148) || (letter >= 0x179 && letter <= 0x17E);
  if (isLatin1) capital = letter - 0x20;
  else if ((smallIsOdd && letter % 2 == 1) || (smallIsEven && letter % 2 == 0)) capital = letter - 1;
  s[0] = static_cast<char>(0xC0 | capital >> 6);
  s[1] = static_cast<char>(0x80 | (capital & 0x3F));
  return s;
}

}  // namespace base
