// Comma-separated values for spreadsheets and accounts.
#pragma once

#include <string>
#include <vector>

namespace app {

/// Without a byte order mark spreadsheets take UTF-8 for the letters of their own system.
constexpr const char* byteOrderMark = "\xEF\xBB\xBF";

/// RFC 4180 (2005): the line ends in CRLF, a field with a comma, quote or line break stands in quotes, quotes
/// are doubled. An apostrophe comes before what a spreadsheet would compute (OWASP, CSV Injection), but not
/// before a number below zero.
std::string csvLine(const std::vector<std::string>& fields);

}  // namespace app
