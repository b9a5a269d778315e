// The day plans of the examples, in both themes and on both papers, made once for all that is asked of them.
#pragma once

#include "app/pack/documents.h"
#include "app/pack/languages.h"
#include "example_jobs.h"
#include "firm_jobs.h"
#include "sheets/facts/day_people.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"

#include <catch2/catch.hpp>

#include <memory>

namespace day_plans {

/// Without spaces: words are cut into runs at them.
inline std::string packed(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool isFixedSpace = text.compare(i, 2, "\u00A0") == 0;
    if (isFixedSpace) ++i;
    else if (text[i] != ' ') out += text[i];
  }
  return out;
}

struct DayPlan {
  std::string name;                             // 'landing, compact on A4'
  std::shared_ptr<const model::JobResult> job;  // what the rest points into
  std::vector<sheets::Day> days;
  std::vector<std::vector<sheets::CoatText>> coats;  // of each day
  std::vector<std::vector<sheets::WorkLine>> work;   // the same
  std::vector<std::vector<sheets::PersonText>> people;
  std::vector<std::string> dates;
  std::vector<std::string> pages;  // all their words, packed
  typeset::Document document;
  typeset::Colour accent;
  bool isOwnPaper = true;  // the paper of its region
};

inline std::string wordsOf(const typeset::Page& page) {
  std::string words;
  for (const auto& item : page.items)
    if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) words += run->text;
  return packed(words);
}

inline std::vector<DayPlan> makeDayPlans() {
  std::vector<DayPlan> plans;
  app::Choices choices;
  choices.languages = {"en"};
  const app::Shipped shipped = app::readShipped();
  for (const std::string theme : {"generous", "compact"})
    for (const model::Paper paper : {model::Paper::A4, model::Paper::Letter}) {
      choices.theme = theme;
      choices.paper = paper;
      for (const auto& job : examples::jobs()) {
        base::Diagnostics messages;
        auto x = firm_jobs::compute(job.string(), choices, messages);
        REQUIRE(x);
        const auto kept = std::make_shared<const model::JobResult>(std::move(*x));
        const auto& computed = *kept;
        const sheets::Formatter w(*computed.c.region, computed.language);
        DayPlan plan{
            examples::nameOf(job) + ", " + theme + (paper == model::Paper::A4 ? " on A4" : " on Letter"),
            kept,
            sheets::daysOf(computed, w),
            {},
            {},
            {},
            {},
            {},
            {},
            computed.c.theme.crewColours.at("accent"),
            paper == computed.c.region->paper};
        for (const auto& day : plan.days) {
          plan.coats.push_back(sheets::coatTexts(day, computed, w));
          plan.work.push_back(sheets::workLines(day, computed, w));
          plan.people.push_back(sheets::rowTexts(sheets::peopleOf(day, computed, w), computed, w));
          plan.dates.push_back(packed(w.shortDate(day.date)));
        }
        for (auto& set : app::setDocuments(computed, shipped, choices, {"dayplan"}, messages))
          plan.document = std::move(set.pages);
        for (const auto& page : plan.document.pages) plan.pages.push_back(wordsOf(page));
        for (const base::Diagnostic& d : messages.all()) FAIL(base::format(d));
        plans.push_back(std::move(plan));
      }
    }
  return plans;
}

inline const std::vector<DayPlan>& dayPlans() {
  static const std::vector<DayPlan> plans = makeDayPlans();
  return plans;
}

template <class Look>
void forEachDayPlan(Look look) {
  for (const DayPlan& plan : dayPlans()) {
    INFO(plan.name);
    look(plan);
  }
}

}  // namespace day_plans
