// The pages of the example packs, measured in their display lists.
#include "app/pack/documents.h"
#include "example_jobs.h"
#include "firm_jobs.h"
#include "page_checks.h"
#include "typeset/face.h"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <regex>
#include <set>

using typeset::Dim;
using typeset::Role;

namespace {

struct Sheet {
  std::string name;      // 'landing quote, compact on A4'
  std::string document;  // 'quote'
  model::Theme theme;
  typeset::Document pages;
};

/// All documents of all examples in both themes and on both papers, on A4 in Spanish too; made once.
const std::vector<Sheet>& allSheets() {
  static const std::vector<Sheet> all = [] {
    std::vector<Sheet> made;
    app::Choices choices;
    const app::Shipped shipped = app::readShipped();
    for (const std::string theme : {"generous", "compact"})
      for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
        choices.theme = theme;
        choices.paper = paper;
        // Spanish words are longer: what would not fit in a table or a drawing shows there first.
        choices.languages.clear();
        if (paper == model::Paper::A4) choices.languages = {"en", "es"};
        for (const auto& job : examples::jobs()) {
          base::Diagnostics messages;
          const auto x = firm_jobs::compute(job.string(), choices, messages);
          REQUIRE(x);
          REQUIRE(x->c.theme.name == theme);
          const auto usual = app::usualTheme(shipped, messages);
          for (auto& [name, pages] : app::setDocuments(*x, shipped, choices, {}, messages)) {
            const bool isStanding = name.starts_with("safety") || name.starts_with("dayplan");
            made.push_back({examples::nameOf(job) + " " + name + ", " + theme +
                                (paper == model::Paper::A4 ? " on A4" : " on Letter"),
                            name, isStanding ? usual : x->c.theme, std::move(pages)});
          }
          for (const base::Diagnostic& d : messages.all()) FAIL(base::format(d));
        }
      }
    return made;
  }();
  return all;
}

/// The paragraph, item or cell that an element of a line belongs to.
int blockOf(const typeset::Document& document, int tag) {
  while (tag > 0) {
    const typeset::Tag& t = document.tags[static_cast<std::size_t>(tag)];
    if (t.role != Role::Link && t.role != Role::Span && t.role != Role::Figure) break;
    tag = t.parent;
  }
  return tag;
}

struct Line {
  std::size_t page = 0;
  Dim y, left, size;
  std::size_t face = 0;
  std::string text;
};

/// The lines of each block in reading order, without the words inside drawings.
std::map<int, std::vector<Line>> linesByBlock(const typeset::Document& document) {
  std::map<int, std::vector<Line>> blocks;
  for (std::size_t p = 0; p < document.pages.size(); ++p)
    for (const typeset::Item& item : document.pages[p].items) {
      const auto* run = std::get_if<typeset::TextRun>(&item.what);
      if (!run || item.tag <= 0 || document.tags[static_cast<std::size_t>(item.tag)].role == Role::Figure)
        continue;
      auto& lines = blocks[blockOf(document, item.tag)];
      if (lines.empty() || lines.back().page != p || lines.back().y != run->baseline.y)
        lines.push_back({p, run->baseline.y, run->baseline.x, run->size, run->face, ""});
      lines.back().text += run->text;
    }
  return blocks;
}

