// Telephone numbers and web pages as people write them, as addresses that a reader of the document can
// follow.
#pragma once

#include "model/content.h"

#include <string>

namespace sheets {

/// True for words that are a telephone number: digits with the signs people put between them, at least three.
bool isPhone(const std::string& words);
/// '(03) 555 0117' of New Zealand as 'tel:+6435550117' (RFC 3966 (2004), 5.1.4: the form that can be dialled
/// from anywhere). What is no whole number of the country, such as '111' or '13 11 26', stays as it is
/// dialled there.
std::string phoneAddress(const std::string& words, const model::Dialling& dialling);
/// 'name@place.example' as 'mailto:name@place.example'.
std::string mailAddress(const std::string& words);
/// 'tideboard.example' as 'https://tideboard.example'; what names its own scheme stays.
std::string webAddress(const std::string& words);
/// The same without scheme and closing slash, as it is printed.
std::string webWords(const std::string& words);

}  // namespace sheets
