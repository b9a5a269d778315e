#include "plan_drawn.h"

#include "drawings/pen/turn.h"
#include "drawings/plans/plan_sheet.h"

#include <cmath>

using namespace figures_test;

TEST_CASE("a plan draws as many boards as the deck has") {
  model::Deck d = landing();
  d.without.clear();
  const Drawing plan = Decks({d}).plan(metric(), fullWidth);
  REQUIRE(boardLines(plan));
  CHECK(moves(*boardLines(plan)) + 1 == 44);  // 6200 / 143 = 43.4, rounded up
}

TEST_CASE("boards along the short side run across") {
  model::Deck d = landing();
  d.without.clear();
  d.boards->run = model::Run::ShortSide;
  const Drawing plan = Decks({d}).plan(metric(), fullWidth);
  REQUIRE(boardLines(plan));
  CHECK(moves(*boardLines(plan)) + 1 == 87);  // 12400 / 143 = 86.7, rounded up
}

TEST_CASE("on a square deck boards run along x either way") {
  for (const auto run : {model::Run::LongSide, model::Run::ShortSide})
    CHECK(model::runsAlongX({place(1000, 0), place(4000, 3000)}, run));
  CHECK_FALSE(model::runsAlongX({place(0, 0), place(4000, 3000)}, model::Run::ShortSide));
}

TEST_CASE("boards that would come too close are drawn every so many") {
  model::Deck d = deck("Square", model::Rectangle{mm(60'000), mm(20'000)});
  d.boards = boards(90, 5);
  const Drawing plan = Decks({d}).plan(metric(), fullWidth);
  // 1:400 makes 95 mm 0.2375 mm on paper: every second board is 0.475 mm from the next, above 0.45 mm.
  CHECK(plan.alt.find("1:400") != std::string::npos);
  REQUIRE(boardLines(plan));
  CHECK(moves(*boardLines(plan)) == 105);  // 20000 / 190 = 105.3, cut off
}

