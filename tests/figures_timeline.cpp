#include "figures_pen.h"

#include <catch2/catch.hpp>

using namespace figures_test;
using drawings::Milestone;
using typeset::Dim;
using typeset::Drawing;
using typeset::Path;
using typeset::TextRun;

namespace {

std::vector<Milestone> stations() {
  return {{"care-coat", "Friday", "13 Feb", "Second coat", "done at 12:10", "1 day"},
          {"care-walk", "Saturday", "14 Feb", "Walk on it", "from noon, in soft soles", "2 days"},
          {"care-chair", "Monday", "16 Feb", "Furniture", "lift it back, never drag it", "11 days"},
          {"care-pot", "Friday", "27 Feb", "Rugs, pots", "dry rugs, pots on feet", "2 weeks"},
          {"care-wash", "Friday", "13 Mar", "First wash", "cool water and soft broom", "11 months"},
          {"care-brush", "Monday, 2027", "15 Feb", "Yearly visit", "we wash and add one coat", ""}};
}

Drawing draw(const std::vector<Milestone>& s, const std::string& caption = "Distances are not to scale.") {
  return drawings::timeline(s, metric().pen(), Dim::mm(166), caption, "Timeline:");
}

std::vector<const TextRun*> runs(const Drawing& d) {
  std::vector<const TextRun*> out;
  for (const auto& item : d.items)
    if (const auto* r = std::get_if<TextRun>(&item.what)) out.push_back(r);
  return out;
}

const TextRun* runOf(const Drawing& d, const std::string& text) {
  for (const auto* r : runs(d))
    if (r->text == text) return r;
  return nullptr;
}

}  // namespace

TEST_CASE("stations stand at equal distances across the page") {
  const auto d = draw(stations());
  CHECK(d.size.w == Dim::mm(166));
  const auto *second = runOf(d, "14 Feb"), *last = runOf(d, "15 Feb");
  REQUIRE((second && last));
  // Six columns with gutters of 6 mm: (166 + 6) / 6 = 28.67 mm apart.
  CHECK(second->baseline.x.raw == 172 * 36'000 / 6);
  CHECK(last->baseline.x.raw == 5 * 172 * 36'000 / 6);
  CHECK(second->baseline.y == last->baseline.y);
  CHECK(second->size == Dim::pt(20));
}

TEST_CASE("a long note is broken into lines of its column") {
  const auto d = draw(stations());
  CHECK(runOf(d, "from noon, in"));
  CHECK(runOf(d, "soft soles"));
  CHECK(runOf(d, "11 months"));
}

TEST_CASE("nothing on a timeline leaves its width, from four stations to seven") {
  auto s = stations();
  s.insert(s.begin(),
           {"care-coat", "Wednesday", "28 Sept", "First coat", "late in the afternoon", "a day and a half"});
  while (s.size() >= 4) {
    const auto d = draw(s);
    for (const auto* r : runs(d)) {
      CHECK(r->baseline.x + r->width <= d.size.w);
      CHECK(r->baseline.y <= d.size.h);
    }
    s.erase(s.end() - 2);
  }
}

TEST_CASE("dates that would touch are set one size smaller") {
  auto s = stations();
  s.insert(s.begin(), {"care-coat", "Wednesday", "28 Sept", "First coat", "", "1 day"});
  const auto d = draw(s);
  REQUIRE(runOf(d, "28 Sept"));
  CHECK(runOf(d, "28 Sept")->size == Dim::pt(15));
  CHECK(runOf(d, "13 Feb")->size == Dim::pt(15));
}

TEST_CASE("the hatching of soft oil thins out and ends at the fourth station") {
  const auto d = draw(stations());
  for (const auto& item : d.items) {
    const auto* p = std::get_if<Path>(&item.what);
    if (!p || !p->stroke || p->fill || p->steps.size() < 20) continue;
    Dim before, gap;
    for (std::size_t i = 2; i < p->steps.size(); i += 2) {
      const Dim now = p->steps[i].to.x - before;
      CHECK(now >= gap);
      CHECK(now >= Dim{21'600});  // 0.6 mm
      gap = now;
      before = p->steps[i].to.x;
    }
    CHECK(before.raw < 3 * 172 * 36'000 / 6);
    return;
  }
  FAIL("no hatching");
}

TEST_CASE("a timeline is told in words") {
  auto s = stations();
  s.resize(2);
  CHECK(draw(s).alt ==
        "Timeline: Friday 13 Feb, Second coat, done at 12:10; then 1 day; Saturday 14 Feb, Walk on it, from "
        "noon, in "
        "soft soles; then 2 days.");
}

TEST_CASE("a station with a picture nobody drew is an error") {
  auto s = stations();
  s[0].picture = "care-dance";
  CHECK_THROWS_WITH(draw(s), std::string(SOURCE_DIR) + "/content/signs: there is no sign 'care-dance'");
}
