// The products that come with the program stay within what the USDA Wood Handbook says of finishes like them:
// FPL-GTR-190 (2010), ch. 16, 'Finishing of Wood'. Its years are for vertical walls; decks wear faster (two
// to three times, from memory), so the shortest of them is the longest a deck may wait.
#include "base/diagnostic.h"
#include "input/read.h"

#include <catch2/catch.hpp>

using namespace base;

namespace {

const std::map<std::string, model::Product>& products() {
  static const model::Content content = [] {
    Diagnostics messages;
    return input::readContent(SOURCE_DIR "/content", messages);
  }();
  REQUIRE_FALSE(content.products.empty());
  return content.products;
}

}  // namespace

TEST_CASE("no product is laid colder than its kind allows", "[estimate]") {
  // Ch. 16, application (seen): latex at 10 C and above for 24 h, oil and alkyd at 4 C and above.
  for (const auto& [id, p] : products()) {
    INFO(id);
    CHECK(p.limits.airMin >= Temperature::whole(p.isWaterborne ? 10 : 4));
  }
}

TEST_CASE("no maintenance falls due later than the finish lasts", "[estimate]") {
  // Table 16-5 and text (seen), years: water-repellent preservative 1-3, the first such coat on smooth boards
  // 1, tinted clear deck finish 2-3, solid-colour stain 6-15, paint 10-20.
  const int tinted = 2, solid = 6;
  for (const auto& [id, p] : products()) {
    INFO(id);
    switch (p.kind) {
      case model::ProductKind::PenetratingOil:
      case model::ProductKind::WaterborneOil:
        CHECK(p.times.maintenanceMonths <= 12 * tinted);
        break;
      case model::ProductKind::FilmStain:
        CHECK(p.times.maintenanceMonths <= 12 * solid);
        break;
    }
  }
}
