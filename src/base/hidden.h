// Letters that nobody sees but that change what is seen: they steer a terminal, turn the direction of the
// words beside them or make two names look alike.
#pragma once

#include <string>
#include <string_view>

namespace base {

/// Why a text must not hold this letter: 'control character U+001B', 'invisible character U+200B',
/// 'private-use character U+E000'. Empty for all others, tab and line feed among them. Unicode 15.0, 23.1 to
/// 23.9. The zero-width joiners belong to scripts that are not set here.
std::string hiddenLetter(char32_t letter);

/// The same for the first of a text that has one; empty when none has.
std::string firstHiddenLetter(std::string_view text);

enum class Lines { Keep, Join };

/// The text for a terminal: hidden letters as '<U+001B>', broken UTF-8 as '<FF>', with Lines::Join also line
/// breaks and tabs.
std::string printable(std::string_view text, Lines lines = Lines::Join);

}  // namespace base