std::size_t letters(const std::string& text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

/// Relative luminance and contrast: Web Content Accessibility Guidelines 2.1, 2018, 'relative luminance' and
/// 'contrast ratio'.
double luminance(typeset::Colour c) {
  const auto linear = [](std::uint8_t v) {
    const double s = v / 255.0;
    return s <= 0.03928 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}
double contrast(typeset::Colour a, typeset::Colour b) {
  const double x = luminance(a), y = luminance(b);
  return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

/// Inside by the even-odd rule; curves are taken as their chords.
bool holds(const typeset::Path& path, typeset::Point at) {
  bool isInside = false;
  typeset::Point begin, last;
  const auto side = [&](typeset::Point a, typeset::Point b) {
    if ((a.y > at.y) == (b.y > at.y)) return;
    const double x = static_cast<double>(a.x.raw) + static_cast<double>(b.x.raw - a.x.raw) *
                                                        static_cast<double>(at.y.raw - a.y.raw) /
                                                        static_cast<double>(b.y.raw - a.y.raw);
    if (static_cast<double>(at.x.raw) < x) isInside = !isInside;
  };
  for (const typeset::Step& step : path.steps) {
    if (step.kind == typeset::Step::Kind::Move || step.kind == typeset::Step::Kind::Close) {
      side(last, begin);
      last = begin;
    }
    if (step.kind == typeset::Step::Kind::Move) begin = last = step.to;
    if (step.kind == typeset::Step::Kind::Line || step.kind == typeset::Step::Kind::Curve) {
      side(last, step.to);
      last = step.to;
    }
  }
  side(last, begin);
  return isInside;
}

/// The colour under a point: of the last filled shape drawn there before this item; the paper's white.
typeset::Colour groundUnder(const typeset::Page& page, const typeset::Item* item, typeset::Point at) {
  typeset::Colour ground{255, 255, 255};
  for (const typeset::Item& below : page.items) {
    if (&below == item) break;
    if (const auto* path = std::get_if<typeset::Path>(&below.what); path && path->fill && holds(*path, at))
      ground = *path->fill;
  }
  return ground;
}

}  // namespace

TEST_CASE("reading lines of the examples hold 45 to 90 letters", "[pages]") {
  // Robert Bringhurst: The Elements of Typographic Style, 2.1.2: 45 to 75 letters, up to 90 at most (from
  // memory). Lines of body type in the text column, without the last of each paragraph.
  std::size_t all = 0, good = 0;
  std::string others;
  for (const Sheet& sheet : allSheets()) {
    const Dim body = Dim::milli(sheet.theme.styles.at("body").size);
    const auto serif = typeset::FontFace::read(sheet.theme.faces.at(model::Face::Text));
    const Dim textX = (sheet.pages.pages[0].size.w - Dim::mm(210)) / 2 + Dim::milli(sheet.theme.marginLeft) +
                      Dim::milli(sheet.theme.sideWidth) + Dim::milli(sheet.theme.gutter);
    for (const auto& [block, lines] : linesByBlock(sheet.pages)) {
      const Role role = sheet.pages.tags[static_cast<std::size_t>(block)].role;
      if (role != Role::P && role != Role::LBody) continue;
      for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        if (lines[i].size != body || lines[i].left + Dim::pt(1) < textX ||
            sheet.pages.faces[lines[i].face]->postscriptName() != serif->postscriptName())
          continue;
        const std::size_t count = letters(lines[i].text);
        ++all;
        good += count >= 45 && count <= 90;
        if (count < 45 || count > 90)
          others += sheet.name + ", " + std::to_string(count) + ": " + lines[i].text + "\n";
      }
    }
  }
  INFO(others);
  CHECK(all > 100);
  CHECK(good * 100 >= all * 95);
}

TEST_CASE("no paragraph of the examples leaves a single line on a page", "[pages]") {
  for (const Sheet& sheet : allSheets())
    for (const auto& [block, lines] : linesByBlock(sheet.pages)) {
      std::map<std::size_t, std::size_t> onPage;
      for (const Line& line : lines) ++onPage[line.page];
      if (onPage.size() < 2) continue;
      for (const auto& [page, count] : onPage) {
        INFO(sheet.name << ", page " << page + 1 << ": " << lines.front().text);
        CHECK(count >= 2);
      }
    }
}

TEST_CASE("no head of the examples stands at the foot of a page without its matter", "[pages]") {
  for (const Sheet& sheet : allSheets())
    for (const typeset::Page& page : sheet.pages.pages) {
      Dim head, matter;
      for (const typeset::Item& item : page.items) {
        const auto* run = std::get_if<typeset::TextRun>(&item.what);
        const Dim foot = page.size.h - Dim::milli(sheet.theme.bottom) + Dim::pt(2);
        if (!run || item.tag <= 0 || run->baseline.y > foot) continue;
        const bool isHead = sheet.pages.tags[static_cast<std::size_t>(item.tag)].role == Role::H2;
        Dim& lowest = isHead ? head : matter;
        lowest = std::max(lowest, run->baseline.y);
      }
      INFO(sheet.name);
      CHECK(matter + Dim::pt(1) >= head);
    }
}

TEST_CASE("amounts in one column of a table end on one vertical", "[pages]") {
  // Columns of amounts only: one of words and amounts is set from the left.
  const std::regex number("[^0-9]{0,3}[0-9][0-9,]*(\\.[0-9]+)?"),
      amount("[^0-9]{0,3}[0-9][0-9,]*\\.[0-9]{2}");
  std::size_t compared = 0;
  for (const Sheet& sheet : allSheets()) {
    const typeset::Document& d = sheet.pages;
    std::map<int, int> column, cells;  // of a cell: how many of its row stand before it; of a row: how many
    std::map<int, int> rowsBelow;      // of a table's body: those that the last row head still stands for
    for (std::size_t t = 0; t < d.tags.size(); ++t)
      if (d.tags[t].role == Role::TR && rowsBelow[d.tags[t].parent]-- > 0) {
        cells[static_cast<int>(t)] = 1;  // the first column is a head's from above
      } else if (d.tags[t].role == Role::TD || d.tags[t].role == Role::TH) {
        column[static_cast<int>(t)] = cells[d.tags[t].parent]++;
        if (d.tags[t].rows > 1)
          rowsBelow[d.tags[static_cast<std::size_t>(d.tags[t].parent)].parent] = d.tags[t].rows - 1;
      }
    std::map<std::pair<int, int>, std::vector<const typeset::TextRun*>> columns;  // by table and number
    std::set<std::pair<int, int>> mixed;
    for (const typeset::Page& page : d.pages)
      for (const typeset::Item& item : page.items) {
        const auto* run = std::get_if<typeset::TextRun>(&item.what);
        if (!run || !column.contains(item.tag) || d.tags[static_cast<std::size_t>(item.tag)].role != Role::TD)
          continue;
        int table = item.tag;
        while (d.tags[static_cast<std::size_t>(table)].role != Role::Table)
          table = d.tags[static_cast<std::size_t>(table)].parent;
        const std::pair<int, int> place = {table, column[item.tag]};
        if (!std::regex_match(run->text, number)) mixed.insert(place);
        if (std::regex_match(run->text, amount)) columns[place].push_back(run);
      }
    for (const auto& [place, runs] : columns) {
      if (mixed.contains(place)) continue;
      const Dim end = runs.front()->baseline.x + runs.front()->width;
      for (const typeset::TextRun* run : runs) {
        const Dim own = run->baseline.x + run->width, apart = own > end ? own - end : end - own;
        INFO(sheet.name << ": " << runs.front()->text << " and " << run->text);
        CHECK(apart.raw <= Dim::pt(1).raw / 20);
        ++compared;
      }
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("the examples print nothing over anything else and nothing outside their margins", "[pages]") {
  for (const Sheet& sheet : allSheets()) {
    const typeset::Size paper = sheet.pages.pages[0].size;
    const Dim left = Dim::milli(sheet.theme.marginLeft) + (paper.w - Dim::mm(210)) / 2;
    const Dim right = left + Dim::milli(sheet.theme.sideWidth) + Dim::milli(sheet.theme.gutter) +
                      Dim::milli(sheet.theme.textWidth);
    INFO(sheet.name);
    CHECK(checks::overlaps(sheet.pages) == std::vector<std::string>{});
    CHECK(checks::outside(sheet.pages, left, right) == std::vector<std::string>{});
    CHECK(checks::hanging(sheet.pages, paper.h - Dim::milli(sheet.theme.bottom) + Dim::pt(2)) ==
          std::vector<std::string>{});
    CHECK(checks::overFurniture(sheet.pages, Dim::milli(sheet.theme.top) - Dim::milli(sheet.theme.unit),
                                paper.h - Dim::milli(sheet.theme.bottom) + Dim::pt(2)) ==
          std::vector<std::string>{});
  }
}

TEST_CASE("the examples have no type below 8 pt and none paler than 4.5 to 1", "[pages]") {
  // Contrast: Web Content Accessibility Guidelines 2.1, 2018, 1.4.3. Size: common practice for print.
  for (const Sheet& sheet : allSheets())
    for (const typeset::Page& page : sheet.pages.pages)
      for (const typeset::Item& item : page.items) {
        const auto* run = std::get_if<typeset::TextRun>(&item.what);
        if (!run || run->text.find_first_not_of(' ') == std::string::npos) continue;
        const checks::TextBox box = checks::boxOf(*run);
        const typeset::Point middle = {(box.left + box.right) / 2, (box.top + box.bottom) / 2};
        const double ratio = contrast(run->colour, groundUnder(page, &item, middle));
        INFO(sheet.name << ": " << run->text);
        if (run->size < Dim::pt(8)) CHECK(run->size.raw == Dim::pt(8).raw);
        if (ratio < 4.5) CHECK(ratio >= 4.5);
      }
}

TEST_CASE("an aftercare sheet is one sheet of two sides", "[pages]") {
  std::size_t sheets = 0, plans = 0;
  for (const Sheet& sheet : allSheets()) {
    if (!sheet.document.starts_with("aftercare")) continue;  // translations too
    INFO(sheet.name);
    CHECK(sheet.pages.pages.size() == 2);
    ++sheets;
    // The plan of the decks is told with its scale.
    for (const typeset::Tag& tag : sheet.pages.tags) {
      if (tag.alt.find(" 1:") != std::string::npos) ++plans;
    }
  }
  CHECK(plans >= sheets - 3);  // some full sheets have no room for it, on Letter or in Spanish
  CHECK(sheets >= 18);         // three examples, two themes, two papers, on A4 in Spanish too
}

TEST_CASE("no document of the examples ends with a page left nearly empty, a day plan has none at all",
          "[pages]") {
  for (const Sheet& sheet : allSheets()) {
    const auto& pages = sheet.pages.pages;
    for (std::size_t p = sheet.document == "dayplan" ? 0 : pages.size() - 1; p < pages.size(); ++p) {
      const Dim top = Dim::milli(sheet.theme.top), foot = pages[p].size.h - Dim::milli(sheet.theme.bottom);
      Dim lowest;
      for (const typeset::Item& item : pages[p].items)
        if (const auto* run = std::get_if<typeset::TextRun>(&item.what);
            run && item.tag > 0 && run->baseline.y < foot)
          lowest = std::max(lowest, run->baseline.y);
      INFO(sheet.name << ", page " << p + 1 << " of " << pages.size() << ": "
                      << (lowest - top).raw * 100 / (foot - top).raw << " %");
      CHECK((lowest - top) * 5 >= foot - top);
    }
  }
}
