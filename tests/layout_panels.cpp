// Panels in their frames, and signs.
#include "layout_shapes.h"
#include "near.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace sample;
using markup::Callout;
using markup::Mark;
using typeset::Dim;
using typeset::Role;

TEST_CASE("a long signal word of another language stays on its colour", "[layout]") {
  typeset::Furniture around = furniture();
  around.signalWords[3] = "NIEBEZPIECZEŃSTWO";
  const Result r =
      layOut({box(Callout::Danger, "Title.", {paragraph("What happens."), paragraph("What to do.")})}, false,
             model::Paper::A4, around, "pl");
  const Words signal = find(r.dump, around.signalWords[3]);
  const auto ground = shapesOf(r.dump, "fill #9b2423");
  REQUIRE(ground.size() == 1);
  CHECK(signal.width > 0);
  CHECK(signal.x + signal.width < ground[0].x + ground[0].w);
}

TEST_CASE("a panel stands in a heavy frame with its word on its colour", "[layout]") {
  const std::pair<Callout, std::string> panels[] = {
      {Callout::Danger, "#9b2423"}, {Callout::Warning, "#f28c00"}, {Callout::Caution, "#f9a900"}};
  const std::string wordsOfSignal[] = {"DANGER", "WARNING", "CAUTION"};
  std::size_t i = 0;
  for (const auto& [kind, ground] : panels) {
    const Result r = layOut(
        {box(kind, "Oily rags set themselves alight.",
             {paragraph("A fire at night can kill. {sign}{sign}"), paragraph("Put them under water.")})});
    const Words signal = find(r.dump, wordsOfSignal[i++]);
    // ANSI Z535.4-2007, section 7: danger white on red, warning black on orange, caution black on yellow;
    // from memory.
    CHECK(r.dump.find("'" + signal.text + "'") != std::string::npos);
    CHECK((r.dump.find("#ffffff '" + signal.text) != std::string::npos) == (kind == Callout::Danger));
    CHECK(shapesOf(r.dump, "fill " + ground).size() == 1);
    const auto frame = shapesOf(r.dump, "line 1.50 #211b17");
    REQUIRE(frame.size() == 2);
    CHECK(frame[1].x == near(left).margin(0.01));
    CHECK(frame[1].w == near(right - left).margin(0.02));
    CHECK(find(r.dump, "A fire at night can kill. ").x == 0);  // white at the end of a line is not set
    CHECK(find(r.dump, "Put them under water.").x == near(textX).margin(0.01));
    const auto signs = shapesOf(r.dump, "fill #005387");
    REQUIRE(signs.size() == 2);
    CHECK(signs[0].h == near(13 * 72 / 25.4).margin(0.01));
  }
}

TEST_CASE("a panel with one paragraph has it in the text column", "[layout]") {
  const Result r = layOut({box(Callout::Warning, "Rags.", {paragraph("Under water.")})});
  CHECK(find(r.dump, "Under water.").x == near(textX).margin(0.01));
}

TEST_CASE("a note has no alert sign and no frame", "[layout]") {
  const Result r = layOut({box(Callout::Note, "Wind moves the oil day.", {paragraph("We ring before.")})});
  CHECK(find(r.dump, "NOTICE").page == 1);
  CHECK(shapesOf(r.dump, "line 1.50").empty());
  CHECK(shapesOf(r.dump, "fill #").size() == 1);  // the ground of its word
}

TEST_CASE("whom to call stands beside its sign, what to wear above its signs", "[layout]") {
  const Result r = layOut(
      {box(Callout::Signs, "", {list(Mark::Dash, {"{sign} **111** fire", "{sign} **Hospital** 22 min"})}),
       box(Callout::Signs, "", {list(Mark::Dash, {"**Sand** {sign}{sign}{sign}{sign}{sign}"})})});
  const auto signs = shapesOf(r.dump, "fill #005387");
  REQUIRE(signs.size() == 7);
  CHECK(signs[0].h == near(11 * 72 / 25.4).margin(0.01));
  CHECK(find(r.dump, "111").x == near(left + 14 * 72 / 25.4).margin(0.01));
  CHECK(find(r.dump, "111").size == 14);
  CHECK(signs[2].y > find(r.dump, "Sand").y);
  for (std::size_t i = 3; i < 7; ++i) {
    CHECK(signs[i].y == signs[2].y);
    CHECK(signs[i].x > signs[i - 1].x + signs[i].w);
  }
}

TEST_CASE("signs of what to wear stand on one level in a row, below the longest words", "[layout]") {
  const Result r =
      layOut({section("Wear", true),
              box(Callout::Signs, "",
                  {list(Mark::Dash, {"**Set up, clear and cover, mask and pack down the whole site** {sign}",
                                     "**Sand** {sign}", "**Oil** {sign}"})})});
  const auto signs = shapesOf(r.dump, "fill #005387");
  REQUIRE(signs.size() == 3);
  CHECK(signs[1].y == signs[0].y);
  CHECK(signs[2].y == signs[0].y);
}

TEST_CASE("signs of what to wear are smaller only where a row would not fit its column", "[layout]") {
  const auto heightOf = [](const char* item) {
    const Result r = layOut({box(Callout::Signs, "", {list(Mark::Dash, {item})})});
    return shapesOf(r.dump, "fill #005387").at(0).h;
  };
  CHECK(heightOf("**Wash** {sign}{sign}{sign}") == near(10.5 * 72 / 25.4).margin(0.01));
  CHECK(heightOf("**Sand** {sign}{sign}{sign}{sign}{sign}") == near(9 * 72 / 25.4).margin(0.01));
}
