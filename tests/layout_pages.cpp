// Pages: margins, heads that repeat, what stays together, what is never lost.
#include "layout_sample.h"
#include "near.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace sample;
using markup::Callout;
using markup::Mark;

namespace {

// The grid of the sample theme in points: margin 20 mm, side 42, gutter 6, text 118.
constexpr double left = 56.69, textX = 192.76, right = 527.24, bottom = 798.0;

std::vector<std::string> rows(int count) {
  std::vector<std::string> out;
  for (int i = 0; i < count; ++i)
    out.push_back("Deck " + std::to_string(i) + " | Wash and rinse | " + std::to_string(i) + ".50");
  return out;
}

std::string repeated(const std::string& s, int n) {
  std::string out;
  for (int i = 0; i < n; ++i) out += s;
  return out;
}

}  // namespace

TEST_CASE("nothing is set outside the margins", "[layout]") {
  markup::Blocks blocks = {
      title("A title that is long enough to need a second line in the text column"),
      paragraph("*an introduction that is all emphasis*"),
      box(Callout::Figures, "", {list(Mark::Dash, {"**$8,686.10** to pay in all", "**4 days** on site"})})};
  for (int i = 0; i < 12; ++i) {
    blocks.push_back(section("A head that breaks in the side column"));
    blocks.push_back(paragraph(repeated("Weathered hardwood with open pores along the shore. ", 9)));
    blocks.push_back(list(Mark::Number, {"Wash and rinse.", repeated("Sand with 60, then 80 grit. ", 6)}));
    blocks.push_back(table("l5 l5 r2", "what | how | litres", rows(6)));
  }
  blocks.push_back(box(
      Callout::Warning, "Rags set themselves alight.",
      {paragraph("It can happen hours later."), paragraph(repeated("Spread used rags flat outdoors. ", 9))}));
  for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
    const Result r = layOut(blocks, true, paper);
    const bool isLetter = paper == model::Paper::Letter;
    const double shift = isLetter ? (612 - 595.276) / 2 : 0, lowest = isLetter ? 749.0 : bottom;
    CHECK(r.document.pages.size() > 3);
    for (const Words& w : wordsOf(r.dump)) {
      INFO(w.text);
      CHECK(w.x >= left + shift - 0.02);
      CHECK(w.x + w.width <= right + shift + 0.02);
      const std::vector<std::string> firm = furniture().firmLines;  // in the letterhead
      if (w.role == "-" || std::find(firm.begin(), firm.end(), w.text) != firm.end()) continue;
      CHECK(w.y <= lowest);
      CHECK(w.y >= 70.0);
    }
    CHECK(r.messages.all().empty());
  }
}

TEST_CASE("the head of a table stands again on every page it reaches", "[layout]") {
  const Result r = layOut({section("Price", true), table("l4 l8 r3", " | work | amount", rows(90))});
  REQUIRE(r.document.pages.size() >= 3);
  for (int page = 1; page <= static_cast<int>(r.document.pages.size()); ++page) {
    int heads = 0;
    for (const Words& w : wordsOf(r.dump)) {
      if (w.page != page || w.text != "amount") continue;
      ++heads;
      // The first belongs to the table; the others are decoration to a reader of tags.
      CHECK(w.role == (page == 1 ? "TH" : "-"));
      CHECK(w.y == near(80.5));
    }
    CHECK(heads == 1);
  }
}

TEST_CASE("no row of a table is lost or set twice, and thousands of rows come to an end", "[layout]") {
  const Result r = layOut({section("Price", true), table("l4 l8 r3", " | work | amount", rows(5000))});
  std::multiset<std::string> seen;
  for (const Words& w : wordsOf(r.dump)) seen.insert(w.text);
  for (int i = 0; i < 5000; ++i) REQUIRE(seen.count("Deck " + std::to_string(i)) == 1);
  // Rows of 14 pt every 21 from 91 to 798: 34 a page, 5000 / 34 = 147.06.
  CHECK(r.document.pages.size() == 148);
}

