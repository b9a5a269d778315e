// Words nobody planned for: names of 300 letters, no space in them, in every place a page has.
#include "layout_sample.h"
#include "near.h"
#include "page_checks.h"

#include <catch2/catch.hpp>

using namespace sample;
using markup::Callout;
using markup::Mark;
using typeset::Dim;

namespace {

std::string many(const std::string& s, int n) {
  std::string out;
  for (int i = 0; i < n; ++i) out += s;
  return out;
}

/// Every kind of block, with the name in each place that a name can come to.
markup::Blocks documentWith(const std::string& name) {
  return {
      title(name),
      paragraph("*" + name + "*"),
      box(Callout::Letter, "", {list(Mark::Dash, {"**For** " + name, "**" + name + "** Mon", "**a** b"})}),
      box(Callout::Figures, "", {list(Mark::Dash, {"**$8,686.10** " + name, "**" + name + "** on site"})}),
      section(name),
      paragraph(name + " and " + name),
      box(Callout::Side, "", {paragraph(name)}),
      section("Price", true),
      table("l4 l8 r3", " | work | amount",
            {name + " | wash | 1.00", " | " + name + " | 2.00", " | oil | " + name}),
      box(Callout::Totals, "", {table("l3 r3", "", {name + " | 3.00", "**Total** | **3.00**"})}),
      section(name, true),
      table("l4 l4 l4 r3", name + " | " + name + " | c | d", {"a | b | " + name + " | 1.00"}),
      section("Signs", true),
      box(Callout::Signs, "",
          {list(Mark::Dash, {"{sign} **" + name + "** 22 min", "{sign} **111** " + name, "{sign} **b** c"})}),
      box(Callout::Signs, "", {list(Mark::Dash, {"**" + name + "** {sign}{sign}", "**Sand** {sign}"})}),
      box(Callout::Warning, name, {paragraph(name), paragraph(name)}),
      box(Callout::Note, name, {paragraph(name)}),
      section("Included"),
      box(Callout::Columns, "",
          {paragraph("**" + name + "**"), list(Mark::Dash, {name}), paragraph("**Not in the price**"),
           list(Mark::Cross, {name})}),
      list(Mark::Number, {name, "two"}),
      table("l2 l1", "", {name + " ____ | ____", "____ " + name + " | ____ Date"}),
      table("l1 l1", "", {name + " | " + name, "key | value"})};
}

const std::string harbour =
    "The Very Old and Honourable Brindle Harbour Company of Deck and Stair Keepers";  // 77 letters

const std::vector<std::string> awkward = {harbour, many("abcdefghij", 30), many("WM", 150),
                                          many("Tallow Point ", 23) + "W", many("\u00C4\u00D6\u0150", 100)};

}  // namespace

TEST_CASE("no word leaves its page or prints over another, however long it is", "[layout][awkward]") {
  const auto look = theme();
  for (const std::string& name : awkward)
    for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
      typeset::Furniture around = furniture();
      around.firm = around.where = around.jobLabel = around.footLeft = name;
      around.firmLines = {name, name, name};
      for (const bool hasLetterhead : {true, false}) {
        const Result r = layOut(documentWith(name), hasLetterhead, paper, around);
        INFO(name.substr(0, 20) << (hasLetterhead ? " with" : " without") << " letterhead");
        CHECK(r.messages.ok());
        const bool isLetter = paper == model::Paper::Letter;
        const Dim left = Dim::mm(20) + (isLetter ? (Dim::pt(612) - Dim::mm(210)) / 2 : Dim{});
        CHECK(checks::overlaps(r.document) == std::vector<std::string>{});
        CHECK(checks::outside(r.document, left, left + Dim::mm(166)) == std::vector<std::string>{});
        const Dim foot = r.document.pages[0].size.h - Dim::milli(look.bottom) + Dim::pt(2);
        CHECK(checks::overFurniture(r.document, Dim::milli(look.top), foot) == std::vector<std::string>{});
      }
    }
}

TEST_CASE("a long name of the firm takes two lines, then smaller type", "[layout][awkward]") {
  const auto sizeOf = [](const std::string& firm) {
    typeset::Furniture around = furniture();
    around.firm = firm;
    double size = 0;
    std::string all;
    for (const Words& w : wordsOf(layOut({title("T")}, true, model::Paper::A4, around).dump))
      if (w.page == 1 && w.y <= 66 && w.x < 300) {
        size = w.size;
        all += (all.empty() ? "" : " ") + w.text;
      }
    CHECK(all == firm);
    return size;
  };
  CHECK(sizeOf("Tallowback Deck Care") == 18);
  CHECK(sizeOf("Tallowback Deck and Stair Care of Brindle") == 15);
  CHECK(sizeOf("Tallowback Deck and Stair Care of Brindle Harbour Company") == 12);
}

TEST_CASE("a name too long for the running head ends in an ellipsis", "[layout][awkward]") {
  typeset::Furniture around = furniture();
  around.firm = harbour;
  around.where = harbour;
  const Result r = layOut({title("T"), pageBreak(), paragraph("x")}, true, model::Paper::A4, around);
  int cut = 0;
  for (const Words& w : wordsOf(r.dump))
    cut += w.page == 2 && w.y == near(42) && w.text.find("\u2026") == w.text.size() - 3;
  CHECK(cut == 2);
}

TEST_CASE("a title taller than a page goes on over the next ones, whole", "[layout][awkward]") {
  const std::string name = many("Kettle ", 400);
  const Result r = layOut({title(name), paragraph("after")}, true);
  CHECK(r.document.pages.size() > 1);
  std::size_t count = 0;
  for (const Words& w : wordsOf(r.dump))
    for (std::size_t at = w.role == "H1" ? w.text.find("Kettle") : std::string::npos; at != std::string::npos;
         at = w.text.find("Kettle", at + 1))
      ++count;
  CHECK(count == 400);
  CHECK(checks::overlaps(r.document) == std::vector<std::string>{});
  REQUIRE(r.messages.all().size() == 1);
  CHECK(r.messages.all()[0].message == "this is taller than a page and was broken");
}

TEST_CASE("what is one piece but taller than a page goes on over the next ones, whole", "[layout][awkward]") {
  const Result r = layOut(
      {box(Callout::Letter, "", {list(Mark::Dash, {"**For** " + many("Kettle ", 600), "**Until** Wed"})}),
       paragraph("after")});
  std::size_t count = 0;
  for (const Words& w : wordsOf(r.dump))
    for (std::size_t at = w.text.find("Kettle"); at != std::string::npos; at = w.text.find("Kettle", at + 1))
      count += w.role != "-";
  CHECK(count == 600);
  CHECK(checks::overlaps(r.document) == std::vector<std::string>{});
  const Dim foot = r.document.pages[0].size.h - Dim::milli(theme().bottom) + Dim::pt(2);
  CHECK(checks::overFurniture(r.document, Dim::pt(70), foot) == std::vector<std::string>{});
}
