// The drawings of the day plan: strips on the decks, and the hours fit for a coat.
#include "plan_drawn.h"

#include "drawings/charts/hours_runs.h"
#include "drawings/plans/strip_bands.h"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace figures_test;

namespace {

/// The n of the note 'Scale 1:n'; 0 = none.
int scaleOf(const Drawing& d) {
  for (int n = 5; n <= 5000; n += 5) {
    if (hasText(d,
                "Scale 1:" + std::to_string(n) + ". Black corner: start there. Arrow: way out of the deck."))
      return n;
  }
  return 0;
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
    d.strips.push_back({std::to_string(i + 1), "08:" + std::to_string(10 + 15 * i), i < 3 ? "2.8 L" : "1.0 L",
                        "08:0" + std::to_string(i), "09:1" + std::to_string(i)});
  }
  d.name = "A\u00A0Landing";
  d.note = "4 strips of 5 to 13 boards";
  d.steps = "wipe 1–4 09:10–09:20";
  return d;
}

const typeset::Size box = {Dim::mm(166), Dim::mm(100)};

Drawing planOf(const Decks& decks, const std::vector<drawings::StripDeck>& strips) {
  return drawings::stripsPlan(decks.job, strips, metric().pen(), box);
}

}  // namespace

TEST_CASE("a plan of strips tells number, times and litres in each strip, and all to those who hear it") {
  const auto d = planOf(Decks({landing()}), {landingStrips()});
  for (const char* text :
       {"1", "2", "3", "4", "A", "Landing", "08:25", "2.8 L", "cut in 08:01", "wipe 09:11"})
    CHECK(hasText(d, text));
  CHECK(textIn(d, "1")->baseline.y < textIn(d, "2")->baseline.y);
  CHECK(textIn(d, "3")->baseline.y < textIn(d, "4")->baseline.y);
  CHECK(textIn(d, "08:25")->size == Dim::pt(12));  // five boards, 5.7 mm at 1:125, have no room for 15 pt
  CHECK((d.size.w <= box.w && d.size.h <= box.h));
  checkInside(d);
  CHECK(d.alt ==
        "Plan of the strips in the order they are laid: A\u00A0Landing: strip 1, 13 boards, from 08:10, "
        "2.8 L, strip 2, 13 boards, from 08:25, 2.8 L, strip 3, 13 boards, from 08:40, 2.8 L, strip 4, 5 "
        "boards, from 08:55, 1.0 L, wipe 1–4 09:10–09:20.");
  // What the strips say themselves is not said again.
  CHECK_FALSE(hasText(d, "4 strips of 5 to 13 boards; wipe 1–4 09:10–09:20"));
  CHECK(hasText(d, "4 strips of 5 to 13 boards"));
}