TEST_CASE("a table's head keeps two rows with it", "[layout]") {
  for (int lines = 20; lines < 52; ++lines) {
    markup::Blocks blocks;
    for (int i = 0; i < lines / 2; ++i) blocks.push_back(paragraph("One line."));
    blocks.push_back(section("Price", true));
    blocks.push_back(table("l4 l8 r3", " | work | amount", rows(60)));
    const Result r = layOut(blocks);
    const Words head = find(r.dump, "Price"), second = find(r.dump, "Deck 1");
    CHECK(head.page == second.page);
  }
}

TEST_CASE("a section marked whole goes over to the next page with its title", "[layout]") {
  for (int lines = 20; lines < 52; ++lines) {
    markup::Blocks blocks;
    for (int i = 0; i < lines; ++i) blocks.push_back(paragraph("One line."));
    blocks.push_back(title("Tuesday"));
    blocks.push_back(section("Work", true));
    std::get<markup::Heading>(blocks.back().node).isWhole = true;
    blocks.push_back(table("l4 l8 r3", " | work | amount", rows(20)));
    const Result r = layOut(blocks);
    CHECK(find(r.dump, "Tuesday").page == find(r.dump, "Deck 19").page);
  }
}

TEST_CASE("a short group of rows is not torn by a page break", "[layout]") {
  std::vector<std::string> lines;
  for (int deck = 0; deck < 30; ++deck) {
    for (const char* work : {"wash", "sand", "oil"}) {
      const std::string name = "D" + std::to_string(deck);
      lines.push_back((work == std::string("wash") ? name : "") + " | " + work + name + " | 1.00");
    }
  }
  const Result r = layOut({section("Price", true), table("l4 l8 r3", " | work | amount", lines)});
  for (int deck = 0; deck < 30; ++deck) {
    const std::string name = "D" + std::to_string(deck);
    CHECK(find(r.dump, "wash" + name).page == find(r.dump, "oil" + name).page);
  }
}

TEST_CASE("totals stay with the last row of the table before them", "[layout]") {
  for (int n = 20; n < 40; ++n) {
    const Result r =
        layOut({section("Price", true), table("l4 l8 r3", " | work | amount", rows(n)),
                box(Callout::Totals, "",
                    {table("l3 r3", "", {"Sum | 7,553.13", "Tax | 1,132.97", "**Total** | **8,686.10**"})})});
    const Words last = find(r.dump, "Deck " + std::to_string(n - 1));
    const Words sum = find(r.dump, "Sum"), total = find(r.dump, "8,686.10");
    INFO(n);
    CHECK(last.page == sum.page);
    CHECK(sum.page == total.page);
    CHECK(last.y < sum.y);
    CHECK(total.x + total.width == near(right).margin(0.02));
  }
}

TEST_CASE("a head never stands alone at the foot of a page", "[layout]") {
  for (int n = 10; n < 60; ++n) {
    markup::Blocks blocks;
    for (int i = 0; i < n; ++i) blocks.push_back(paragraph("One line of text."));
    blocks.push_back(section("Weather"));
    blocks.push_back(
        paragraph("First " + repeated("we coat dry boards between ten and thirty degrees ", 60)));
    const Result r = layOut(blocks);
    const Words head = find(r.dump, "Weather");
    int lines = 0;
    for (const Words& w : wordsOf(r.dump))
      lines += w.page == head.page && w.x > textX - 1 && w.y >= head.y && w.role == "P";
    CHECK(lines >= 2);
  }
}

TEST_CASE("a paragraph leaves two lines on either side of a page break", "[layout]") {
  for (int n = 20; n < 40; ++n) {
    markup::Blocks blocks;
    for (int i = 0; i < n; ++i) blocks.push_back(paragraph("One line of text."));
    blocks.push_back(paragraph(repeated("timber ", 80)));
    const Result r = layOut(blocks);
    std::map<int, int> lines;
    for (const Words& w : wordsOf(r.dump)) lines[w.page] += w.text.rfind("timber", 0) == 0;
    for (const auto& [page, count] : lines) CHECK(count != 1);
  }
}

