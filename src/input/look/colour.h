// Colours of themes and firms, and whether text in them can be read.
#pragma once

#include "input/yaml/hex_colour.h"

#include <map>

namespace input {

/// Contrast of two colours, 1 to 21 (WCAG 2.1, 'contrast ratio'), in hundredths, rounded down.
int contrastHundredths(model::Colour a, model::Colour b);

/// What is wrong with text of one colour on another, both keys of the map; empty when it can be read.
std::string contrastMistake(const std::map<std::string, model::Colour>& colours, const std::string& text,
                            const std::string& ground);
/// What to do about it: the colour of the same hue nearest to this key's that can be read on white and on the
/// tint, as far as the map has them.
std::string contrastHint(const std::map<std::string, model::Colour>& colours, const std::string& text);
/// Text is set in these.
inline constexpr const char* textColours[] = {"ink", "soft", "accent"};

/// All colours a theme has, and no other. Where there are some already, of the theme it extends, only those
/// it replaces.
void readThemeColours(const Field& f, std::map<std::string, model::Colour>& colours);
/// Those that replace the theme's: a firm's, or for the crew's papers.
std::map<std::string, model::Colour> readOwnColours(const Field& f);

}  // namespace input
