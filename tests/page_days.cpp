// The day plans of the examples, in both themes and on both papers: what the crew reads on each side.
#include "app/documents.h"
#include "app/telling.h"
#include "sheets/day_strips.h"
#include "sheets/day_work.h"

#include <catch2/catch.hpp>

#include <filesystem>

namespace fs = std::filesystem;

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
      for (const auto& entry : fs::directory_iterator(SOURCE_DIR "/out_examples")) {
        const fs::path job = entry.path() / "job.yaml";
        if (!fs::exists(job)) continue;
        base::Diagnostics messages;
        const auto x = app::compute(job.string(), shipped, choices, messages);
        REQUIRE(x);
        const auto telling = app::tell(*x, shipped, "en", messages);
        REQUIRE(telling);
        const auto computed = telling->computed();
        const sheets::Words w(*computed.c.region, computed.language);
        DayPlan plan{entry.path().filename().string() + ", " + theme +
                         (paper == model::Paper::A4 ? " on A4" : " on Letter"),
                     sheets::daysOf(computed, w),
                     {},
                     {},
                     {}};
        for (const auto& day : plan.days) {
          plan.rows.push_back(sheets::stripRows(day, computed, w));
          plan.dates.push_back(packed(w.shortDate(day.date)));
        }
        for (const auto& set : app::setDocuments(*x, shipped, choices, {"dayplan"}, messages))
          for (const auto& page : set.pages.pages) plan.pages.push_back(wordsOf(page));
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