TEST_CASE("no board crosses a cut-out") {
  model::Deck d = landing();
  d.without.push_back({model::Rectangle{mm(2000), mm(1000)}, place(9000, 4000), ""});
  const auto outline = model::outlineOf(d);
  REQUIRE(outline);
  std::size_t pieces = 0;
  for (const auto& s : model::seams(*outline, *d.boards, 1)) {
    ++pieces;
    CHECK(s.from.y == s.to.y);
    CHECK(s.from.x < s.to.x);
    const bool levelWithPool = s.from.y > mm(4000) && s.from.y < mm(5000);
    if (levelWithPool) CHECK((s.to.x <= mm(9000) || s.from.x >= mm(11'000)));
    // The middle of the tree lies at (6, 3), its edge 0.6 m away.
    const std::int64_t off = (s.from.y - mm(3000)).millionths;
    if (off > -600'000'000 && off < 600'000'000) CHECK((s.to.x < mm(6000) || s.from.x > mm(6000)));
    for (const auto end : {s.from, s.to})
      CHECK(model::distance(end, place(6000, 3000)).millionths >= 600'000'000 - 2);
  }
  // Seams 17 to 25 of 43 meet the tree (2431 to 3575 mm), 28 to 34 the pool (4004 to 4862 mm).
  CHECK(pieces == 43 + 9 + 7);
}

TEST_CASE("a deck of 12.4 by 6.2 m is 124 mm wide at 1:100") {
  const Drawing plan = Decks({landing()}).plan(metric(), fullWidth);
  CHECK(hasText(plan, "Scale 1:100, sizes in metres."));
  // The first path is the deck's fill.
  const auto& fill = *pathsIn(plan)[0];
  REQUIRE(fill.steps.size() == 5);
  CHECK(fill.steps[1].to.x - fill.steps[0].to.x == Dim::mm(124));
  CHECK(fill.steps[2].to.y - fill.steps[1].to.y == Dim::mm(62));
}

TEST_CASE("a plan takes the largest scale that fits its box") {
  const Decks decks({landing()});
  const auto scaleIn = [&](int w, int h) {
    const auto plan = decks.plan(metric(), {Dim::mm(w), Dim::mm(h)});
    CHECK(plan.size.w <= Dim::mm(w));
    CHECK(plan.size.h <= Dim::mm(h));
    return plan.alt.substr(0, plan.alt.find(": A"));
  };
  CHECK(scaleIn(180, 110) == "Plan of the decks to scale 1:75");  // 165.3 by 82.7 mm
  CHECK(scaleIn(166, 95) == "Plan of the decks to scale 1:100");
  CHECK(scaleIn(118, 80) == "Plan of the decks to scale 1:125");
  CHECK(scaleIn(60, 60) == "Plan of the decks to scale 1:250");
}

TEST_CASE("a plan says in words what it shows") {
  std::vector<model::Deck> decks = {landing(), deck("Handrail", model::Strip{mm(18'600), mm(600)})};
  const auto plan = Decks(decks).plan(metric(), fullWidth);
  CHECK(plan.alt ==
        "Plan of the decks to scale 1:100: A Landing, 12.40 by 6.20\u00a0m, 75.7\u00a0m², with a cut-out "
        "(tree, 1.20 "
        "across); not drawn: B\u00a0Handrail\u00a0(18.60\u00a0m).");
  CHECK(hasText(plan, "not drawn: B\u00a0Handrail\u00a0(18.60\u00a0m)"));
  CHECK(hasText(plan, "75.7\u00a0m²"));
}

TEST_CASE("sizes are in feet and inches where people measure so") {
  model::Deck d = deck("Porch", model::Rectangle{{22 * 12 * 25'400'000LL}, {150 * 25'400'000LL}});
  const auto plan = Decks({d}).plan(us(), fullWidth);
  CHECK(plan.alt == "Plan of the decks to scale 1:72: A Porch, 22'-0\" by 12'-6\", 815\u00a0ft².");
  CHECK(hasText(plan, "22'-0\""));
  CHECK(hasText(plan, "Scale 1:72, sizes in feet and inches."));
}

TEST_CASE("everything on a plan lies inside its size") {
  const auto all = sixDecks();
  for (std::size_t n = 1; n <= all.size(); ++n)
    for (const bool isKey : {false, true}) {
      const std::vector<model::Deck> some(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(n));
      const auto plan = Decks(some).plan(metric(), fullWidth, isKey);
      CHECK(plan.size.w <= fullWidth.w);
      CHECK(plan.size.h <= fullWidth.h);
      CHECK(!plan.items.empty());
      checkInside(plan);
    }
}

TEST_CASE("every deck has its letter and its name on the plan") {
  const auto decks = sixDecks();
  const auto plan = Decks(decks).plan(metric(), {Dim::mm(166), Dim::mm(150)});
  for (std::size_t i = 0; i + 1 < decks.size(); ++i) CHECK(hasText(plan, drawings::letterOf(i)));
  for (const auto* name : {"Landing", "Pool step", "Bathing deck", "Court", "Steps"})
    CHECK(hasText(plan, name));
}

TEST_CASE("a leader runs over no other deck, however narrow, and ends on the one it names") {
  // Stairs between two walks of 1 m: a name above or below them would have its leader through a walk.
  model::Deck top = deck("Upper walk", model::Rectangle{mm(30'000), mm(1000)}),
              below = deck("Lower walk", model::Rectangle{mm(30'000), mm(1000)}),
              steps = deck("Steps", model::Stairs{6, mm(4000), mm(300), mm(170)});
  top.at = place(0, 0);
  steps.at = place(14'000, 1000);
  below.at = place(0, 5000);
  const auto plan = Decks({top, steps, below}).plan(metric(), {Dim::mm(118), Dim::mm(60)}, true);
  std::vector<std::pair<typeset::Point, typeset::Point>> decks, leaders;  // corners, ends
  for (const auto* p : pathsIn(plan)) {
    if (p->fill && p->steps.size() == 5) decks.emplace_back(p->steps[0].to, p->steps[2].to);
    if (p->steps.size() == 2 && p->stroke) leaders.emplace_back(p->steps[0].to, p->steps[1].to);
  }
  REQUIRE(decks.size() == 3);
  REQUIRE_FALSE(leaders.empty());
  for (const auto& [from, to] : leaders) {
    const auto met = std::count_if(decks.begin(), decks.end(), [&, a = from, b = to](const auto& d) {
      return std::min(a.x, b.x) < d.second.x && d.first.x < std::max(a.x, b.x) + Dim{1} &&
             std::min(a.y, b.y) < d.second.y && d.first.y < std::max(a.y, b.y) + Dim{1};
    });
    CHECK(met == 1);
  }
}

namespace {

/// Where words stand, baseline and capitals alone.
typeset::Rect boxOf(const TextRun& run) {
  const Dim high = run.size * 64 / 100;
  if (run.isUpright) return {{run.baseline.x - high, run.baseline.y - run.width}, {high, run.width}};
  return {{run.baseline.x, run.baseline.y - high}, {run.width, high}};
}

bool lieApart(const typeset::Rect& a, const typeset::Rect& b) {
  return a.at.x + a.size.w <= b.at.x || b.at.x + b.size.w <= a.at.x || a.at.y + a.size.h <= b.at.y ||
         b.at.y + b.size.h <= a.at.y;
}

typeset::Rect boundsOf(const Path& path) {
  typeset::Point least = path.steps.front().to, most = least;
  for (const auto& s : path.steps)
    if (s.kind != Step::Kind::Close) {
      least = {std::min(least.x, s.to.x), std::min(least.y, s.to.y)};
      most = {std::max(most.x, s.to.x), std::max(most.y, s.to.y)};
    }
  return {least, {most.x - least.x, most.y - least.y}};
}

bool holds(const typeset::Rect& outer, const typeset::Rect& r) {
  return outer.at.x <= r.at.x && r.at.x + r.size.w <= outer.at.x + outer.size.w && outer.at.y <= r.at.y &&
         r.at.y + r.size.h <= outer.at.y + outer.size.h;
}

/// A deck with a corner cut off, and a walk close below it.
std::vector<model::Deck> cutCorner() {
  model::Deck cut = deck("Upper deck", model::Polygon{{place(0, 0), place(12'000, 0), place(12'000, 4000),
                                                       place(9500, 6500), place(0, 6500)}}),
              walk = deck("Walk", model::Rectangle{mm(12'000), mm(1800)});
  cut.at = place(0, 0);
  walk.at = place(0, 7000);
  cut.boards = walk.boards = boards(138, 5);
  return {cut, walk};
}

}  // namespace

TEST_CASE("the size of an edge that no chain tells stands at its edge inside the deck, or in a line") {
  const auto plan = Decks(cutCorner()).plan(metric(), fullWidth);
  const auto fill = boundsOf(*pathsIn(plan)[0]);
  // Below the deck lies the walk, 0.5 m away: no room for a line.
  for (const auto* text : {"3.54", "9.50"}) {
    const auto* run = textIn(plan, text);
    REQUIRE(run);
    CHECK(holds(fill, boxOf(*run)));
  }
  const auto* below = textIn(plan, "9.50");
  CHECK(fill.at.y + fill.size.h - below->baseline.y < Dim::mm(2));
  CHECK(textIn(plan, "4.00"));
}

TEST_CASE("no size stands over a deck that is not its own") {
  const auto plan = Decks(cutCorner()).plan(metric(), fullWidth);
  std::vector<typeset::Rect> walks;
  for (const auto* p : pathsIn(plan))
    if (p->fill && !p->stroke && p->steps.size() == 5 && boundsOf(*p).size.w > Dim::mm(50))
      walks.push_back(boundsOf(*p));
  REQUIRE(walks.size() == 1);
  for (const auto* text : {"12.00", "6.50", "4.00", "3.54", "9.50"}) {
    INFO(text);
    const auto* run = textIn(plan, text);
    REQUIRE(run);
    if (std::string(text) != "12.00") CHECK(lieApart(walks[0], boxOf(*run)));  // the walk is 12 m, too
  }
}

TEST_CASE("a leader ends in a dot between two treads") {
  model::Deck land = landing();
  land.at = place(0, 0);
  model::Deck steps = deck("Steps", model::Stairs{4, mm(2400), mm(300), mm(170)});
  steps.at = place(12'400, 1000);
  const auto plan = Decks({land, steps}).plan(metric(), fullWidth);
  std::vector<Dim> treads;
  std::optional<Dim> dot;
  const auto ink = theme().colours.at("ink");
  for (const auto* p : pathsIn(plan)) {
    if (p->stroke && !p->fill && moves(*p) == 3 && p->steps.size() == 6)
      for (std::size_t i = 0; i < 6; i += 2) treads.push_back(p->steps[i].to.x);
    const bool isRound = p->steps.size() > 1 && p->steps[1].kind == Step::Kind::Curve;
    const auto bounds = boundsOf(*p);
    if (isRound && p->fill == ink && bounds.size.w < Dim::mm(2)) dot = bounds.at.x + bounds.size.w / 2;
  }
  REQUIRE(treads.size() == 3);
  REQUIRE(dot);
  const Dim going = treads[1] - treads[0];
  for (const Dim tread : treads) CHECK(std::abs((*dot - tread).raw) * 100 >= going.raw * 49);
}

TEST_CASE("a name that would stand close over another deck leaves its letter alone, and a line tells it") {
  // Stairs between a walk and a deck: above them is the end of the walk, below them no room for a name.
  model::Deck walk = deck("Boardwalk", model::Rectangle{mm(1800), mm(9800)}),
              upper = deck("Upper deck", model::Rectangle{mm(12'000), mm(6500)}),
              stairs = deck("Stairs", model::Stairs{9, mm(2000), mm(320), mm(170)});
  walk.at = place(0, 0);
  stairs.at = place(1800, 800);
  upper.at = place(4680, -2000);
  const auto plan = Decks({upper, walk, stairs}).plan(metric(), {Dim::mm(100), Dim::mm(62)});
  CHECK(hasText(plan, "C"));
  CHECK_FALSE(hasText(plan, "Stairs"));
}

TEST_CASE("areas measured by others make an empty plan") {
  const auto plan =
      Decks({deck("Lawn deck", model::Measured{{42'500'000'000'000}, {}})}).plan(metric(), fullWidth);
  CHECK(plan.items.empty());
  CHECK(plan.size.h == Dim{});
  CHECK(plan.alt == "not drawn: A\u00a0Lawn\u00a0deck\u00a0(42.5\u00a0m²)");
}

TEST_CASE("a tiny deck beside a huge one is named outside") {
  model::Deck walk = deck("Boardwalk", model::Rectangle{mm(62'000), mm(1500)});
  walk.boards = boards(138, 5, model::Run::ShortSide);
  const auto plan =
      Decks({walk, deck("Hut", model::Rectangle{mm(3000), mm(2500)})}).plan(metric(), fullWidth);
  CHECK(hasText(plan, "Boardwalk"));
  CHECK(hasText(plan, "Hut"));
  CHECK(hasText(plan, "62.00"));
  checkInside(plan);
}

TEST_CASE("stairs rise towards the deck they lean against") {
  model::Deck land = landing();
  land.at = place(0, 0);
  model::Deck right = deck("Steps", model::Stairs{4, mm(2400), mm(300), mm(170)});
  right.at = place(12'400, 1000);
  model::Deck below = right;
  below.at = place(2000, 6200);
  const auto placed = drawings::placeDecks({land, right, below}, mm(1000), mm(100'000));
  REQUIRE(placed.size() == 3);
  CHECK(placed[1].up == drawings::Side::Left);
  CHECK(placed[1].extent.width() == mm(1200));  // 4 x 300
  CHECK(placed[2].up == drawings::Side::Top);
  CHECK(placed[2].extent.width() == mm(2400));
}

TEST_CASE("decks without a place stand side by side") {
  const auto placed = drawings::placeDecks({landing(), landing(), landing()}, mm(1000), mm(30'000));
  REQUIRE(placed.size() == 3);
  CHECK(placed[1].extent.from.x == mm(13'400));  // 12 400 + 1000
  CHECK(placed[1].extent.from.y == mm(0));
  CHECK(placed[2].extent.from.x == mm(0));     // 39 200 would be too wide
  CHECK(placed[2].extent.from.y == mm(7800));  // 6200 + 8/5 x 1000
}

TEST_CASE("a plan is the same each time it is drawn") {
  const Decks decks(sixDecks());
  const auto a = decks.plan(metric(), fullWidth), b = decks.plan(metric(), fullWidth);
  REQUIRE(a.items.size() == b.items.size());
  CHECK(a.alt == b.alt);
  for (std::size_t i = 0; i < a.items.size(); ++i) {
    const auto *p = std::get_if<Path>(&a.items[i].what), *q = std::get_if<Path>(&b.items[i].what);
    REQUIRE((p == nullptr) == (q == nullptr));
    if (!p) continue;
    REQUIRE(p->steps.size() == q->steps.size());
    for (std::size_t k = 0; k < p->steps.size(); ++k) CHECK(p->steps[k].to.x == q->steps[k].to.x);
  }
}

TEST_CASE("a turn by any degree is right to a ten-millionth") {
  for (int degrees = 0; degrees < 360; ++degrees) {
    const double radians = degrees * std::acos(-1.0) / 180;
    const auto turn = drawings::turnBy(degrees);
    const auto unit = static_cast<double>(drawings::Turn::unit);
    CHECK(std::abs(static_cast<double>(turn.cos) / unit - std::cos(radians)) < 1e-7);
    CHECK(std::abs(static_cast<double>(turn.sin) / unit - std::sin(radians)) < 1e-7);
  }
}

TEST_CASE("a part of the scale bar is the smallest round one of 6 mm or more") {
  // At 1:100 half a metre is 5 mm, a metre 10 mm.
  const Drawing plan = Decks({landing()}).plan(metric(), fullWidth);
  CHECK(hasText(plan, "5"));
  CHECK_FALSE(hasText(plan, "0.5"));
}
