// How documents fill their last page.
#include "layout_sample.h"
#include "typeset/pages/fit.h"

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
  theme.shrink = base::Share::whole(7);
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
  theme.shrink = {};
  CHECK(typeset::tighter(theme).empty());
}

TEST_CASE("a document that runs over by a little is set tighter to save the page", "[layout]") {
  const model::Theme rigid = theme();
  model::Theme flexible = theme();
  flexible.shrink = base::Share::whole(7);
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
  flexible.shrink = base::Share::whole(33);  // half as much again on a page
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
  flexible.shrink = base::Share::whole(7);
  int full = 1;
  while (layOutIn(flexible, sections(full + 1)).document.pages.size() <= 2) ++full;
  // With half a page more the third is no short last page; the limit calls for the tighter grid, in vain.
  const int more = full * 5 / 4;
  CHECK(layOutIn(flexible, sections(more)).document.pages.size() == 3);
  CHECK(layOutIn(flexible, sections(more), {.mostPages = 2}).dump == layOutIn(flexible, sections(more)).dump);
  // A grid a third tighter reaches.
  flexible.shrink = base::Share::whole(33);
  CHECK(layOutIn(flexible, sections(more), {.mostPages = 2}).document.pages.size() == 2);
}

namespace {

/// A box as high as it is let be, in steps of 8 mm, as a plan's scales have steps.
typeset::DrawingRequest growing(int least, int best, bool isOptional = false) {
  const auto draw = [](typeset::Dim height) {
    const std::int64_t steps = height.raw / typeset::Dim::mm(8).raw;
    typeset::Path path;
    path.steps = {{typeset::Step::Kind::Move, {}, {}, {}},
                  {typeset::Step::Kind::Line, {}, {}, {typeset::Dim::mm(50), typeset::Dim::mm(8) * steps}}};
    path.stroke = typeset::Stroke{{}, typeset::Dim::pt(1), {}, false};
    return typeset::Drawing{{typeset::Dim::mm(50), typeset::Dim::mm(8) * steps},
                            {{path, typeset::artifact}},
                            std::to_string(8 * steps) + " mm high"};
  };
  return {{typeset::Dim::mm(least), typeset::Dim::mm(best)}, draw, isOptional};
}

/// What the drawing says of itself; empty where it is left out.
std::string drawn(const Result& r) {
  for (const typeset::Tag& tag : r.document.tags)
    if (tag.role == typeset::Role::Figure) return tag.alt;
  return {};
}

markup::Block unnamed(const std::string& name) { return {markup::Figure{name, ""}, 1}; }

std::string told(const Result& r) {
  std::string text;
  for (const auto& d : r.messages.all()) text += base::format(d);
  return text;
}

}  // namespace

TEST_CASE("a drawing that can be lower gives way where the pages are limited, and only as far as it has to",
          "[layout]") {
  const model::Theme look = theme();
  const typeset::Drawings drawings = {{"plan", growing(20, 80)}};
  const auto withPlan = [](int count) {
    markup::Blocks blocks = sections(count);
    blocks.insert(blocks.begin() + 1, unnamed("plan"));
    return blocks;
  };
  int full = 1;  // sections beside the drawing at its best
  while (layOutIn(look, withPlan(full + 1), {}, drawings).document.pages.size() == 1) ++full;
  CHECK(drawn(layOutIn(look, withPlan(full), {.mostPages = 1}, drawings)) == "80 mm high");
  const Result one = layOutIn(look, withPlan(full + 1), {.mostPages = 1}, drawings);
  CHECK(one.document.pages.size() == 1);
  CHECK(drawn(one) == "64 mm high");  // a section takes 17 mm: no less than 12 mm and no more than 17 go
  CHECK(told(one).empty());
  // Nobody asks it to give way without a limit, or where giving way does not help.
  CHECK(drawn(layOutIn(look, withPlan(full + 1), {}, drawings)) == "80 mm high");
}

TEST_CASE("a drawing may be left out of a document with a limit, where that saves the page", "[layout]") {
  const model::Theme look = theme();
  int full = 1;
  while (layOutIn(look, sections(full + 1)).document.pages.size() == 1) ++full;
  markup::Blocks blocks = sections(full);
  blocks.insert(blocks.begin() + 1, unnamed("plan"));
  const Result without = layOutIn(look, blocks, {.mostPages = 1}, {{"plan", growing(60, 80, true)}});
  CHECK(without.document.pages.size() == 1);
  CHECK(drawn(without).empty());
  CHECK(told(without).empty());
  const Result with = layOutIn(look, blocks, {.mostPages = 1}, {{"plan", growing(60, 80)}});
  CHECK(with.document.pages.size() == 2);
  CHECK(told(with) ==
        "quote.md:1: warning: 'Head' does not fit: it ends on page 2, and the document has 1 page at most\n"
        "  hint: make it shorter, or what stands above it\n");
}

TEST_CASE("what stands under a title beyond its pages is told with the section that does not fit",
          "[layout]") {
  const model::Theme look = theme();
  markup::Blocks blocks = {title("Tuesday"), section("Work"), paragraph("One line.")};
  CHECK(told(layOutIn(look, blocks, {.mostPagesEach = 1})).empty());
  blocks.insert(blocks.end(), {pageBreak(), section("Log"), paragraph("One line.")});
  CHECK(told(layOutIn(look, blocks, {.mostPagesEach = 2})).empty());
  blocks.insert(blocks.end(), {pageBreak(), title("Wednesday"), section("Work"), paragraph("One line.")});
  CHECK(told(layOutIn(look, blocks, {.mostPagesEach = 2})).empty());
  blocks.insert(blocks.end(), {pageBreak(), paragraph("One line."), pageBreak(), section("Remarks"),
                               paragraph("One line.")});
  CHECK(told(layOutIn(look, blocks, {.mostPagesEach = 2})) ==
        "quote.md:1: warning: 'Remarks' does not fit: it ends on page 5, and what stands under one title has "
        "2 pages at most\n"
        "  hint: make it shorter, or what stands above it\n");
}

TEST_CASE("pages between two breaks are filled alike, and what stands under a whole title stays on one",
          "[layout]") {
  const model::Theme look = theme();
  markup::Blocks days;  // of two sections each
  for (int i = 0; i < 4; ++i) {
    markup::Heading day{1, words("Day"), false, false};
    day.isWhole = true;
    days.push_back({day, 1});
    for (int k = 0; k < 2; ++k)
      days.insert(days.end(),
                  {section("Work"), paragraph("One line."), paragraph("Another."), paragraph("A third.")});
  }
  const auto onPages = [&](typeset::FitPolicy fit) {
    std::vector<int> counts;
    for (const typeset::Bookmark& mark : layOutIn(look, days, fit).document.bookmarks)
      if (mark.level == 1) {
        counts.resize(std::max(counts.size(), mark.page + 1));
        ++counts[mark.page];
      }
    return counts;
  };
  CHECK(onPages({}) == std::vector{3, 1});
  CHECK(onPages({.fillsEvenly = true}) == std::vector{2, 2});
  const markup::Blocks four = days;
  days.push_back(pageBreak());
  days.insert(days.end(), four.begin(), four.end());
  CHECK(onPages({}) == std::vector{3, 1, 3, 1});
  CHECK(onPages({.fillsEvenly = true}) == std::vector{2, 2, 2, 2});
}
