#include "app/pack/recolour.h"

namespace app {

void colourForCrew(typeset::Document& document, const model::Theme& theme) {
  const auto change = [&](model::Colour& c) {
    for (const auto& [name, crew] : theme.crewColours) {
      if (const auto old = theme.colours.find(name); old == theme.colours.end() || old->second != c) continue;
      c = crew;
      return;
    }
  };
  for (auto& page : document.pages) {
    for (auto& item : page.items) {
      if (auto* run = std::get_if<typeset::TextRun>(&item.what)) change(run->colour);
      auto* path = std::get_if<typeset::Path>(&item.what);
      if (path && path->fill) change(*path->fill);
      if (path && path->stroke) change(path->stroke->colour);
    }
  }
}

}  // namespace app
