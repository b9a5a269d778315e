// Drawings made from a job's figures: vectors, to scale, readable in black and white.
#pragma once

#include "model/plan.h"
#include "typeset/fonts.h"

#include <optional>

namespace figures {

/// What every drawing needs: the look, and the words and number form of the reader.
struct Pen {
  const model::Theme& theme;
  const typeset::Fonts& fonts;
  const model::Region& region;
  std::string signs = {};  // folder the pictures of a timeline are read from
};

/// Plan of the decks to scale: outlines, cut-outs, boards along their run, stairs, strips, dimensions,
/// letters A, B, C with name and area, north when given, scale bar. The largest of the usual scales that fits
/// the box. 'isKey' leaves only outlines, letters and names (for the aftercare sheet).
typeset::Drawing deckPlan(const model::Case& c, const model::Estimate& e, const Pen& pen, typeset::Size box,
                          bool isKey);

/// One station of the timeline: when the customer may do something again.
struct Station {
  std::string picture;                    // name of a sign: 'care-walk'
  std::string weekday, date, what, note;  // 'Saturday' '14 Feb' 'Walk on it' 'from noon, in soft soles'
  std::string gap;                        // to the next station: '2 days'; empty for the last
};
typeset::Drawing timeline(const std::vector<Station>& stations, const Pen& pen, typeset::Dim width,
                          const std::string& caption);

/// A sign or pictogram, square, by name ('must-ears', 'warn-fire', 'care-walk'); nothing for an unknown name.
/// Signs are SVG files below 'folder'. Throws std::runtime_error for a file that is not a drawing.
std::optional<typeset::Drawing> sign(const std::string& folder, const std::string& name, typeset::Dim height);

}  // namespace figures
