// A plan cut into days: litres, strips and tins of each. Rates and sizes are those of the fixtures.
#include "sheets/facts/day_people.h"
#include "sheets/facts/day_strips.h"
#include "sheets/facts/day_work.h"

#include "english.h"
#include "estimate/estimate.h"
#include "fixtures.h"
#include "schedule/plan.h"
#include "sheets/facts/facts_decks.h"
#include "sheets/facts/make_facts.h"

#include <catch2/catch.hpp>
#include <numeric>

using namespace model;

namespace {

/// The fixtures' job from estimate to days.
struct Made {
  model::JobResult result{
      fixtures::sampleCase(), fixtures::sampleContent(), english(), {}, {}, {}, {}, {}, {}, {}, {}};
  JobInputs& c = result.c;
  Plan& plan = result.plan;
  model::Resources& resources = result.resources;

  void make() {
    base::Diagnostics messages;
    const auto& content = fixtures::sampleContent();
    result.estimate = estimate::makeEstimate(c, content);
    plan = schedule::makePlan(c, content, result.estimate, messages);
    REQUIRE(messages.ok());
    resources = estimate::makeResources(c, content, result.estimate, static_cast<int>(plan.days.size()));
  }
  const model::JobResult& computed() const { return result; }
  sheets::Formatter words() const { return {*c.region, english()}; }
  std::vector<sheets::Day> days() const { return sheets::daysOf(computed(), words()); }
};

}  // namespace

TEST_CASE("the litres of all days are the litres of all coats") {
  Made m;
  m.make();
  std::int64_t wanted = 0, poured = 0;
  for (const auto& deck : sheets::printedLitres(m.computed(), m.words()))
    wanted = std::accumulate(deck.begin(), deck.end(), wanted);
  for (const auto& day : m.days()) {
    for (const auto& coat : day.coats) {
      poured += coat.litres;
      std::int64_t strips = 0;
      for (const auto& s : coat.strips) strips += s.litres;
      CHECK(strips == coat.litres);
    }
  }
  CHECK(poured == wanted);
}

TEST_CASE("strips of a day follow each other from the first stroke on the surface") {
  Made m;
  m.make();
  int seen = 0;
  for (const auto& day : m.days()) {
    for (const auto& coat : day.coats) {
      int last = coat.from - 1;
      for (const auto& s : coat.strips) {
        CHECK(s.start > last);
        CHECK(s.start < coat.until);
        last = s.start;
        ++seen;
      }
    }
  }
  CHECK(seen == 2 * (6 + 1));  // two coats: the landing in six strips, the steps in one
}

TEST_CASE("tins are opened day by day and hold what is poured") {
  Made m;
  m.make();
  base::Volume opened;
  const auto days = m.days();
  for (const auto& day : days) {
    for (const auto& t : day.tins) opened += t.tin.size * t.count;
    CHECK(day.coats.empty() == day.tins.empty());
  }
  CHECK(opened <= m.resources.product.bought.volume + m.resources.product.fromStock);
  CHECK(opened >= m.resources.product.likely - m.words().volumeStep());
}

TEST_CASE("each deck is new to the crew on one day only") {
  Made m;
  m.make();
  std::vector<std::size_t> decks;
  for (const auto& day : m.days()) decks.insert(decks.end(), day.firstOn.begin(), day.firstOn.end());
  std::sort(decks.begin(), decks.end());
  CHECK(decks == std::vector<std::size_t>{0, 1});
}

TEST_CASE("a coat that takes several days is cut between its strips") {
  Made m;
  m.c.job.areas = {fixtures::sampleDeck()};
  m.c.job.taskRates["oil"] = fixtures::pieces(4);  // 40 m2 by two people: 5 hours, coated until one o'clock
  m.make();
  int parts = 0, boards = 0;
  for (const auto& day : m.days()) {
    for (const auto& coat : day.coats) {
      if (coat.coat != 1) continue;
      ++parts;
      for (const auto& s : coat.strips) boards += s.strip->boards;
      CHECK(coat.goesOn.has_value() == (parts == 1));
      const std::string rest = "; stop at the end of a strip, the rest on " +
                               (coat.goesOn ? m.words().shortDate(*coat.goesOn) : "");
      const auto texts = sheets::coatTexts(day, m.computed(), m.words());
      const bool isTold = std::any_of(texts.begin(), texts.end(), [&](const auto& text) {
        return text.note.find(rest) != std::string::npos;
      });
      CHECK(isTold == coat.goesOn.has_value());
    }
  }
  CHECK(parts == 2);
  CHECK(boards == 40);
}