TEST_CASE("strips that start at the lower edge are numbered from there") {
  const auto d = planOf(Decks({landing()}), {landingStrips(true)});
  CHECK(textIn(d, "1")->baseline.y > textIn(d, "2")->baseline.y);
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
  // One deck of 12.4 x 6.2 m is 99.2 x 49.6 mm at 1:125. Two side by side, 14 mm apart, are 82.7 + 14 + 82.7
  // = 179.4 mm wide at 1:150; at 1:200 62 + 14 + 62 = 138 mm. With the ninety metres between them they would
  // be 102.4 m wide, which asks for 1:750.
  CHECK(scaleOf(alone) <= 150);
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

TEST_CASE("strips too narrow for their words have their numbers beside the deck, and their words below") {
  auto strips = landingStrips();
  strips.edge.strips.clear();
  strips.strips.clear();
  for (int i = 0; i < 15; ++i) {
    strips.edge.strips.push_back(strip(0, i + 1, 3 * i, i < 14 ? 3 : 2));
    strips.strips.push_back({std::to_string(i + 1), "08:" + std::to_string(10 + i), "0.6 L", "", ""});
  }
  const auto d = planOf(Decks({landing()}), {strips});
  for (int i = 1; i <= 15; ++i) {
    std::size_t count = 0;  // on the plan, and in the list
    for (const auto& item : d.items)
      if (const auto* r = std::get_if<TextRun>(&item.what); r && r->text == std::to_string(i)) ++count;
    CHECK(count == 2);
    const auto* time = textIn(d, "08:" + std::to_string(9 + i));
    REQUIRE(time != nullptr);
    CHECK(time->size == Dim::pt(12));
  }
  CHECK(hasText(d, "4 strips of 5 to 13 boards; wipe 1–4 09:10–09:20"));
  checkInside(d);
}

TEST_CASE("strips thinner than their discs are numbered along the boards where decks lie on both sides") {
  auto left = deck("Left", model::Rectangle{mm(3'000), mm(4'290)}), right = left,
       middle = deck("Middle", model::Rectangle{mm(4'000), mm(4'290)});
  left.at = place(0, 0);
  middle.at = place(3'000, 0);
  right.at = place(7'000, 0);
  std::vector<model::Deck> all = {left, middle, right};
  std::vector<drawings::StripDeck> strips(3);
  for (std::size_t i = 0; i < 3; ++i) {
    all[i].boards = boards(138, 5);
    strips[i].edge.deck = i;
    strips[i].edge.wayOut = place(2'000, 4'290);
    const int count = i == 1 ? 10 : 2, each = 30 / count;  // 3 boards of 143 mm are 3.4 mm at 1:125
    for (int k = 0; k < count; ++k) {
      const int number = static_cast<int>(i) * 20 + k + 1;
      strips[i].edge.strips.push_back(strip(i, number, each * k, each));
      strips[i].strips.push_back({std::to_string(number), "08:10", "0.6 L", "", ""});
    }
  }
  const auto d = drawings::stripsPlan(Decks(all).job, strips, metric().pen(), {Dim::mm(166), Dim::mm(90)});
  for (int n = 21; n <= 30; ++n) {
    INFO(n);
    const auto count = std::count_if(d.items.begin(), d.items.end(), [&](const auto& item) {
      const auto* r = std::get_if<TextRun>(&item.what);
      return r && r->text == std::to_string(n);
    });
    CHECK(count == 2);  // on the plan and in the list
  }
  checkInside(d);
}

TEST_CASE("a second coat of a deck on one day is told below the plan") {
  auto first = landingStrips(), second = landingStrips();
  second.name = "A\u00A0Landing, second coat";
  for (auto& s : second.strips) s.lay = "1" + s.lay.substr(1);
  const auto d = planOf(Decks({landing()}), {first, second});
  CHECK(hasText(d, "08:25"));
  CHECK(hasText(d, "18:25"));
}

TEST_CASE("walls, water and drops stand beside the edges that the job tells") {
  auto lone = landing();
  lone.edges = {{model::Compass::North, model::EdgeKind::Wall},
                {model::Compass::East, model::EdgeKind::Water}};
  const auto d = planOf(Decks({lone}), {landingStrips()});
  const auto *house = textIn(d, "house"), *water = textIn(d, "water");
  REQUIRE((house && water));
  CHECK(house->baseline.y < water->baseline.y);
  CHECK(house->baseline.x < water->baseline.x);
  CHECK_FALSE(hasText(d, "drop"));
  auto turned = Decks({lone});
  turned.job.job.site.north = 180;
  const auto other = planOf(turned, {landingStrips()});
  CHECK(textIn(other, "house")->baseline.y > textIn(other, "water")->baseline.y);
  checkInside(d);
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
    strips[i].strips = {{"1", "09:00", "1.1 L", "", ""}, {"2", "09:20", "1.2 L", "", ""}};
  }
  const auto d = drawings::stripsPlan(Decks(decks).job, strips, metric().pen(), {Dim::mm(166), Dim::mm(110)});
  CHECK(d.size.h > Dim{});
  checkInside(d);
  for (const char* text : {"Round", "Ring", "Corner"}) CHECK(hasText(d, text));
}

TEST_CASE("what has no place on a plan is told in the list") {
  drawings::StripDeck fascia;
  fascia.name = "A\u00A0Fascia";
  fascia.edge.strips = {strip(0, 1, 0, 0)};
  fascia.strips = {{"1", "08:40", "0.8 L", "", ""}};
  const auto d = planOf(Decks({deck("Fascia", model::Strip{mm(9'000), mm(200)})}), {fascia});
  CHECK(hasText(d, "08:40"));
  CHECK_FALSE(hasText(d, "A"));
  CHECK(d.alt ==
        "Plan of the strips in the order they are laid: A\u00A0Fascia: number 1, from 08:40, 0.8 L.");
  CHECK(drawings::stripsPlan(Decks({landing()}).job, {}, metric().pen(), box).size.h == Dim{});
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
  drawings::HoursRow row{"Fit for a coat", {}};
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
  for (int h = 6; h <= 20; ++h) day.clock.push_back(std::to_string(h));
  return day;
}

Drawing shown(const drawings::HoursDay& day) {
  return drawings::hoursChart(day, metric().pen(), Dim::mm(166));
}

}  // namespace

TEST_CASE("the hours of a day say in words why they are not fit, or in one word where they are few") {
  const auto d = shown(summerDay());
  CHECK(hasText(d, "boards too hot"));
  CHECK_FALSE(hasText(d, "air too damp"));  // an hour is too narrow
  CHECK(hasText(d, "dew"));
  checkInside(d);
  CHECK(d.alt ==
        "Hours fit for a coat: Fit for a coat: 6 to 8 dew, 8 to 10 fit, 10 to 11 air too damp, 11 to 12 fit, "
        "12 to 19 boards too hot, 19 to 19:10 air too damp, 19:10 to 20 dark.");
}

TEST_CASE("fit hours after the last start are only to finish, and too late after the last stroke") {
  auto day = summerDay();
  for (auto& h : day.rows.front().hours) h = hour(h.at.minutes / 60, {});
  day.lastStart = 11 * 60 + 40;
  day.lastStroke = 14 * 60 + 20;
  day.isWiped = true;
  const auto parts = drawings::partsOf(day.rows.front().hours, day);
  REQUIRE(parts.size() == 3);
  using Kind = drawings::HoursPart::Kind;
  CHECK((parts[0].kind == Kind::Fit && parts[0].at.until == 11 * 60 + 40));
  CHECK((parts[1].kind == Kind::ToFinish && parts[1].at.until == 14 * 60 + 20));
  CHECK((parts[2].kind == Kind::TooLate && parts[2].at.until == 20 * 60));
  const auto d = shown(day);
  for (const char* text : {"fit to start", "only to finish", "too late to be wiped"}) CHECK(hasText(d, text));
  day.isWiped = false;
  CHECK(hasText(shown(day), "too late to dry"));
}

TEST_CASE("each of the crew has a row under the same clock, with a word in each bar that has room for it") {
  auto day = summerDay();
  day.people = {{"All three", "07:30 set up", {}},
                {"Mara Quill",
                 "08:30 lays 1–8, 10:50 wipes 1, 11:30 rests, 13:15 home",
                 {{510, 650, "lays 1–8", "lays", "08:30 lays 1–8", true},
                  {650, 660, "wipes 1", "wipes", "10:50 wipes 1", true},
                  {660, 665, "rests", "rests", "11:00 rests", false},
                  {665, 670, "waits", "waits", "", false}}}};
  const auto d = shown(day);
  // What has no room in its bar stands beside the bars.
  for (const char* text :
       {"All three", "07:30 set up", "Mara Quill", "lays 1–8", "10:50 wipes 1, 11:00 rests"})
    CHECK(hasText(d, text));
  // 14 hours on 166 - side and gutter; the word stands in the middle of its bar.
  const auto left = Dim::milli(theme().sideWidth) + Dim::milli(theme().gutter);
  const auto on = [&](int minutes) { return left + (Dim::mm(166) - left) * (minutes - 360) / 840; };
  const auto* lays = textIn(d, "lays 1–8");
  CHECK((lays->baseline.x > on(510) && lays->baseline.x + lays->width < on(650)));
  CHECK(d.alt.ends_with(
      "All three: 07:30 set up. Mara Quill: 08:30 lays 1–8, 10:50 wipes 1, 11:30 rests, 13:15 home."));
  checkInside(d);
}

TEST_CASE("no type in the drawings of a coat day is below 9 pt in any look") {
  auto day = summerDay();
  day.people = {{"Mara Quill", "08:30 lays 1–8", {{510, 650, "lays 1–8", "lays", "", true}}}};
  for (const auto& item : shown(day).items)
    if (const auto* r = std::get_if<TextRun>(&item.what)) CHECK(r->size >= Dim::pt(9));
}

TEST_CASE("it is dark up to the minute of sunrise, and the rest of that hour has its own reason or none") {
  using model::WeatherLimit;
  drawings::HoursDay day;
  day.sunrise = 6 * 60 + 40;
  day.sunset = 19 * 60 + 30;
  const auto parts =
      drawings::partsOf({hour(6, {WeatherLimit::AirCold, WeatherLimit::Dark}),
                         hour(7, {WeatherLimit::AirCold}), hour(18, {}), hour(19, {WeatherLimit::Dark})},
                        day);
  REQUIRE(parts.size() == 5);
  CHECK((parts[0].at.from == 6 * 60 && parts[0].at.until == 6 * 60 + 40 &&
         parts[0].reason == WeatherLimit::Dark));
  CHECK((parts[1].at.from == 6 * 60 + 40 && parts[1].at.until == 8 * 60 &&
         parts[1].reason == WeatherLimit::AirCold));
  CHECK(parts[2].kind == drawings::HoursPart::Kind::Fit);
  CHECK((parts[3].at.until == 19 * 60 + 30 && !drawings::isFit(parts[3].kind) && !parts[3].reason));
  CHECK((parts[4].at.from == 19 * 60 + 30 && parts[4].reason == WeatherLimit::Dark));
}

TEST_CASE("a day without a coat has no chart of hours") { CHECK(shown({}).items.empty()); }

TEST_CASE("the days of a job stand in a strip, days of drying and days off told once each") {
  using Kind = drawings::GlanceDay::Kind;
  std::vector<drawings::GlanceDay> days = {{Kind::Work, "Tue", "16", "March 2027", {"Wash"}, "A, B"}};
  for (int i = 17; i < 20; ++i)
    days.push_back({Kind::Drying, "Wed", std::to_string(i), "", {"boards dry to 16 %", "dry"}, ""});
  days.push_back({Kind::Coat, "Sat", "20", "", {"coat 1"}, "A"});
  const auto d = drawings::glanceChart(days, metric().pen(), Dim::mm(166));
  for (const char* text : {"March 2027", "16", "20", "Wash", "A, B"}) CHECK(hasText(d, text));
  std::size_t told = 0;
  for (const auto& item : d.items)
    if (const auto* r = std::get_if<TextRun>(&item.what)) told += r->text == "boards dry to 16 %";
  CHECK(told == 1);
  checkInside(d);
  CHECK(d.alt.starts_with("The days of the job: Tue 16: Wash (A, B); Wed 17: boards dry to 16 %;"));
  while (days.size() < 40) days.push_back(days[1]);  // in rows
  const auto rows = drawings::glanceChart(days, metric().pen(), Dim::mm(166));
  CHECK(rows.size.h > d.size.h * 2);
  checkInside(rows);
  CHECK(drawings::glanceChart({}, metric().pen(), Dim::mm(166)).items.empty());
}

TEST_CASE("a small stair is drawn at 1:75 and no larger") {
  drawings::StripDeck d;
  d.edge.strips = {strip(0, 1, 0, 4)};
  d.strips = {{"1", "08:10", "0.3 L", "", ""}};
  const Decks decks({deck("Steps", model::Stairs{4, mm(1'200), mm(300), mm(170)})});
  CHECK(scaleOf(planOf(decks, {d})) >= 75);
}
