#include "app/pack/drawings.h"

#include "app/pack/charts.h"
#include "app/pack/day_charts.h"
#include "app/pack/milestones.h"

#include <filesystem>

namespace app {

namespace fs = std::filesystem;

drawings::Pen penFor(const sheets::Computed& x, const Shipped& shipped, const typeset::Fonts& fonts) {
  return {x.c.theme, fonts, *x.c.region, x.language, shipped.contentFolder + "/signs"};
}

typeset::Drawing keyOf(const sheets::Computed& x, const drawings::Pen& pen, typeset::Dim height) {
  return drawings::deckPlan(x.c, x.estimate, pen, {typeset::Dim::milli(x.c.theme.textWidth), height}, true);
}

Drawings drawingsOf(const sheets::Computed& x, const Shipped& shipped, const typeset::Fonts& fonts,
                    std::optional<model::Paper> days) {
  using typeset::Dim;
  const auto pen = penFor(x, shipped, fonts);
  const auto& t = x.c.theme;
  const Dim full = Dim::milli(t.sideWidth) + Dim::milli(t.gutter) + Dim::milli(t.textWidth),
            side = Dim::milli(t.sideWidth) - Dim::mm(2);  // as wide as a note under a head
  Drawings drawings;
  drawings["plan"] = drawings::deckPlan(x.c, x.estimate, pen, {full, Dim::mm(126)}, false);
  drawings["key"] = keyOf(x, pen, largestKey);
  if (!x.estimate.coats.empty()) {
    drawings["timeline"] = drawings::timeline(stationsOf(x), pen, full, x.language("timeline.caption"));
  }
  drawings["litres"] = litresChartOf(x, pen, full);
  drawings["price"] = priceChartOf(x, pen, full);
  if (days) addDayDrawings(drawings, x, pen, full, *days);
  if (const auto& sds = x.c.product->sds)
    drawings["diamonds"] = drawings::hazardDiamonds(sds->pictograms, pen, side);
  addGauges(drawings, x, pen);
  const std::string folder = shipped.contentFolder + "/signs";
  for (const auto& entry : fs::directory_iterator(folder)) {
    const auto name = entry.path().stem().string();
    if (const auto drawing = drawings::sign(folder, name, Dim::mm(11))) drawings[name] = *drawing;
  }
  return drawings;
}

}  // namespace app
