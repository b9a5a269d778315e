// How numbers, names and strings are written in a PDF file: ISO 32000-1:2008, 7.3.
#pragma once

#include "typeset/page.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace pdf {

/// A length in points, to a hundredth: finer than any printer. Throws std::logic_error when it is off any
/// paper.
std::string number(typeset::Dim length);
/// Adds it to what is being written, with a blank behind it.
void addNumber(std::string& out, typeset::Dim length);
/// Three decimals of a share between 0 and 1.
std::string channel(std::uint8_t value);
/// Words for people, from UTF-8.
std::string words(std::string_view utf8);
/// UTF-16 as hexadecimal digits, without brackets.
std::string utf16(std::string_view utf8);
/// Bytes in parentheses.
std::string literal(std::string_view bytes);
/// Adds bytes to a literal string that is being written.
void addEscaped(std::string& out, unsigned char byte);

}  // namespace pdf
