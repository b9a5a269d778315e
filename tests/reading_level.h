// How hard a text is to read: the Flesch-Kincaid grade, 0.39 words a sentence + 11.8 syllables a word
// - 15.59.
#pragma once

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

namespace reading {

/// Syllables of an English word by rule of thumb: groups of vowels, less a silent 'e' at the end ('noise',
/// 'closed', 'eyes'). Wrong by one for few words of these sheets; libhyphen divides where a printer may,
/// which is too seldom.
inline int syllables(std::string word) {
  for (char& c : word) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  const auto isVowel = [](char c) { return std::string("aeiouy").find(c) != std::string::npos; };
  const auto ends = [&](const std::string& s) {
    return word.size() > s.size() && word.compare(word.size() - s.size(), s.size(), s) == 0;
  };
  int groups = 0;
  for (std::size_t i = 0; i < word.size(); ++i) {
    if (isVowel(word[i]) && (i == 0 || !isVowel(word[i - 1]))) ++groups;
  }
  const auto before = [&](std::size_t n) { return word.size() > n ? word[word.size() - 1 - n] : ' '; };
  if (ends("e") && !isVowel(before(1)) && !(before(1) == 'l' && !isVowel(before(2)))) --groups;
  if (ends("ed") && !isVowel(before(2)) && before(2) != 't' && before(2) != 'd') --groups;
  if (ends("es") && !isVowel(before(2)) && std::string("sxzcg").find(before(2)) == std::string::npos &&
      !ends("shes") && !ends("ches") && !(before(2) == 'l' && !isVowel(before(3))))
    --groups;
  return std::max(groups, 1);
}

struct Level {
  int words = 0;
  double grade = 0;
};

/// Each block ends a sentence; blocks of less than four words are figures and names and are left out.
inline Level gradeOf(const std::vector<std::string>& blocks) {
  int words = 0, count = 0, sentences = 0;
  for (const auto& block : blocks) {
    std::vector<std::string> own;
    int ended = 0;
    bool isOpen = false;
    std::string word;
    const auto close = [&] {
      if (!word.empty()) own.push_back(word), isOpen = true;
      word.clear();
    };
    for (std::size_t i = 0; i < block.size(); ++i) {
      const char c = block[i];
      if (std::isalpha(static_cast<unsigned char>(c)) || (c == '\'' && !word.empty())) {
        word += c;
        continue;
      }
      close();
      const bool isStop = (c == '.' || c == '!' || c == '?' || c == ';' || c == ':') &&
                          (i + 1 == block.size() || block[i + 1] == ' ');
      if (isStop && isOpen) ++ended, isOpen = false;
    }
    close();
    if (isOpen) ++ended;
    if (own.size() < 4) continue;
    words += static_cast<int>(own.size());
    sentences += ended;
    for (const auto& w : own) count += syllables(w);
  }
  if (words == 0 || sentences == 0) return {};
  return {words, 0.39 * words / sentences + 11.8 * count / words - 15.59};
}

}  // namespace reading
