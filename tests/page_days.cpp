// The day plans of the examples, in both themes and on both papers: what the crew reads on each side.
#include "app/pack/documents.h"
#include "app/pack/languages.h"
#include "example_jobs.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>

namespace {

/// Without spaces: words are cut into runs at them.
std::string packed(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool isFixedSpace = text.compare(i, 2, "\u00A0") == 0;
    if (isFixedSpace) ++i;
    else if (text[i] != ' ') out += text[i];
  }
  return out;
}

struct DayPlan {
  std::string name;  // 'landing, compact on A4'
  std::vector<sheets::Day> days;
  std::vector<std::vector<sheets::StripRow>> rows;  // of each day
  std::vector<std::string> dates;
  std::vector<std::string> pages;  // all their words, packed
  typeset::Document document;
  typeset::Colour accent;
};

std::string wordsOf(const typeset::Page& page) {
  std::string words;
  for (const auto& item : page.items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) words += run->text;
  return packed(words);
}

/// Hands each day plan to 'look', with the job it is made of still alive.
template <class Look>
void forEachDayPlan(Look look) {
  app::Choices choices;
  choices.languages = {"en"};
  const app::Shipped shipped = app::readShipped(choices);
  for (const std::string theme : {"generous", "compact"})
    for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
      choices.theme = theme;
      choices.paper = paper;
      for (const auto& job : examples::jobs()) {
        base::Diagnostics messages;
        const auto x = app::compute(job.string(), shipped, choices, messages);
        REQUIRE(x);
        const auto& computed = *x;
        const sheets::Formatter w(*computed.c.region, computed.language);
        DayPlan plan{
            examples::nameOf(job) + ", " + theme + (paper == model::Paper::A4 ? " on A4" : " on Letter"),
            sheets::daysOf(computed, w),
            {},
            {},
            {},
            {},
            x->c.theme.crewColours.at("accent")};
        for (const auto& day : plan.days) {
          plan.rows.push_back(sheets::stripRows(day, computed, w));
          plan.dates.push_back(packed(w.shortDate(day.date)));
        }
        for (auto& set : app::setDocuments(*x, shipped, choices, {"dayplan"}, messages))
          plan.document = std::move(set.pages);
        for (const auto& page : plan.document.pages) plan.pages.push_back(wordsOf(page));
        for (const base::Diagnostic& d : messages.all()) FAIL(base::format(d));
        INFO(plan.name);
        look(plan);
      }
    }
}

/// The page with these words; as many as there are pages: none.
std::size_t pageWith(const DayPlan& plan, const std::string& words) {
  std::size_t p = 0;
  while (p < plan.pages.size() && plan.pages[p].find(words) == std::string::npos) ++p;
  return p;
}

}  // namespace

TEST_CASE("a day with a coat begins a page, and so does the day after it", "[pages]") {
  bool hasShared = false;
  forEachDayPlan([&](const DayPlan& plan) {
    std::vector<std::size_t> pages;  // of the titles
    for (const typeset::Bookmark& mark : plan.document.bookmarks)
      if (mark.level == 1) pages.push_back(mark.page);
    REQUIRE(pages.size() == plan.days.size());
    for (std::size_t d = 1; d < plan.days.size(); ++d) {
      INFO(plan.dates[d]);
      const bool isAlone = !plan.days[d].coats.empty() || !plan.days[d - 1].coats.empty();
      if (isAlone) CHECK(pages[d] > pages[d - 1]);
      hasShared = hasShared || pages[d] == pages[d - 1];
    }
  });
  CHECK(hasShared);
}

TEST_CASE("every strip of a coating day is told with its number, its start and its litres", "[pages]") {
  std::size_t seen = 0;
  forEachDayPlan([&](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      std::size_t strips = 0, told = 0;
      for (const auto& coat : plan.days[d].coats) strips += coat.strips.size();
      if (strips == 0) continue;
      INFO(plan.dates[d]);
      const std::size_t page = pageWith(plan, "Stripsinorder," + plan.dates[d]);
      REQUIRE(page < plan.pages.size());
      for (const auto& row : plan.rows[d])
        for (const auto& s : row.strips) {
          INFO(s.number << " " << s.time << " " << s.litres);
          CHECK(plan.pages[page].find(packed(s.number + s.time + s.litres)) != std::string::npos);
          ++told;
        }
      CHECK(told == strips);  // those of a second coat on the same day, too
      seen += strips;
    }
  });
  CHECK(seen > 4 * 60);
}

TEST_CASE("a coating day is one sheet of two sides, with its log and lines for remarks on the back",
          "[pages]") {
  forEachDayPlan([](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.rows[d].empty()) continue;
      INFO(plan.dates[d]);
      const std::size_t back = pageWith(plan, "Stripsinorder," + plan.dates[d]);
      REQUIRE(back > 0);
      REQUIRE(back < plan.pages.size());
      CHECK(plan.pages[back - 1].find(plan.dates[d]) != std::string::npos);
      CHECK(plan.pages[back - 1].find("Leftinthetub") == std::string::npos);
      CHECK(plan.pages[back].find("Amountused") != std::string::npos);
      CHECK(plan.pages[back].find("Leftinthetub") != std::string::npos);
    }
  });
}

