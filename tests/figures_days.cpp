// The drawings of the day plan: strips on the decks, and the hours fit for a coat.
#include "figures_pen.h"

#include "drawings/charts/hours_runs.h"
#include "drawings/plans/strip_bands.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace figures_test;
using typeset::Dim;
using typeset::Drawing;
using typeset::Path;
using typeset::TextRun;

namespace {

const TextRun* runOf(const Drawing& d, const std::string& text) {
  for (const auto& item : d.items)
    if (const auto* r = std::get_if<TextRun>(&item.what); r && r->text == text) return r;
  return nullptr;
}

bool hasText(const Drawing& d, const std::string& text) { return runOf(d, text) != nullptr; }

/// The n of the note 'Scale 1:n'; 0 = none.
int scaleOf(const Drawing& d) {
  for (int n = 5; n <= 5000; n += 5) {
    if (hasText(d,
                "Scale 1:" + std::to_string(n) + ". Black corner: start there. Arrow: way out of the deck."))
      return n;
  }
  return 0;
}

/// Everything lies in the drawing; half a line's width may hang over.
void checkInside(const Drawing& d) {
  const Dim slack = Dim::pt(2);
  for (const auto& item : d.items) {
    const auto* path = std::get_if<Path>(&item.what);
    if (!path) continue;
    for (const auto& s : path->steps)
      if (s.kind != typeset::Step::Kind::Close)
        CHECK((s.to.x >= -slack && s.to.y >= -slack && s.to.x <= d.size.w + slack &&
               s.to.y <= d.size.h + slack));
  }
}

model::BoardStrip strip(std::size_t deck, int number, int from, int boards) {
  model::BoardStrip s;
  s.deck = deck;
  s.number = number;
  s.fromBoard = from;
  s.boards = boards;
  return s;
}

/// 44 boards of 143 mm in strips of 13 from the upper edge, left by the middle of the lower one; or the other
/// way round.
drawings::StripDeck landingStrips(bool startsAtEnd = false) {
  drawings::StripDeck d;
  d.edge.startsAtEnd = startsAtEnd;
  d.edge.wayOut = place(6'200, startsAtEnd ? 0 : 6'200);
  for (int i = 0; i < 4; ++i) {
    const int boards = i < 3 ? 13 : 5;
    d.edge.strips.push_back(strip(0, i + 1, startsAtEnd ? 44 - 13 * i - boards : 13 * i, boards));
    d.starts.push_back("08:" + std::to_string(10 + 15 * i));
    d.litres.push_back(i < 3 ? "2.8 L" : "1.0 L");
  }
  return d;
}

const typeset::Size box = {Dim::mm(166), Dim::mm(62)};

Drawing planOf(const Decks& decks, const std::vector<drawings::StripDeck>& strips) {
  return drawings::stripsPlan(decks.job, strips, metric().pen(), box);
}

}  // namespace

TEST_CASE("a plan of strips numbers them in their order and tells time and litres to those who hear it") {
  const auto d = planOf(Decks({landing()}), {landingStrips()});
  for (const char* text : {"1", "2", "3", "4", "A", "Landing"}) CHECK(hasText(d, text));
  CHECK(runOf(d, "1")->baseline.y < runOf(d, "2")->baseline.y);
  CHECK(runOf(d, "3")->baseline.y < runOf(d, "4")->baseline.y);
  CHECK((d.size.w <= box.w && d.size.h <= box.h));
  checkInside(d);
  CHECK(d.alt ==
        "Plan of the strips in the order they are laid: A Landing: strip 1, 13 boards, from 08:10, 2.8 L, "
        "strip 2, 13 "
        "boards, from 08:25, 2.8 L, strip 3, 13 boards, from 08:40, 2.8 L, strip 4, 5 boards, from 08:55, "
        "1.0 L.");
}

TEST_CASE("strips that start at the lower edge are numbered from there") {
  const auto d = planOf(Decks({landing()}), {landingStrips(true)});
  CHECK(runOf(d, "1")->baseline.y > runOf(d, "2")->baseline.y);
}

