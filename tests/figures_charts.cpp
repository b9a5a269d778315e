#include "figures_pen.h"
#include "near.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace figures_test;
using drawings::LitreRow;
using drawings::PricePart;
using typeset::Dim;
using typeset::Drawing;
using typeset::Path;
using typeset::TextRun;
using About = drawings::PricePart::About;

namespace {

const TextRun* runOf(const Drawing& d, const std::string& text) {
  for (const auto& item : d.items)
    if (const auto* r = std::get_if<TextRun>(&item.what); r && r->text == text) return r;
  return nullptr;
}

/// Left and right of every framed box of one height, from the top of the drawing downwards.
std::vector<std::pair<Dim, Dim>> boxes(const Drawing& d, Dim height) {
  std::vector<std::pair<Dim, Dim>> out;
  for (const auto& item : d.items) {
    const auto* p = std::get_if<Path>(&item.what);
    if (!p || !p->stroke || p->steps.size() != 5) continue;
    if (p->steps[2].to.y - p->steps[1].to.y == height) out.emplace_back(p->steps[0].to.x, p->steps[1].to.x);
  }
  return out;
}

base::Count litres(std::int64_t tenths) { return {tenths * 100'000}; }

std::vector<LitreRow> rows() {
  return {{"A  Landing", {litres(79), litres(53)}}, {"B  Steps", {litres(6), litres(4)}}};
}

std::vector<PricePart> parts() {
  return {{About::Wash, "Washing", {25'000}, "250.00"},
          {About::Sand, "Sanding", {50'000}, "500.00"},
          {About::Tax, "GST", {25'000}, "250.00"}};
}

/// Every word ends inside, and no two words on one line touch.
void checkWords(const Drawing& d) {
  std::vector<const TextRun*> runs;
  for (const auto& item : d.items)
    if (const auto* r = std::get_if<TextRun>(&item.what)) runs.push_back(r);
  for (const auto* a : runs) {
    CHECK(a->baseline.x >= Dim{});
    CHECK(a->baseline.x + a->width <= d.size.w);
    CHECK(a->baseline.y <= d.size.h);
    for (const auto* b : runs)
      if (a != b && a->baseline.y == b->baseline.y && a->baseline.x <= b->baseline.x)
        CHECK(a->baseline.x + a->width <= b->baseline.x);
  }
}

}  // namespace

TEST_CASE("bars of litres are as long as their litres, on one scale") {
  const auto d = drawings::litresChart(rows(), metric().pen(), Dim::mm(166));
  const auto bars = boxes(d, Dim::pt(14));
  REQUIRE(bars.size() == 4);
  const auto width = [&](std::size_t i) { return static_cast<double>((bars[i].second - bars[i].first).raw); };
  CHECK(bars[0].second == bars[1].first);
  CHECK(width(0) * 53 ==
        near(width(1) * 79).margin(66));  // 7.9 L and 5.3 L, each rounded once: (53 + 79) / 2
  CHECK(width(0) * 6 == near(width(2) * 79).epsilon(0.001));
  CHECK(bars[2].first == bars[0].first);
}

TEST_CASE("each bar of litres has its figure at its end, and the sum below") {
  const auto d = drawings::litresChart(rows(), metric().pen(), Dim::mm(166));
  CHECK(runOf(d, "13.2\u00a0L"));  // 7.9 + 5.3
  CHECK(runOf(d, "1.0\u00a0L"));   // 0.6 + 0.4
  CHECK(runOf(d, "14.2\u00a0L"));
  CHECK(runOf(d, "7.9"));
  checkWords(d);
}

TEST_CASE("litres are told in words, in the units of the region") {
  CHECK(drawings::litresChart(rows(), metric().pen(), Dim::mm(166)).alt ==
        "Bars of the litres each deck takes: A  Landing 13.2\u00a0L (first coat 7.9, second coat 5.3); "
        "B  Steps 1.0\u00a0L (first coat 0.6, second coat 0.4); together 14.2\u00a0L.");
  const std::vector<LitreRow> one = {{"A  Porch", {{790'000}}}};  // 0.79 gal
  CHECK(drawings::litresChart(one, us().pen(), Dim::mm(166)).alt ==
        "Bars of the gallons each deck takes: A  Porch 0.79\u00a0gal; together 0.79\u00a0gal.");
}

TEST_CASE("a chart of litres takes any job: a drop, a lake, a fifth coat, long names, none") {
  const auto draw = [](const std::vector<LitreRow>& r) {
    return drawings::litresChart(r, metric().pen(), Dim::mm(166));
  };
  CHECK(draw({}).items.empty());
  checkWords(draw({{"A  Drop", {litres(1)}}}));
  checkWords(draw({{"A  Nothing", {litres(0)}}}));
  checkWords(draw({{"A  Lake", {litres(98'765'432), litres(1)}}}));
  checkWords(draw({{"A  Many", {litres(5), litres(4), litres(3), litres(2), litres(1)}}}));
  const auto named = draw({{"A  The long walk between the boat shed and the old mill", {litres(50)}}});
  checkWords(named);
  CHECK(runOf(named, "A  The long walk between") == nullptr);  // broken before it meets the bars
}

TEST_CASE("a bar of the price is split by amounts and fills the width") {
  const auto d = drawings::priceChart(parts(), {"Total", "$1,000.00"}, metric().pen(), Dim::mm(166));
  const auto bar = boxes(d, Dim::pt(21));
  REQUIRE(bar.size() == 3);
  CHECK(bar[0].first == Dim{});
  CHECK(bar[0].second.raw == 166 * 36'000 / 4);      // 250 of 1000
  CHECK(bar[1].second.raw == 166 * 36'000 / 4 * 3);  // and 500 more
  CHECK(bar[2].second == Dim::mm(166));
}

TEST_CASE("the legend of a price names every part with its amount and the total") {
  const auto d = drawings::priceChart(parts(), {"Total", "$1,000.00"}, metric().pen(), Dim::mm(166));
  for (const char* text : {"Washing", "250.00", "Sanding", "500.00", "GST", "Total", "$1,000.00"})
    CHECK(runOf(d, text));
  CHECK(d.alt ==
        "Bar of what the price is made of: Washing 250.00; Sanding 500.00; GST 250.00; Total $1,000.00.");
}

TEST_CASE("a legend of ten long parts keeps names and amounts apart") {
  std::vector<PricePart> many;
  for (int i = 0; i < 10; ++i)
    many.push_back({static_cast<About>(i), "Travel, setting up", {1'234'567'890}, "12,345,678.90"});
  const auto d = drawings::priceChart(many, {"Total", "$123,456,789.00"}, metric().pen(), Dim::mm(166));
  checkWords(d);
}

TEST_CASE("every part of a price is filled in its own way") {
  std::vector<std::string> looks;
  for (int i = 0; i < 10; ++i) {
    const auto d = drawings::priceChart({{static_cast<About>(i), "x", {100}, "1.00"}}, {"Total", "1.00"},
                                        metric().pen(), Dim::mm(100));
    std::string look;
    for (const auto& item : d.items) {
      const auto* p = std::get_if<Path>(&item.what);
      if (!p) continue;
      if (p->fill) look += "fill " + std::to_string(p->fill->r) + " ";
      look += std::to_string(p->steps.size()) +
              (p->steps.size() > 1 && p->steps[0].to.x == p->steps[1].to.x ? "upright " : " ");
    }
    looks.push_back(look);
  }
  std::sort(looks.begin(), looks.end());
  CHECK(std::adjacent_find(looks.begin(), looks.end()) == looks.end());
}

TEST_CASE("a price of nothing is drawn without a bar") {
  const auto d = drawings::priceChart({{About::Wash, "Washing", {0}, "0.00"}}, {"Total", "0.00"},
                                      metric().pen(), Dim::mm(166));
  CHECK(boxes(d, Dim::pt(21)).empty());
  CHECK(runOf(d, "Washing"));
}
