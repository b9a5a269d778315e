// How documents fill their last page.
#include "layout_sample.h"
#include "typeset/fit.h"

#include <catch2/catch.hpp>

using namespace sample;

namespace {

/// So many short sections, one below the other.
markup::Blocks sections(int count) {
  markup::Blocks blocks = {title("A title")};
  for (int i = 0; i < count; ++i) {
    blocks.push_back(section("Head"));
    blocks.push_back(paragraph("Weathered hardwood with open pores along the shore."));
  }
  return blocks;
}

/// The lowest baseline on a page, in points.
double lowestOn(const Result& r, std::size_t page) {
  double lowest = 0;
  for (const typeset::Item& item : r.document.pages[page].items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what); run && item.tag > 0)
      lowest = std::max(lowest, static_cast<double>(run->baseline.y.raw) / 12'700);
  return lowest;
}

}  // namespace

TEST_CASE("a tighter grid keeps every line a whole number of its units", "[layout]") {
  model::Theme theme;
  theme.unit = 3500;
  theme.tighten = base::Share::whole(7);
  theme.styles["body"] = {};
  const auto looks = typeset::tighter(theme);
  REQUIRE(looks.size() == 4);
  CHECK(looks[0].unit == 3410);  // 3500 less a third of 245, in hundredths of a point
  CHECK(looks[1].unit == 3330);
  CHECK(looks[2].unit == 3250);
  CHECK(looks[3].unit == 3250);
  CHECK(looks[2].snap == 4);
  CHECK(looks[3].snap == 1);
  for (const model::Theme& look : looks) {
    const model::TextStyle& body = look.styles.at("body");
    CHECK(body.leading == look.unit * 4);
    CHECK(body.size == 10'500);
    CHECK(typeset::Dim::milli(body.leading) == typeset::Dim::milli(look.unit) * 4);
  }
  theme.tighten = {};
  CHECK(typeset::tighter(theme).empty());
}

TEST_CASE("a document that runs over by a little is set tighter to save the page", "[layout]") {
  const model::Theme rigid = theme();
  model::Theme flexible = theme();
  flexible.tighten = base::Share::whole(7);
  int full = 1;  // sections on one page
  while (layOutIn(rigid, sections(full + 1)).document.pages.size() == 1) ++full;
  CHECK(layOutIn(rigid, sections(full + 1)).document.pages.size() == 2);
  CHECK(layOutIn(flexible, sections(full + 1)).document.pages.size() == 1);
  CHECK(layOutIn(flexible, sections(full)).dump == layOutIn(rigid, sections(full)).dump);
  // Not far enough for two thirds of a page more.
  CHECK(layOutIn(flexible, sections(full * 5 / 3)).dump == layOutIn(rigid, sections(full * 5 / 3)).dump);
}

TEST_CASE("a last page is saved that is filled to less than two fifths") {
  const model::Theme rigid = theme();
  model::Theme flexible = theme();
  flexible.tighten = base::Share::whole(33);  // half as much again on a page
  int full = 1;
  while (layOutIn(rigid, sections(full + 1)).document.pages.size() == 1) ++full;
  CHECK(layOutIn(flexible, sections(full * 13 / 10)).document.pages.size() == 1);
}

TEST_CASE("a last page that cannot be saved takes more from the page before it", "[layout]") {
  const model::Theme rigid = theme();
  int full = 1;
  while (layOutIn(rigid, sections(full + 1)).document.pages.size() == 1) ++full;
  const Result r = layOutIn(rigid, sections(full + 1));
  REQUIRE(r.document.pages.size() == 2);
  const double height = 841.89 - 70 - 44;  // A4 less the theme's head and foot
  CHECK(lowestOn(r, 1) - 70 > height / 4);
  CHECK(lowestOn(r, 0) - 70 > height / 2);
}

TEST_CASE("a page too many is saved however full it is, where a tighter grid can", "[layout]") {
  model::Theme flexible = theme();
  flexible.tighten = base::Share::whole(7);
  int full = 1;
  while (layOutIn(flexible, sections(full + 1)).document.pages.size() <= 2) ++full;
  // With half a page more the third is no short last page; the limit calls for the tighter grid, in vain.
  const int more = full * 5 / 4;
  CHECK(layOutIn(flexible, sections(more)).document.pages.size() == 3);
  CHECK(layOutIn(flexible, sections(more), 2).dump == layOutIn(flexible, sections(more)).dump);
  // A grid a third tighter reaches.
  flexible.tighten = base::Share::whole(33);
  CHECK(layOutIn(flexible, sections(more), 2).document.pages.size() == 2);
}
