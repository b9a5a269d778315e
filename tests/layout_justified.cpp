// Text set to both margins.
#include "layout_sample.h"

#include <catch2/catch.hpp>

#include <map>

using namespace sample;
using typeset::Dim;

namespace {

model::Theme justified() {
  model::Theme look = theme();
  look.styles["body"].isJustified = true;
  return look;
}

const std::string running =
    "Weathered hardwood with open pores drinks more than new boards do, and it drinks unevenly. We wash the "
    "deck, let "
    "it dry until the meter reads eighteen or less, then sand along the boards, edges and corners by hand, "
    "and blow "
    "everything clean. The first coat is laid on two boards at a time so that no lap dries before the next "
    "one meets "
    "it; what still stands after a quarter of an hour is wiped off. The second coat follows while the first "
    "has set.";

struct Line {
  std::vector<const typeset::TextRun*> runs;
  Dim begin, end;
};

/// The lines of body type on the first page, from the top.
std::vector<Line> linesOf(const typeset::Document& document) {
  std::map<Dim, Line> lines;
  for (const typeset::Item& item : document.pages[0].items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what);
        run && run->size == Dim::milli(10'500) && item.tag > 0)
      lines[run->baseline.y].runs.push_back(run);
  std::vector<Line> out;
  for (auto& [y, line] : lines) {
    line.begin = line.runs.front()->baseline.x;
    line.end = line.runs.back()->baseline.x + line.runs.back()->width;
    out.push_back(line);
  }
  return out;
}

}  // namespace

TEST_CASE("justified lines meet both margins to a count and the last one keeps its own length", "[layout]") {
  const Result r = layOutIn(justified(), {title("A title"), paragraph(running)});
  const auto lines = linesOf(r.document);
  REQUIRE(lines.size() >= 6);
  const Dim left =
      Dim::milli(56'693) + Dim::milli(119'055) + Dim::milli(17'008);  // margin, side column, gutter
  const Dim width = Dim::milli(334'488);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    INFO("line " << i + 1);
    CHECK(lines[i].begin.raw == left.raw);
    if (i + 1 < lines.size()) CHECK(lines[i].end.raw == (left + width).raw);
    else CHECK(lines[i].end < left + width);
  }
}

TEST_CASE("the white between justified words is shrunk by a third and doubled at most", "[layout]") {
  const Result r = layOutIn(justified(), {title("A title"), paragraph(running)});
  const auto fonts = typeset::readFonts(theme());
  const auto lines = linesOf(r.document);
  std::size_t compared = 0;
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (const typeset::TextRun* run : lines[i].runs) {
      if (!run->text.ends_with(' ')) continue;
      typeset::StyledText span = typeset::spanIn(theme(), "body", run->text);
      const Dim natural = typeset::width(fonts, span);
      span.text = " ";
      const Dim space = typeset::width(fonts, span);
      INFO("'" << run->text << "' in line " << i + 1);
      if (i + 1 == lines.size()) CHECK(std::abs((run->width - natural).raw) <= 2);
      CHECK(run->width >= natural - space / 3 - Dim{2});
      CHECK(run->width <= natural + space + Dim{2});
      ++compared;
    }
  CHECK(compared > 40);
}

TEST_CASE("a line of one long word, a narrow column and a ragged style are not spread", "[layout]") {
  const Result ragged = layOutIn(theme(), {title("A title"), paragraph(running)});
  std::size_t met = 0;
  for (const Line& line : linesOf(ragged.document))
    met += line.end == Dim::milli(56'693 + 119'055 + 17'008 + 334'488);
  CHECK(met == 0);
  CHECK(linesOf(ragged.document).front().runs.size() == 1);  // one run a line
  const std::string word(120, 'a');
  const Result lone =
      layOutIn(justified(), {title("A title"), paragraph("It is " + word + " and no other.")});
  CHECK(lone.messages.all().empty());
  model::Theme narrow = justified();
  narrow.textWidth = 150'000;
  for (const Line& line : linesOf(layOutIn(narrow, {title("A title"), paragraph(running)}).document))
    CHECK(line.runs.size() == 1);
}

TEST_CASE("columns of 60 mm and more are spread") {
  model::Theme medium = justified();
  medium.textWidth = 198'425;  // 70 mm
  int spread = 0;
  for (const Line& line : linesOf(layOutIn(medium, {title("A title"), paragraph(running)}).document))
    spread += line.runs.size() > 1 ? 1 : 0;
  CHECK(spread > 5);
}

TEST_CASE("a line whose spaces would become more than twice as wide is not spread") {
  // Short words, then one that needs a line of its own.
  const Dim width = Dim::milli(334'488);
  const auto fonts = typeset::readFonts(theme());
  const typeset::StyledText blank = typeset::spanIn(theme(), "body", " ");
  const Dim space = typeset::width(fonts, blank);
  int spread = 0, left = 0;
  for (int count = 4; count < 20; ++count) {
    std::string words;
    for (int i = 0; i < count; ++i) words += "deck ";
    const auto blocks = {title("A title"), paragraph(words + std::string(60, 'a') + " ends.")};
    const auto natural = linesOf(layOutIn(theme(), blocks).document).front();
    const auto line = linesOf(layOutIn(justified(), blocks).document).front();
    const Dim slack = width - (natural.end - natural.begin);
    if (slack < space * (count - 1)) {
      CHECK(line.end - line.begin == width);
      ++spread;
    } else if (slack < space * (count - 1) * 4) {
      CHECK(line.end - line.begin < width);
      ++left;
    }
  }
  CHECK((spread > 0 && left > 0));
}

TEST_CASE("justified text is copied out with its spaces", "[layout]") {
  const Result r = layOutIn(justified(), {title("A title"), paragraph(running)});
  std::string text;
  for (const Line& line : linesOf(r.document)) {
    for (const typeset::TextRun* run : line.runs) text += run->text;
    text += ' ';
  }
  CHECK(text == running + " ");
}
