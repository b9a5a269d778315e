// Telephone numbers and web pages as people write them, as addresses that a reader of the document can
// follow.
#pragma once

#include <string>

namespace sheets {

/// True for words that are a telephone number: digits with the signs people put between them, at least three.
bool isPhone(const std::string& words);
/// '(03) 555 0117' as 'tel:035550117'; a '+' in front stays.
std::string phoneAddress(const std::string& words);
/// 'name@place.example' as 'mailto:name@place.example'.
std::string mailAddress(const std::string& words);
/// 'tideboard.example' as 'https://tideboard.example'; what names its own scheme stays.
std::string webAddress(const std::string& words);
/// The same without scheme and closing slash, as it is printed.
std::string webWords(const std::string& words);

}  // namespace sheets
