// Liang's patterns through libhyphen.
#include "typeset/lines/hyphen.h"

#include "base/letters.h"

#include <hyphen.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <memory>
#include <mutex>
#include <stdexcept>

namespace typeset {
namespace {

/// Where Debian's packages hyphen-en-gb, hyphen-en-us, hyphen-es and hyphen-pl put them.
const std::string folder = "/usr/share/hyphen/hyph_";

/// English outside the United States divides by sound and origin as in Britain; nothing stands in for a
/// language that has no patterns.
std::string patternsOf(const std::string& language) {
  if (language == "en-US") return "en_US";
  for (const char* tag : {"en-GB", "en-AU", "en-IE", "en-NZ"})
    if (language == tag) return "en_GB";
  if (language == "es" || language.rfind("es-", 0) == 0) return "es_ES";
  if (language == "pl" || language.rfind("pl-", 0) == 0) return "pl_PL";
  return {};
}

using Patterns = std::unique_ptr<HyphenDict, void (*)(HyphenDict*)>;

/// Read once per process: the English ones take about 17 ms.
HyphenDict* patterns(const std::string& name) {
  static std::mutex guard;
  static std::map<std::string, Patterns> known;
  const std::lock_guard lock(guard);
  const auto found = known.find(name);
  if (found != known.end()) return found->second.get();
  const std::string file = folder + name + ".dic";
  Patterns read(hnj_hyphen_load(file.c_str()), hnj_hyphen_free);
  if (!read)
    throw std::runtime_error("the hyphenation patterns '" + file + "' cannot be read; install the package " +
                             (name == "es_ES"   ? "hyphen-es"
                              : name == "pl_PL" ? "hyphen-pl"
                              : name == "en_US" ? "hyphen-en-us"
                                                : "hyphen-en-gb"));
  return known.emplace(name, std::move(read)).first->second.get();
}

/// Where the patterns are right about the letters and wrong about the reader.
bool readsBadly(std::string_view word, std::size_t at) {
  return word.substr(0, at) == "ther" && word.substr(at, 5) == "apist";
}

/// The small letters of Polish that are not in ASCII, and their bytes in ISO 8859-2.
struct Letter {
  char32_t letter;
  unsigned char byte;
};
constexpr Letter polish[] = {{U'ą', 0xB1}, {U'ć', 0xE6}, {U'ę', 0xEA}, {U'ł', 0xB3}, {U'ń', 0xF1},
                             {U'ó', 0xF3}, {U'ś', 0xB6}, {U'ź', 0xBC}, {U'ż', 0xBF}};

bool isSmallLetter(char32_t c) {
  const bool isLatinSmall = c >= 0xDF && c <= 0xFF && c != 0xF7;
  const bool isPolish =
      std::any_of(std::begin(polish), std::end(polish), [&](const Letter& l) { return l.letter == c; });
  return (c >= U'a' && c <= U'z') || isLatinSmall || isPolish || c == 0xFB01 || c == 0xFB02;
}

/// A word in ISO 8859-2, as the Polish patterns are written; empty when it has other letters.
std::string inLatin2(std::string_view word) {
  std::string bytes;
  for (std::size_t at = 0; at < word.size();) {
    const char32_t c = base::nextLetter(word, at);
    const auto found =
        std::find_if(std::begin(polish), std::end(polish), [&](auto& l) { return l.letter == c; });
    if (c >= 0x80 && found == std::end(polish)) return {};
    bytes += static_cast<char>(c < 0x80 ? static_cast<unsigned char>(c) : found->byte);
  }
  return bytes;
}

}  // namespace

std::vector<std::size_t> hyphenPlaces(const std::string& language, std::string_view word) {
  constexpr int least = 3;  // letters on either line
  constexpr std::size_t longest = 100;
  const std::string name = patternsOf(language);
  std::vector<std::size_t> ends;  // of the letters, in bytes
  for (std::size_t at = 0; at < word.size();) {
    if (!isSmallLetter(base::nextLetter(word, at))) return {};
    ends.push_back(at);
  }
  if (name.empty() || ends.size() < 2 * least || ends.size() > longest) return {};

  HyphenDict* const dictionary = patterns(name);
  const std::string bytes = name == "pl_PL" ? inLatin2(word) : std::string(word);
  if (bytes.empty()) return {};
  std::string marks(word.size() + 5, '\0');
  char** replaced = nullptr;
  int *position = nullptr, *cut = nullptr;
  hnj_hyphen_hyphenate3(dictionary, bytes.c_str(), static_cast<int>(bytes.size()), marks.data(), nullptr,
                        &replaced, &position, &cut, least, least, least, least);
  // Divisions that change letters (as in some languages) are left out.
  const auto isReplaced = [&](std::size_t i) { return replaced && replaced[i]; };
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i)  // marks count letters, not bytes
    if ((marks[i] & 1) && !isReplaced(i) && !readsBadly(word, ends[i])) places.push_back(ends[i]);
  for (std::size_t i = 0; replaced && i < word.size(); ++i) std::free(replaced[i]);
  std::free(replaced);
  std::free(position);
  std::free(cut);
  return places;
}

}  // namespace typeset
