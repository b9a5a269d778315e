// Private-use letters (Unicode 15.0, 23.5) that carry meaning from the filled template to the block tree.
// They never reach a page.
#pragma once

namespace base {

/// U+E000: a line break wanted by the person who typed the words; CommonMark has none inside a table cell.
inline constexpr const char* lineBreakSign = "\xEE\x80\x80";

/// U+E001: nothing, but a letter to CommonMark. Between '**' and a value it makes the emphasis hold whatever
/// the value begins or ends with, even when it is empty.
inline constexpr const char* edgeSign = "\xEE\x80\x81";

}  // namespace base