TEST_CASE("the bands of strips cover a deck without a gap") {
  const auto deck = landing();
  const auto placed = model::placeDecks({deck}, mm(1'000), mm(50'000));
  for (const bool startsAtEnd : {false, true}) {
    const auto edge = landingStrips(startsAtEnd).edge;
    auto bands = drawings::bandsOf(placed[0], deck, edge);
    CHECK(bands.alongX);
    if (startsAtEnd) std::reverse(bands.bands.begin(), bands.bands.end());
    CHECK(bands.bands.front().from == mm(0));
    CHECK(bands.bands.back().to == mm(6'200));
    for (std::size_t i = 1; i < bands.bands.size(); ++i) CHECK(bands.bands[i - 1].to == bands.bands[i].from);
  }
}

TEST_CASE("decks far apart on the site are drawn side by side, no smaller for it") {
  auto near = landing(), far = landing();
  near.at = place(0, 0);
  far.at = place(90'000, 0);
  auto first = landingStrips(), second = landingStrips();
  second.edge.deck = 1;
  for (auto& s : second.edge.strips) s.deck = 1;
  const auto alone = planOf(Decks({near}), {first}), both = planOf(Decks({near, far}), {first, second});
  // The box is 166 x 62 mm. Below a deck stand the arrow of the way out, 1.2 + 7 + 0.4 mm, and the line of
  // notes, 2.5 + 3.7 mm: 14.8 mm. One deck of 12.4 x 6.2 m is 49.6 mm high at 1:125, with them 64.4.
  CHECK(scaleOf(alone) == 150);
  // Two side by side, 14 mm apart, are 82.7 + 14 + 82.7 = 179.4 mm wide at 1:150; at 1:200 62 + 14 + 62 = 138
  // mm. With the ninety metres between them they would be 102.4 m wide, which asks for 1:750.
  CHECK(scaleOf(both) == 200);
  checkInside(both);
}

TEST_CASE("the arrow of a way out at a corner that two decks share stands clearly on its own deck's side") {
  auto strips = landingStrips();
  strips.edge.wayOut = place(12'400, 6'200);
  const auto d = planOf(Decks({landing()}), {strips});  // ends with the deck's right edge
  int heads = 0;
  for (const auto& item : d.items) {
    const auto* path = std::get_if<Path>(&item.what);
    if (!path || !path->fill || *path->fill != drawings::colour(metric().pen(), "accent") ||
        path->steps.size() != 4 || path->steps[1].kind != typeset::Step::Kind::Line)
      continue;
    ++heads;
    for (const auto& step : path->steps)
      if (step.kind != typeset::Step::Kind::Close) CHECK(step.to.x < d.size.w - Dim::mm(3));
  }
  CHECK(heads == 1);
}

TEST_CASE("strips too narrow for a number have all their numbers beside the deck, on one side") {
  auto strips = landingStrips();
  strips.edge.strips.clear();
  for (int i = 0; i < 15; ++i) strips.edge.strips.push_back(strip(0, i + 1, 3 * i, i < 14 ? 3 : 2));
  strips.starts.assign(15, "08:10");
  strips.litres.assign(15, "0.6 L");
  const auto d = planOf(Decks({landing()}), {strips});
  const Dim deckWidth = Dim::mm(12'400) / scaleOf(d), deckLeft = d.size.w - deckWidth - Dim::mm(1);
  for (int i = 1; i <= 15; ++i) {
    const auto* number = runOf(d, std::to_string(i));
    REQUIRE(number != nullptr);
    CHECK(number->baseline.x + number->width < deckLeft);
  }
}

TEST_CASE("round and slanting decks take strips too") {
  auto round = deck("Round", model::Circle{mm(5'000)});
  auto ring = deck("Ring", model::Ring{mm(6'000), mm(1'800)});
  auto corner =
      deck("Corner", model::Polygon{{place(0, 0), place(7'000, 0), place(7'000, 2'500), place(0, 5'000)}});
  std::vector<model::Deck> decks = {round, ring, corner};
  std::vector<drawings::StripDeck> strips(3);
  for (std::size_t i = 0; i < 3; ++i) {
    decks[i].boards = boards(138, 5);
    strips[i].edge.deck = i;
    strips[i].edge.wayOut = place(2'500, 5'000);
    strips[i].edge.strips = {strip(i, 1, 0, 15), strip(i, 2, 15, 20)};
    strips[i].starts = {"09:00", "09:20"};
    strips[i].litres = {"1.1 L", "1.2 L"};
  }
  const auto d = planOf(Decks(decks), strips);
  CHECK(d.size.h > Dim{});
  checkInside(d);
  for (const char* text : {"Round", "Ring", "Corner"}) CHECK(hasText(d, text));
}

TEST_CASE("decks without a place on a plan are told and not drawn") {
  const auto d = planOf(Decks({deck("Fascia", model::Strip{mm(9'000), mm(200)})}), {drawings::StripDeck{}});
  CHECK(d.size.h == Dim{});
  CHECK(d.alt == "Plan of the strips in the order they are laid: A Fascia.");
}

namespace {

model::Hour hour(int clock, std::vector<model::WeatherLimit> reasons) {
  model::Hour h;
  h.at.minutes = clock * 60;
  h.isFit = reasons.empty();
  h.reasons = std::move(reasons);
  h.source = model::WeatherSource::Forecast;
  return h;
}

/// Dark to five, dew to eight, fit to noon, hot boards to seven, dark; one hour of damp air at ten.
drawings::HoursDay summerDay() {
  using model::WeatherLimit;
  drawings::HoursRow row{"A\u00A0\u00A0Landing", {}, {{8 * 60 + 30, 9 * 60 + 50, 1, "first coat"}}, {}};
  for (int h = 0; h < 24; ++h) {
    if (h < 5 || h >= 19) row.hours.push_back(hour(h, {WeatherLimit::Damp, WeatherLimit::Dark}));
    else if (h < 8) row.hours.push_back(hour(h, {WeatherLimit::Dew}));
    else if (h == 10) row.hours.push_back(hour(h, {WeatherLimit::Damp, WeatherLimit::Rain}));
    else if (h < 12) row.hours.push_back(hour(h, {}));
    else row.hours.push_back(hour(h, {WeatherLimit::BoardsHot}));
  }
  drawings::HoursDay day;
  day.rows = {row};
  day.sunrise = 6 * 60 + 55;
  day.sunset = 19 * 60 + 10;
  day.sun = {"sunrise 06:55", "sunset 19:10"};
  for (int h = 6; h <= 20; h += 2) day.clock.push_back(std::to_string(h));
  return day;
}

}  // namespace

TEST_CASE("the hours of a day say in words why they are not fit, or in one word, or in the legend") {
  const auto d = drawings::hoursChart(summerDay(), metric().pen(), Dim::mm(166));
  CHECK(hasText(d, "boards too hot"));
  CHECK(hasText(d, "damp"));  // an hour is too narrow for 'air too damp'
  CHECK(hasText(d, "sunrise 06:55"));
  // The legend tells what is drawn and has no room for a word: ten minutes before the sun sets.
  for (const char* text : {"fit", "first coat planned", "hatched: not fit", "air too damp"})
    CHECK(hasText(d, text));
  checkInside(d);
  CHECK(
      d.alt ==
      "Hours fit for a coat: A\u00A0\u00A0Landing: 6 to 8 dew, 8 to 10 fit, 10 to 11 air too damp, 11 to "
      "12 fit, 12 to 19 boards too hot, 19 to 19:10 air too damp, 19:10 to 20 dark, first coat planned 08:30 "
      "to 09:50; sunrise 06:55; sunset 19:10.");
}

TEST_CASE("no word in the hours of a day could be taken for the letter of a deck") {
  auto day = summerDay();
  day.rows.front().coats.clear();
  const auto d = drawings::hoursChart(day, metric().pen(), Dim::mm(166));
  for (const auto& item : d.items) {
    const auto* r = std::get_if<TextRun>(&item.what);
    if (r && r->text.size() == 1) CHECK_FALSE(std::isupper(static_cast<unsigned char>(r->text[0])));
  }
}

TEST_CASE("it is dark up to the minute of sunrise, and the rest of that hour has its own reason or none") {
  using model::WeatherLimit;
  drawings::HoursDay day;
  day.sunrise = 6 * 60 + 40;
  day.sunset = 19 * 60 + 30;
  const auto runs =
      drawings::runsOf({hour(6, {WeatherLimit::AirCold, WeatherLimit::Dark}),
                        hour(7, {WeatherLimit::AirCold}), hour(18, {}), hour(19, {WeatherLimit::Dark})},
                       day);
  REQUIRE(runs.size() == 5);
  CHECK(
      (runs[0].at.from == 6 * 60 && runs[0].at.until == 6 * 60 + 40 && runs[0].reason == WeatherLimit::Dark));
  CHECK((runs[1].at.from == 6 * 60 + 40 && runs[1].at.until == 8 * 60 &&
         runs[1].reason == WeatherLimit::AirCold));
  CHECK(runs[2].isFit);
  CHECK((runs[3].at.until == 19 * 60 + 30 && !runs[3].isFit && !runs[3].reason));
  CHECK((runs[4].at.from == 19 * 60 + 30 && runs[4].reason == WeatherLimit::Dark));
}

TEST_CASE("a legend explains the hatches that have no room for a word, and no others") {
  using model::WeatherLimit;
  auto day = summerDay();
  day.sunset = 19 * 60 + 45;  // a quarter of an hour is 2.1 mm
  const auto d = drawings::hoursChart(day, metric().pen(), Dim::mm(166));
  CHECK(hasText(d, "dark"));
  CHECK_FALSE(hasText(d, "boards too hot, dew"));
  const auto* dark = runOf(d, "dark");
  REQUIRE(dark);
  CHECK(dark->baseline.y > runOf(d, "sunrise 06:55")->baseline.y);  // below the strips
}

TEST_CASE("a legend says nothing of what is too narrow to be seen") {
  using model::WeatherLimit;
  auto day = summerDay();
  day.sunrise = 6 * 60 + 57;
  day.sunset.reset();
  day.sun.resize(1);
  day.rows.front().hours[6] = hour(6, {WeatherLimit::Dark});  // three minutes of light
  const auto shown = [&] { return drawings::hoursChart(day, metric().pen(), Dim::mm(166)); };
  CHECK_FALSE(hasText(shown(), "light for a part of the hour"));
  day.sunrise = 6 * 60 + 30;
  CHECK(hasText(shown(), "light for a part of the hour"));
}

TEST_CASE("each planned coat has its number, beside the frame where that is too narrow") {
  auto day = summerDay();
  day.rows.front().coats = {{8 * 60, 8 * 60 + 10, 1, "first coat"}, {9 * 60, 9 * 60 + 50, 2, "second coat"}};
  const auto d = drawings::hoursChart(day, metric().pen(), Dim::mm(166));
  CHECK((hasText(d, "1") && hasText(d, "2")));
  CHECK((hasText(d, "first coat planned") && hasText(d, "second coat planned")));
  // 14 hours on 166 - side and gutter; ten minutes are too narrow for a figure, so it stands left of them,
  // in hours that are fit.
  const auto left = Dim::milli(theme().sideWidth) + Dim::milli(theme().gutter);
  const auto on = [&](int minutes) { return left + (Dim::mm(166) - left) * (minutes - 360) / 840; };
  CHECK(runOf(d, "1")->baseline.x < on(8 * 60));
  CHECK((runOf(d, "2")->baseline.x > on(9 * 60) && runOf(d, "2")->baseline.x < on(9 * 60 + 50)));
}

TEST_CASE("the reason of a run stands where no coat is planned") {
  const std::vector<drawings::CoatSpan> coats = {{9 * 60, 10 * 60, 1, ""}, {12 * 60, 13 * 60, 2, ""}};
  const auto free = drawings::freePart({{8 * 60, 15 * 60}, false, model::WeatherLimit::Damp}, coats);
  CHECK((free.from == 10 * 60 && free.until == 12 * 60));  // 8-9, 10-12, 13-15: the first of the longest
}

TEST_CASE("the label of the last hour is left out where it would leave the drawing") {
  auto day = summerDay();
  const auto shown = [&] { return drawings::hoursChart(day, metric().pen(), Dim::mm(166)); };
  CHECK_FALSE(hasText(shown(), "20"));
  CHECK(hasText(shown(), "18"));
  day.until = 21;
  CHECK(hasText(shown(), "20"));
}

TEST_CASE("how warm the boards get is written below the curve where the limit runs close above it") {
  auto day = summerDay();
  day.surfaceMax = 40;
  day.limitWords = "limit 40 °C";
  day.dewWords = "dew point 3 °C";
  for (auto& h : day.rows.front().hours) {
    h.dewPoint = 3;
    h.surface = 37 - std::abs(h.at.minutes / 60 - 14);
  }
  day.rows.front().warmest = "37 °C";
  const auto above = [&] {
    const auto d = drawings::hoursChart(day, metric().pen(), Dim::mm(166));
    const auto *peak = runOf(d, "37 °C"), *limit = runOf(d, "limit 40 °C");
    REQUIRE((peak && limit));
    return limit->baseline.y - peak->baseline.y;
  };
  CHECK(above() < -Dim::mm(3));  // the limit's own words stand on its line, 1 mm above
  day.surfaceMax = 60;
  CHECK(above() < -Dim::mm(8));  // far above the curve
}

TEST_CASE("the chart of hours shows how warm the boards get, once for decks of one course") {
  auto day = summerDay();
  day.surfaceMax = 35;
  day.limitWords = "limit 35 °C";
  day.dewWords = "dew point 11 °C";
  const auto warm = [](double most) {
    std::vector<model::Hour> hours;
    for (int h = 0; h < 24; ++h) {
      auto one = hour(h, {});
      one.source = model::WeatherSource::Forecast;
      one.dewPoint = 11;
      one.surface = most - 2.0 * std::abs(h - 14);  // warmest at two
      hours.push_back(one);
    }
    return hours;
  };
  day.rows = {{"A\u00A0\u00A0Landing", warm(54), {}, "54 °C"},
              {"B\u00A0\u00A0Steps", warm(54), {}, "54 °C"},
              {"C\u00A0\u00A0Terrace", warm(30), {}, "30 °C"}};
  const auto d = drawings::hoursChart(day, metric().pen(), Dim::mm(166));
  checkInside(d);
  const auto* hot = runOf(d, "A, B\u00A0\u00A054 °C");
  const auto* cool = runOf(d, "C\u00A0\u00A030 °C");
  const auto* two = runOf(d, "14");
  REQUIRE((hot && cool && two));
  CHECK(std::abs((hot->baseline.x - two->baseline.x).raw) < Dim::mm(12).raw);  // over its hour
  CHECK(hot->baseline.y < runOf(d, "limit 35 °C")->baseline.y);
  CHECK(runOf(d, "limit 35 °C")->baseline.y < cool->baseline.y);
  CHECK(cool->baseline.y < runOf(d, "dew point 11 °C")->baseline.y);
  CHECK(
      d.alt.starts_with("Board surface, at most: A\u00A0\u00A0Landing 54 °C, B\u00A0\u00A0Steps 54 °C, "
                        "C\u00A0\u00A0Terrace 30 °C; limit 35 °C; dew point 11 °C. Hours fit for a coat:"));

  for (auto& row : day.rows) {
    row.warmest.clear();
    for (auto& h : row.hours) h.source = model::WeatherSource::None;
  }
  CHECK_FALSE(hasText(drawings::hoursChart(day, metric().pen(), Dim::mm(166)), "Board surface"));
}

TEST_CASE("a day without a coat has no chart of hours") {
  CHECK(drawings::hoursChart({}, metric().pen(), Dim::mm(166)).items.empty());
}

TEST_CASE("a small stair is drawn at 1:75 and no larger") {
  drawings::StripDeck d;
  d.edge.strips = {strip(0, 1, 0, 4)};
  d.starts = {"08:10"};
  d.litres = {"0.3 L"};
  const Decks decks({deck("Steps", model::Stairs{4, mm(1'200), mm(300), mm(170)})});
  CHECK(scaleOf(planOf(decks, {d})) >= 75);
}
