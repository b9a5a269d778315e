// A computed job becomes every drawing that its documents may name.
#pragma once

#include "app/pack/compute.h"
#include "drawings/drawings.h"
#include "sheets/facts/make_facts.h"

#include <map>

namespace app {

using Drawings = std::map<std::string, typeset::Drawing>;  // by name

drawings::Pen penFor(const sheets::Computed& x, const Shipped& shipped, const typeset::Fonts& fonts);

/// Those of the day plan only where it is wanted, for 'days', its paper; 'key' as high as it may be.
Drawings drawingsOf(const sheets::Computed& x, const Shipped& shipped, const typeset::Fonts& fonts,
                    std::optional<model::Paper> days);

/// How high the small plan of the decks may be; the smaller ones are for documents that else have too many
/// pages.
inline constexpr typeset::Dim largestKey = typeset::Dim::mm(72);
inline constexpr typeset::Dim smallerKeys[] = {typeset::Dim::mm(56), typeset::Dim::mm(44),
                                               typeset::Dim::mm(34)};
/// The small plan, as wide as the text at most; empty where no scale fits.
typeset::Drawing keyOf(const sheets::Computed& x, const drawings::Pen& pen, typeset::Dim height);

}  // namespace app
