// The day plans of the examples, in both themes and on both papers: what the crew reads on each side.
#include "day_plans.h"
#include "safety_jobs.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>

using namespace day_plans;

namespace {

/// The pages of a day with a coat: from the one with its title up to the next title, from 0.
struct PageSpan {
  std::size_t first = 0, end = 0;
};
PageSpan pagesOf(const DayPlan& plan, std::size_t day) {
  std::vector<std::pair<std::string, std::size_t>> titles;
  for (const typeset::Bookmark& mark : plan.document.bookmarks)
    if (mark.level == 1) titles.push_back({packed(mark.title), mark.page});
  for (std::size_t i = 0; i < titles.size(); ++i) {
    if (titles[i].first.find(plan.dates[day]) == std::string::npos) continue;
    return {titles[i].second, i + 1 < titles.size() ? titles[i + 1].second : plan.pages.size()};
  }
  return {};
}

/// All words of those pages.
std::string wordsOf(const DayPlan& plan, PageSpan pages) {
  std::string words;
  for (std::size_t p = pages.first; p < pages.end; ++p) words += plan.pages[p];
  return words;
}

bool holds(const std::string& text, const std::string& words) {
  return text.find(packed(words)) != std::string::npos;
}

}  // namespace

TEST_CASE("a day with a coat begins a page of its own, and all other days stand under one title", "[pages]") {
  forEachDayPlan([&](const DayPlan& plan) {
    std::size_t coated = 0, others = 0, titles = 0;
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      INFO(plan.dates[d]);
      if (plan.days[d].coats.empty()) {
        ++others;
        continue;
      }
      ++coated;
      const auto pages = pagesOf(plan, d);
      CHECK(pages.first < pages.end);
      CHECK(pages.end - pages.first <= 2);  // a leaf
    }
    for (const typeset::Bookmark& mark : plan.document.bookmarks) titles += mark.level == 1;
    CHECK(titles == coated + (others > 0 ? 1 : 0));
  });
}

TEST_CASE("a coating day of up to twenty strips is one page of the paper of its place, but for two of them",
          "[pages]") {
  std::size_t seen = 0, leaves = 0;
  forEachDayPlan([&](const DayPlan& plan) {
    for (std::size_t d = 0; plan.isOwnPaper && d < plan.days.size(); ++d) {
      std::size_t strips = 0;
      for (const auto& coat : plan.coats[d]) strips += coat.strips.size();
      if (strips == 0 || strips > 20) continue;
      const auto pages = pagesOf(plan, d);
      ++seen;
      leaves += pages.end - pages.first > 1;
    }
  });
  CHECK(seen == 2 * 18);
  CHECK(leaves <= 2 * 2);  // of five areas, or with much to tell each of three people
}

TEST_CASE("the days of a job without a coat are told with their hours, tasks, areas and people", "[pages]") {
  std::size_t seen = 0;
  forEachDayPlan([&](const DayPlan& plan) {
    std::string all;
    for (const auto& page : plan.pages) all += page;
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (!plan.days[d].coats.empty()) continue;
      INFO(plan.dates[d]);
      CHECK(holds(all, plan.dates[d]));
      CHECK_FALSE(plan.work[d].empty());
      for (const auto& line : plan.work[d]) {
        INFO(line.what);
        for (const auto& word : {line.what.substr(0, line.what.find(' ')), line.where, line.who})
          CHECK(holds(all, word));
        ++seen;
      }
    }
  });
  CHECK(seen > 4 * 20);
}

TEST_CASE("every strip of a coating day is told with its number, its start and its litres", "[pages]") {
  std::size_t seen = 0;
  forEachDayPlan([&](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.days[d].coats.empty()) continue;
      INFO(plan.dates[d]);
      const auto words = wordsOf(plan, pagesOf(plan, d));
      for (const auto& coat : plan.coats[d])
        for (const auto& s : coat.strips) {
          INFO(coat.name << " " << s.number << " " << s.lay << " " << s.amount);
          // In the list, in the strip in a row, or there with its litres first.
          const auto cutIn = s.cutIn.empty() ? "" : "cut in " + s.cutIn;
          CHECK((holds(words, s.number + s.lay + s.amount) ||
                 holds(words, s.number + cutIn + s.lay + s.amount) ||
                 holds(words, s.number + s.amount + "L" + s.lay) ||
                 holds(words, s.number + s.amount + "gal" + s.lay)));
          ++seen;
        }
    }
  });
  CHECK(seen > 4 * 60);
}

TEST_CASE("a coating day answers when to start, stop and go home, and asks for what says go", "[pages]") {
  forEachDayPlan([](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.days[d].coats.empty()) continue;
      INFO(plan.dates[d]);
      const auto& front = plan.pages[pagesOf(plan, d).first];
      for (const char* words :
           {"last stroke by", "home by", "Go?", "moisture meter", "above dew point", "without rain", "wind"})
        CHECK(holds(front, words));
    }
  });
}

