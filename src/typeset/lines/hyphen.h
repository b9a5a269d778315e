// Where words may be divided, by the patterns of their language.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace typeset {

/// The bytes before which the word may be divided, at least three letters from either end. Words that are not
/// wholly of small letters stay whole: names, codes, numbers, addresses. So do words of languages other than
/// 'en-GB', 'en-AU', 'en-IE', 'en-NZ', 'en-US', 'es', 'pl' and what begins with 'es-' or 'pl-'. The patterns
/// are read at the first word of a language and kept. Throws std::runtime_error when they are not there or
/// are damaged.
std::vector<std::size_t> hyphenPlaces(const std::string& language, std::string_view word);

}  // namespace typeset