TEST_CASE("figures stand on their decimal mark", "[layout]") {
  const Result r = layOut({section("Price"), table("l6 r3", "what | litres",
                                                   {"a | 74.87", "b | 5", "c | 27.5", "d | 1,265.00"})});
  const auto digitsEnd = [&](const std::string& text, int decimals) {
    const Words w = find(r.dump, text);
    const double digit = 10.5 * 0.507;  // of Carlito, as wide as every other digit: 1038 of 2048 units
    const double mark = 10.5 * 0.252;   // 517 of 2048 units
    return w.x + w.width - (decimals > 0 ? decimals * digit + mark : 0);
  };
  const double at = digitsEnd("74.87", 2);
  CHECK(digitsEnd("5", 0) == near(at).margin(0.06));
  CHECK(digitsEnd("27.5", 1) == near(at).margin(0.06));
  CHECK(digitsEnd("1,265.00", 2) == near(at).margin(0.06));
  const Words money = find(r.dump, "1,265.00");
  CHECK(money.x + money.width == near(right).margin(0.02));
}

TEST_CASE("no cell wraps while white moved from another column would save lines", "[layout]") {
  // Shares by weight alone would leave the last column 3 of 12 parts, too narrow for its words.
  std::vector<std::string> lines(5, " | set up | 0.5 h x 9 days | 4.50 person-hours of two");
  lines.push_back("labour | days | the work laid into the working hours from half past seven to four | 9");
  const Result r =
      layOut({section("A", true), table("l4 l3 l6 l3", " | figure | formula | comes to", lines)});
  int whole = 0;
  for (const Words& w : wordsOf(r.dump)) whole += w.text == "4.50 person-hours of two";
  CHECK(whole == 5);
}

TEST_CASE("where heads and short cells cannot all stay whole, heads wrap", "[layout]") {
  const Result r =
      layOut({section("Read and understood"),
              table("l2 l1 l1 l1 l1 l1 l1",
                    "name | Tue 16 Mar | Wed 17 Mar | Thu 18 Mar | Fri 19 Mar | Mon 22 Mar | Tue 23 Mar",
                    {"Mara Quill | ____ | ____ | ____ | ____ | ____ | ____",
                     "Tem Harrowby | ____ | ____ | ____ | ____ | ____ | ____"})});
  CHECK(find(r.dump, "Mara Quill").page == 1);
  CHECK(find(r.dump, "Tem Harrowby").page == 1);
  CHECK(find(r.dump, "16 Mar").page == 1);
}

TEST_CASE("a short last line becomes as long as the breaks tried can make it", "[layout]") {
  // 'cedar at' is shorter than a sixth of the column, but longer than 'at'.
  for (int n = 10; n < 80; ++n)
    for (const std::string middle : {"", "a ", "ash ", "larch ", "spruce ", "balau, ", "robinia "}) {
      const Result r = layOut({paragraph(repeated("oak ", n) + middle + "cedar at")});
      INFO(n << " " << middle);
      CHECK(find(r.dump, "at").page == 0);
    }
}

TEST_CASE("a paragraph does not end with a lonely short word when it can be helped", "[layout]") {
  const Result r = layOut(
      {section("A"), paragraph("I accept quote LA-2027-031 of 2 March 2027 with the options ticked above.")});
  CHECK(find(r.dump, "above.").page == 0);
  CHECK(find(r.dump, "ticked above.").page + find(r.dump, "options ticked above.").page == 1);
}

