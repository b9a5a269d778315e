// Colours of themes and brands, and whether text in them can be read.
#pragma once

#include "input/cursor.h"
#include "model/theme.h"

#include <map>

namespace input {

/// Contrast of two colours, 1 to 21 (WCAG 2.1, 'contrast ratio'), in hundredths, rounded down.
int contrastHundredths(model::Colour a, model::Colour b);

/// What is wrong with text of one colour on another, both keys of the map; empty when it can be read.
std::string contrastMistake(const std::map<std::string, model::Colour>& colours, const std::string& text,
                            const std::string& ground);
inline constexpr const char* contrastHint = "it needs 4.5:1 (WCAG 2.1, 1.4.3); take a darker colour";
/// Text is set in these.
inline constexpr const char* textColours[] = {"ink", "soft", "accent"};

/// '#7a4522'
model::Colour colour(const Field& f);

/// All colours a theme has, and no other.
std::map<std::string, model::Colour> readThemeColours(const Field& f);
/// Those a brand replaces.
std::map<std::string, model::Colour> readBrandColours(const Field& f);

}  // namespace input
