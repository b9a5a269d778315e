// Sizes and areas of decks in the reader's units, and the words of a plan.
#pragma once

#include "drawings/drawings.h"

namespace drawings {

bool isUs(const Pen& pen);

/// '12.40', or 40'-8" where people measure in feet.
std::string sizeText(const Pen& pen, base::Length l);
/// '12.40 m', or 40'-8".
std::string sizeWithUnit(const Pen& pen, base::Length l);
/// '1.20 across'.
std::string acrossText(const Pen& pen, const std::string& size);
/// '75.8 m²', '815 ft²'.
std::string areaText(const Pen& pen, base::Area a);

/// Words that a line may not break, unless they are very many.
std::string unbroken(const std::string& words);

/// A cut-out in figures: '1.20 across', '2.00 × 1.00'; empty for shapes two figures cannot tell.
std::string cutOutSize(const Pen& pen, const model::Shape& shape);
/// 'tree, 1.20 across'.
std::string cutOutText(const Pen& pen, const model::CutOut& cut);

/// What a deck is, for those who hear the plan: '12.40 by 6.20 m'.
std::string shapeText(const Pen& pen, const model::Shape& shape);

}  // namespace drawings