namespace {

using typeset::Dim;
using typeset::Rect;

bool isInFigure(const typeset::Document& document, const typeset::Item& item) {
  return item.tag > 0 && document.tags[static_cast<std::size_t>(item.tag)].role == typeset::Role::Figure;
}

Rect boxOf(const typeset::Path& path) {
  Dim left = path.steps.front().to.x, right = left, top = path.steps.front().to.y, bottom = top;
  for (const auto& step : path.steps) {
    if (step.kind == typeset::Step::Kind::Close) continue;
    left = std::min(left, step.to.x);
    right = std::max(right, step.to.x);
    top = std::min(top, step.to.y);
    bottom = std::max(bottom, step.to.y);
  }
  return {{left, top}, {right - left, bottom - top}};
}

bool overlap(const Rect& a, const Rect& b) {
  return a.at.x < b.at.x + b.size.w && b.at.x < a.at.x + a.size.w && a.at.y < b.at.y + b.size.h &&
         b.at.y < a.at.y + a.size.h;
}

/// A triangle with all its points in corners of its box: where a coat starts.
bool isCorner(const typeset::Path& path) {
  const Rect box = boxOf(path);
  const auto isEdge = [](Dim at, Dim from, Dim length) { return at == from || at == from + length; };
  return std::all_of(path.steps.begin(), path.steps.end(), [&](const auto& step) {
    return step.kind == typeset::Step::Kind::Close ||
           (isEdge(step.to.x, box.at.x, box.size.w) && isEdge(step.to.y, box.at.y, box.size.h));
  });
}

/// Filled in the accent: discs under numbers are made of curves, heads of arrows of two lines.
struct Marks {
  std::vector<Rect> discs, heads;
};

Marks marksOf(const DayPlan& plan, std::size_t page) {
  Marks marks;
  for (const auto& item : plan.document.pages[page].items) {
    const auto* path = std::get_if<typeset::Path>(&item.what);
    if (!path || !path->fill || *path->fill != plan.accent || !isInFigure(plan.document, item)) continue;
    std::size_t lines = 0, curves = 0;
    for (const auto& step : path->steps) {
      lines += step.kind == typeset::Step::Kind::Line;
      curves += step.kind == typeset::Step::Kind::Curve;
    }
    if (curves > 0) marks.discs.push_back(boxOf(*path));
    else if (lines == 2 && !isCorner(*path)) marks.heads.push_back(boxOf(*path));
  }
  return marks;
}

}  // namespace

TEST_CASE("every strip of a coating day has its number on the drawing, and no mark lies on another",
          "[pages]") {
  forEachDayPlan([](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.rows[d].empty()) continue;
      INFO(plan.name << ", " << plan.dates[d]);
      const std::size_t back = pageWith(plan, "Stripsinorder," + plan.dates[d]);
      std::map<std::string, std::size_t> wanted, drawn;
      std::set<std::size_t> decks;
      for (const auto& coat : plan.days[d].coats) {
        if (coat.strips.empty() || !decks.insert(coat.deck).second) continue;  // the first of two coats
        for (const auto& strip : coat.strips) ++wanted[std::to_string(strip.strip->number)];
      }
      for (const auto& item : plan.document.pages[back].items)
        if (const auto* run = std::get_if<typeset::TextRun>(&item.what);
            run && isInFigure(plan.document, item) && wanted.count(run->text))
          ++drawn[run->text];
      CHECK(drawn == wanted);

      const Marks marks = marksOf(plan, back);
      CHECK(marks.heads.size() == decks.size());  // a way out of each
      for (std::size_t i = 0; i < marks.discs.size(); ++i) {
        for (const Rect& head : marks.heads) CHECK_FALSE(overlap(marks.discs[i], head));
        for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(overlap(marks.discs[i], marks.discs[k]));
      }
    }
  });
}

namespace {

/// The day plan of an example with so many more rows in the log of its template: its pages, and what there
/// was to say about it.
std::pair<std::size_t, std::string> withRowsInLog(const std::string& example, int rows) {
  namespace fs = std::filesystem;
  const fs::path looks = fs::temp_directory_path() / ("planksheaf-log-" + std::to_string(rows));
  fs::remove_all(looks);
  fs::create_directories(looks / "en");
  std::ifstream shipped(fs::path(SOURCE_DIR) / "templates" / "en" / "dayplan.md");
  std::string text{std::istreambuf_iterator<char>(shipped), {}};
  const std::string last = "{{#product.drying_oil}}\n| Rags";
  REQUIRE(text.find(last) != std::string::npos);
  std::string more;
  for (int i = 0; i < rows; ++i) more += "| Own row | {{#coats}}____ | {{/coats}}\n";
  text.insert(text.find(last), more);
  std::ofstream(looks / "en" / "dayplan.md") << text;
  app::Choices choices;
  choices.languages = {"en"};
  choices.looks = looks.string();
  const app::Shipped own = app::readShipped(choices);
  std::size_t pages = 0;
  base::Diagnostics messages;
  for (const auto& job : examples::jobs()) {
    if (examples::nameOf(job) != example) continue;
    const auto x = app::compute(job.string(), own, choices, messages);
    REQUIRE(x);
    for (const auto& set : app::setDocuments(*x, own, choices, {"dayplan"}, messages))
      pages = set.pages.pages.size();
  }
  std::string told;
  for (const base::Diagnostic& d : messages.all()) told += base::format(d);
  return {pages, told};
}

}  // namespace

TEST_CASE(
    "a log that a firm makes longer takes room from the drawing above it, and says so where there is none",
    "[pages]") {
  const auto [shipped, nothing] = withRowsInLog("lakeside", 0);
  CHECK(shipped == 14);
  CHECK(nothing.empty());
  const auto [longer, told] = withRowsInLog("lakeside", 7);
  CHECK(longer == shipped);
  CHECK(told.empty());
  const auto [tooLong, why] = withRowsInLog("lakeside", 20);
  CHECK(tooLong > shipped);
  CHECK(why.substr(std::min(why.find("dayplan.md"), why.size())) ==
        "dayplan.md:64: warning: 'Strips in order, Mon\u00A021\u00A0Jun' does not fit: it ends on page 7, "
        "and what "
        "stands "
        "under one title has 2 pages at most\n"
        "  hint: make it shorter, or what stands above it\n");
}