TEST_CASE("a coating day tells each of the crew what to do, and has a log with lines for remarks",
          "[pages]") {
  forEachDayPlan([](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.days[d].coats.empty()) continue;
      INFO(plan.dates[d]);
      const auto words = wordsOf(plan, pagesOf(plan, d));
      CHECK_FALSE(plan.people[d].empty());
      std::string told;
      for (const auto& tag : plan.document.tags) told += packed(tag.alt);
      for (const auto& person : plan.people[d]) {
        INFO(person.name << ": " << person.text);
        CHECK(holds(words, person.name));
        CHECK(holds(told, person.text));  // in full to those who hear it
      }
      CHECK(holds(words, "left in the tub"));
      CHECK(holds(words, "batch"));
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

/// The north arrow is longer.
bool isHead(const Rect& box) { return box.size.w <= Dim::mm(3) && box.size.h <= Dim::mm(3); }

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
    else if (lines == 2 && !isCorner(*path) && isHead(boxOf(*path))) marks.heads.push_back(boxOf(*path));
  }
  return marks;
}

}  // namespace

TEST_CASE("every strip of a coating day has its number on the drawing, and no mark lies on another",
          "[pages]") {
  forEachDayPlan([](const DayPlan& plan) {
    for (std::size_t d = 0; d < plan.days.size(); ++d) {
      if (plan.days[d].coats.empty()) continue;
      INFO(plan.name << ", " << plan.dates[d]);
      const auto pages = pagesOf(plan, d);
      std::set<std::string> wanted, drawn;
      std::set<std::size_t> decks;
      for (const auto& coat : plan.days[d].coats) {
        const bool isOnPlan = coat.edge && coat.edge->wayOut;
        if (isOnPlan && !decks.insert(coat.deck).second) continue;  // the first of two coats
        for (const auto& strip : coat.strips) wanted.insert(std::to_string(strip.strip->number));
      }
      Marks marks;
      for (std::size_t page = pages.first; page < pages.end; ++page) {
        for (const auto& item : plan.document.pages[page].items)
          if (const auto* run = std::get_if<typeset::TextRun>(&item.what);
              run && isInFigure(plan.document, item) && wanted.count(run->text))
            drawn.insert(run->text);
        const Marks here = marksOf(plan, page);
        for (std::size_t i = 0; i < here.discs.size(); ++i) {
          for (const Rect& head : here.heads) CHECK_FALSE(overlap(here.discs[i], head));
          for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(overlap(here.discs[i], here.discs[k]));
        }
        marks.heads.insert(marks.heads.end(), here.heads.begin(), here.heads.end());
      }
      CHECK(drawn == wanted);
      CHECK(marks.heads.size() == decks.size());  // a way out of each
    }
  });
}

namespace {

/// The day plan of an example with so many more rows in the log of its template: its pages, and what there
/// was to say about it.
std::pair<std::size_t, std::string> withRowsInLog(const std::string& example, int rows) {
  namespace fs = std::filesystem;
  const fs::path firm = fs::temp_directory_path() / ("planksheaf-log-" + std::to_string(rows));
  fs::remove_all(firm);
  fs::copy(SOURCE_DIR "/out_examples/firms/withyplank", firm);
  fs::create_directories(firm / "templates/en");
  std::ifstream shipped(fs::path(SOURCE_DIR) / "templates" / "en" / "dayplan.md");
  std::string text{std::istreambuf_iterator<char>(shipped), {}};
  const std::string last = "{{/logs}}\n";
  REQUIRE(text.find(last) != std::string::npos);
  std::string more;
  for (int i = 0; i < rows; ++i)
    more += "| Own row | ____ | ____ | ____ | ____ | ____ | ____ | ____ | ____ |\n";
  text.insert(text.find(last) + last.size(), more);
  std::ofstream(firm / "templates/en/dayplan.md") << text;
  app::Choices choices;
  choices.languages = {"en"};
  choices.firm = firm.string();
  std::size_t pages = 0;
  base::Diagnostics messages;
  for (const auto& job : examples::jobs()) {
    if (examples::nameOf(job) != example) continue;
    const auto [own, x] = app::computeFile(job.string(), choices, messages);
    REQUIRE(x);
    for (const auto& set : app::setDocuments(*x, *own, choices, {"dayplan"}, messages))
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
  CHECK(nothing.empty());
  const auto [longer, told] = withRowsInLog("lakeside", 2);
  CHECK(longer >= shipped);
  CHECK(told.empty());
  const auto [tooLong, why] = withRowsInLog("lakeside", 40);
  CHECK(tooLong > longer);
  CHECK(
      why.substr(std::min(why.find("dayplan.md"), why.size())) ==
      "dayplan.md:142: warning: 'Log' does not fit: it ends on page 5, and what stands under one title has 2 "
      "pages at most\n"
      "  hint: make it shorter, or what stands above it\n");
}

TEST_CASE("a note for the crew is a box to tick on the day plan, in every language", "[pages]") {
  app::Choices choices;
  choices.languages = {"en", "es", "pl"};
  const auto x = safety_jobs::computed(
      safety_jobs::replaced(safety_jobs::plainJob, "state: weathered",
                            "state: weathered\n    crew_note: Two boards at the corner are soft."),
      choices);
  const auto plans = safety_jobs::documents(x, {"dayplan"}, choices);
  CHECK(plans.size() == 3);
  for (const auto& [name, pages] : plans) {
    INFO(name);
    CHECK(safety_jobs::holds(safety_jobs::together(pages), "Two boards at the corner are soft."));
  }
}
