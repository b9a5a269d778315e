// The small plan of the aftercare sheet.
#include "plan_drawn.h"

using namespace figures_test;

TEST_CASE("a key shows letters and names, but no boards and no sizes") {
  const auto plan = Decks({landing()}).plan(metric(), {Dim::mm(118), Dim::mm(40)}, true);
  CHECK(boardLines(plan) == nullptr);
  CHECK(hasText(plan, "A"));
  CHECK(hasText(plan, "Landing"));
  CHECK_FALSE(hasText(plan, "12.40"));
  CHECK_FALSE(hasText(plan, "tree, 1.20 across"));
}

TEST_CASE("a key writes the letter on a deck too small for its name, and the name below") {
  model::Deck land = landing(), walk = deck("Boathouse walk", model::Rectangle{mm(2000), mm(6000)});
  land.at = place(0, 0);
  walk.at = place(14'000, 0);
  const auto plan = Decks({land, walk}).plan(metric(), {Dim::mm(118), Dim::mm(60)}, true);
  for (const auto* text : {"A", "Landing", "B", "B\u00a0Boathouse\u00a0walk"}) CHECK(hasText(plan, text));
  CHECK_FALSE(hasText(plan, "Boathouse walk"));
}

TEST_CASE("a key names what has no place on it") {
  const auto plan = Decks({landing(), deck("Rail", model::Strip{mm(9000), mm(300)})})
                        .plan(metric(), {Dim::mm(118), Dim::mm(40)}, true);
  CHECK(hasText(plan, "not drawn: B\u00a0Rail"));
}

TEST_CASE("a key smaller than 1:750 is left out") {
  const Decks decks({deck("Boardwalk", model::Rectangle{mm(100'000), mm(4000)})});  // 133 mm at 1:750
  CHECK_FALSE(decks.plan(metric(), {Dim::mm(140), Dim::mm(60)}, true).items.empty());
  const auto none = decks.plan(metric(), {Dim::mm(118), Dim::mm(60)}, true);
  CHECK(none.items.empty());
  CHECK(none.size.h == Dim{});
}

TEST_CASE("treads closer than 0.7 mm are not drawn") {
  model::Deck walk = deck("Walk", model::Rectangle{mm(55'000), mm(2000)}),
              steps = deck("Steps", model::Stairs{10, mm(2400), mm(300), mm(170)});
  walk.at = place(0, 0);
  steps.at = place(20'000, 2000);
  const auto longest = [&](const std::vector<model::Deck>& decks) {  // of the paths, in pieces
    const auto plan = Decks(decks).plan(metric(), {Dim::mm(118), Dim::mm(60)}, true);
    std::size_t most = 0;
    for (const auto* p : pathsIn(plan)) most = std::max(most, moves(*p));
    return most;
  };
  CHECK(longest({steps}) == 9);        // between ten steps
  CHECK(longest({walk, steps}) == 1);  // 1:500 makes 300 mm 0.6 mm
}
