#include "app/pack/drawings.h"

#include "app/pack/charts.h"
#include "app/pack/day_charts.h"
#include "app/pack/milestones.h"
#include "input/read.h"
#include "model/lookup.h"
#include "pdf/images/read_image.h"
#include "sheets/facts/facts_quote.h"

#include <filesystem>
#include <fstream>
#include <functional>

namespace app {

namespace fs = std::filesystem;

using typeset::Dim;

namespace {

constexpr Dim lowestPhoto = Dim::mm(40), highestPhoto = Dim::mm(70);  // with its words

}  // namespace

void checkPhotos(const model::Job& job, base::Diagnostics& messages) {
  for (const auto& photo : job.photos) {
    std::error_code failed;
    if (fs::is_regular_file(photo.file, failed) && std::ifstream(photo.file)) continue;
    messages.error(photo.pos, "photos",
                   "'" + photo.file + "' cannot be read: " + input::whyUnreadable(photo.file),
                   "the path starts at this file's folder");
  }
}

std::vector<drawings::Photograph> photographsOf(const model::Job& job, base::Diagnostics& messages) {
  constexpr std::int64_t inch = 72, perInch = 220;
  constexpr auto rows = static_cast<std::size_t>(highestPhoto.raw * perInch / Dim::pt(inch).raw);
  std::vector<drawings::Photograph> photos;
  for (const auto& photo : job.photos) {
    try {
      auto image = pdf::readImage(input::readFile(photo.file).value_or(""), rows);
      photos.push_back({std::make_shared<const typeset::Image>(std::move(image)), photo.shows});
    } catch (const std::runtime_error& e) {
      messages.error(photo.pos, "photos", "'" + photo.file + "': " + e.what(),
                     "save it again as a plain PNG or JPEG of at most 16 megapixels");
    }
  }
  return photos;
}

typeset::Drawings drawingsOf(const model::JobResult& x, const Shipped& shipped, const typeset::Fonts& fonts,
                             const std::vector<drawings::Photograph>& photos) {
  const std::string folder = shipped.contentFolder + "/signs";
  const auto& t = x.c.theme;
  const drawings::Pen pen{t, fonts, *x.c.region, x.language, folder};
  const Dim text = Dim::milli(t.textWidth), full = Dim::milli(t.sideWidth) + Dim::milli(t.gutter) + text,
            side = Dim::milli(t.sideWidth) - Dim::mm(2);  // as wide as a note under a head
  typeset::Drawings all;
  const auto add = [&](const std::string& name, std::function<typeset::Drawing()> make) {
    all.emplace(name, typeset::DrawingRequest(std::move(make)));
  };
  add("plan", [=, &x] { return drawings::deckPlan(x.c, x.estimate, pen, {full, Dim::mm(126)}, false); });
  const auto key = [=, &x](Dim height) {
    return drawings::deckPlan(x.c, x.estimate, pen, {text, height}, true);
  };
  all.emplace("key", typeset::DrawingRequest({Dim::mm(34), Dim::mm(72)}, key, true));
  const auto squares = [=, &x](Dim height) {
    return drawings::squaredPaper(x.language("squares.alt"), pen, {full, height});
  };
  all.emplace("squares", typeset::DrawingRequest({Dim::mm(60), Dim::mm(150)}, squares));
  if (!x.estimate.coats.empty())
    add("timeline", [=, &x] {
      return drawings::timeline(stationsOf(x), pen, full, x.language("timeline.caption"),
                                x.language("timeline.alt"));
    });
  add("colours", [=, &x] { return drawings::swatches(x.c.product->colours, pen, text); });
  if (const auto* colour = model::screenColour(x.c)) all.emplace("swatch", drawings::swatch(*colour, pen));
  if (!photos.empty())
    all.emplace("photos", typeset::DrawingRequest({lowestPhoto, highestPhoto}, [=](Dim height) {
                  return drawings::photographs(photos, pen, {full, height});
                }));
  add("dates", [=, &x] {
    return drawings::timeline(quoteStationsOf(x), pen, full, "", x.language("quote_dates.alt"));
  });
  add("accept", [=, &x] {
    return drawings::qrCode(sheets::acceptanceMail(x), x.language("accept.alt"), pen, Dim::mm(26));
  });
  add("litres", [=, &x] { return litresChartOf(x, pen, full); });
  add("price", [=, &x] { return priceChartOf(x, pen, full); });
  addDayDrawings(all, x, pen, full);
  if (const auto& sds = x.c.product->sds)
    add("diamonds", [=, &sds] { return drawings::hazardDiamonds(sds->pictograms, pen, side); });
  addGauges(all, x, pen);
  for (const auto& entry : fs::directory_iterator(folder)) {
    const auto name = entry.path().stem().string();
    if (auto drawing = drawings::sign(folder, name, Dim::mm(11))) all.emplace(name, std::move(*drawing));
  }
  return all;
}

}  // namespace app