TEST_CASE("a word of 300 letters is wholly there and inside its column", "[layout]") {
  const std::string word = repeated("abcdefghij", 30);
  for (const bool isCell : {false, true}) {
    const Result r =
        isCell ? layOut({section("A"), table("l1 l1 r1", "x | y | z", {"one | " + word + " | 1.00"})})
               : layOut({section("A"), paragraph("before " + word + " after")});
    std::string found;
    for (const Words& w : wordsOf(r.dump))
      if ((w.role == "P" || w.role == "TD") && w.text != "one" && w.text != "1.00") {
        found += w.text;
        CHECK(w.x >= textX - 0.02);
        CHECK(w.x + w.width <= right + 0.02);
      }
    CHECK(found.find(word) != std::string::npos);
  }
}

TEST_CASE("a space that does not break keeps its words on one line", "[layout]") {
  for (int n = 1; n < 40; ++n) {
    const Result r = layOut({section("A"), paragraph(repeated("ab ", n) + "10\u00A0L of oil for the deck")});
    int found = 0;
    for (const Words& w : wordsOf(r.dump)) found += w.text.find("10\u00A0L") != std::string::npos;
    CHECK(found == 1);
  }
}

TEST_CASE("sections stand on whole lines of the page", "[layout]") {
  const Result r =
      layOut({title("Title"), section("A"), box(Callout::Side, "", {paragraph("a note / of three / lines")}),
              paragraph("One line."), section("B"),
              table("l6 r3", "what | litres", {"a | 74.87", "b | 5.00"}), section("C"), paragraph("Two.")});
  for (const char* head : {"A", "B", "C"}) {
    const double y = find(r.dump, head).y;
    const double lines = (y - 80.5) / 14;
    INFO(head);
    CHECK(lines == near(static_cast<int>(lines + 0.5)).margin(0.001));
  }
  CHECK(find(r.dump, "One line.").y == find(r.dump, "A").y);
}

TEST_CASE("what is taller than a page is broken with a warning", "[layout]") {
  markup::Blocks body;
  for (int i = 0; i < 80; ++i) body.push_back(paragraph("One line of text."));
  const Result r = layOut({section("A"), box(Callout::Keep, "", body)});
  CHECK(r.document.pages.size() == 3);  // 80 lines and 79 half lines, 52 lines on a page
  REQUIRE(r.messages.all().size() == 1);
  CHECK(base::format(r.messages.all()[0]) ==
        "quote.md:1: warning: this is taller than a page and was broken\n"
        "  hint: make it shorter, or let it break at a place of your own\n");
}

TEST_CASE("a letter that no face has is told with its place", "[layout]") {
  const Result r = layOut({paragraph("A smile: \U0001F9FF and again \U0001F9FF")});
  REQUIRE(r.messages.all().size() == 1);
  CHECK(base::format(r.messages.all()[0]) ==
        "quote.md:1: warning: no face has the letter U+1F9FF\n"
        "  hint: name a font that has it among the theme's 'fallback' faces\n");
}

TEST_CASE("an unknown drawing is a mistake with the nearest name", "[layout]") {
  const Result r = layOut({figure("plam")});
  CHECK_FALSE(r.messages.ok());
  CHECK(base::format(r.messages.all()[0]) ==
        "quote.md:1: error: 'plam' is not a known drawing; did you mean 'plan'?\n"
        "  hint: write figure:plan\n");
  CHECK(find(r.dump, "a drawing").page == 1);  // its words stand for it
}

TEST_CASE("a document without blocks is one page with head and foot", "[layout]") {
  const Result r = layOut({});
  REQUIRE(r.document.pages.size() == 1);
  CHECK(find(r.dump, "page 1 of 1").role == "-");
}

TEST_CASE("page breaks do not leave empty pages", "[layout]") {
  const Result r =
      layOut({pageBreak(), paragraph("One."), pageBreak(), pageBreak(), paragraph("Two."), pageBreak()});
  CHECK(r.document.pages.size() == 2);
  CHECK(find(r.dump, "Two.").page == 2);
}