namespace {

std::string plain(std::string all) {
  for (std::size_t at = all.find("\u00A0"); at != std::string::npos; at = all.find("\u00A0"))
    all.replace(at, 2, " ");
  return all;
}

/// The lines of a day as text.
std::string linesOf(const Made& m, const sheets::Day& day) {
  std::string all;
  for (const auto& line : sheets::workLines(day, m.computed(), m.words()))
    all += sheets::span(line.from, line.until, m.words()) + " " + line.what + ", " + line.where + ", " +
           line.who + "\n";
  return plain(all);
}

/// What its people do as text.
std::string peopleOf(const Made& m, const sheets::Day& day) {
  std::string all;
  for (const auto& text :
       sheets::rowTexts(sheets::peopleOf(day, m.computed(), m.words()), m.computed(), m.words()))
    all += text.name + ": " + text.text + "\n";
  return plain(all);
}

}  // namespace

TEST_CASE("a day's work is told in lines of time, task, area and people, over the break") {
  Made m;
  m.make();
  // From 07:30 to 16:00, break 11:30 to 12:00.
  CHECK(linesOf(m, m.days()[1]) == "07:45–15:45 Fix, A, both\n");
}

TEST_CASE("a coat day is told by people, first what all do alike, then each to the way home") {
  Made m;
  m.c.job.crew.names = {"Mara Quill", "Tem Harrow"};
  m.make();
  CHECK(peopleOf(m, m.days().back()) ==
        "Both: 07:45 set-up\n"
        "Mara Quill: 08:00 lays 1–7, 10:25 home\n"
        "Tem Harrow: 08:00 cuts in 1–7, 10:25 home\n");
}

TEST_CASE("strips are told in ranges, people by first names that no two share") {
  Made m;
  m.c.job.crew.names = {"Mara Quill", "Mara Stone"};
  m.make();
  const auto w = m.words();
  CHECK(plain(sheets::numberRanges({3, 1, 2, 6, 8, 9}, w)) == "1–3, 6, 8, 9");
  CHECK(sheets::whoText({0}, m.computed(), w) == "Mara Quill");
  CHECK(sheets::whoText({0, 1}, m.computed(), w) == "both");
  m.result.c.job.crew.names = {"Mara Quill"};
  CHECK(sheets::whoText({0}, m.computed(), w) == "Mara");
  CHECK(sheets::whoText({1}, m.computed(), w) == "Person 2");
  m.result.c.job.crew.people = 3;
  CHECK(sheets::whoText({0, 1, 2}, m.computed(), w) == "all three");
}

TEST_CASE("the day plan names no price") {
  Made m;
  m.make();
  m.result.price.total = {123'456'78};
  const auto facts = sheets::makeFacts(m.computed()).at(model::Reader::Crew);
  for (const auto& [name, fact] : facts) CHECK(name.find("price") == std::string::npos);
}

namespace {

/// Whether any word among the facts holds these.
bool tells(const sheets::Facts& facts, const std::string& words) {
  return std::any_of(facts.begin(), facts.end(), [&](const auto& named) {
    const auto& value = named.second.value;
    if (const auto* text = std::get_if<std::string>(&value)) return text->find(words) != std::string::npos;
    if (const auto* group = std::get_if<sheets::Facts>(&value)) return tells(*group, words);
    const auto* list = std::get_if<sheets::FactList>(&value);
    return list != nullptr &&
           std::any_of(list->begin(), list->end(), [&](const auto& item) { return tells(item, words); });
  });
}

}  // namespace

TEST_CASE("a note for the crew, the way in and what was promised reach the crew, the note no customer") {
  Made m;
  m.c.job.areas[0].crewNote = "Two boards at the corner are soft.";
  m.c.job.areas[0].note = "Cut in by hand round the tree.";
  m.c.job.included = {"Sheets under the jetty"};
  m.c.job.site.access = "Gate code 4711.";
  m.make();
  const auto facts = sheets::makeFacts(m.computed());
  const auto& crew = facts.at(model::Reader::Crew);
  const auto& customer = facts.at(model::Reader::Customer);
  for (const auto& words :
       {m.c.job.areas[0].crewNote, m.c.job.areas[0].note, m.c.job.included[0], m.c.job.site.access})
    CHECK(tells(crew, words));
  CHECK_FALSE(tells(customer, m.c.job.areas[0].crewNote));
  CHECK_FALSE(tells(customer, m.c.job.site.access));
}
