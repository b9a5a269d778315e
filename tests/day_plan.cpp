// A plan cut into days: litres, strips and tins of each. Rates and sizes are those of the fixtures.
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
      fixtures::sampleCase(), fixtures::sampleContent(), english(), {}, {}, {}, {}, {}, {}, {}};
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
      const auto rows = sheets::workFacts(day, m.computed(), m.words());
      const bool isTold = std::any_of(rows.begin(), rows.end(), [&](const auto& row) {
        return std::get<std::string>(row[3].second.value).find(rest) != std::string::npos;
      });
      CHECK(isTold == coat.goesOn.has_value());
    }
  }
  CHECK(parts == 2);
  CHECK(boards == 40);
}

namespace {

/// The rows of a day as text: 'time what'.
std::string rowsOf(const Made& m, const sheets::Day& day) {
  std::string all;
  for (const auto& row : sheets::workFacts(day, m.computed(), m.words()))
    all +=
        std::get<std::string>(row[0].second.value) + " " + std::get<std::string>(row[1].second.value) + "\n";
  for (std::size_t at = all.find("\u00A0"); at != std::string::npos; at = all.find("\u00A0"))
    all.replace(at, 2, " ");
  return all;
}

}  // namespace

TEST_CASE("a day's rows follow their start, from setting up to packing down, with the break in its place") {
  Made m;
  m.make();
  // From 07:30 to 16:00, break 11:30 to 12:00.
  CHECK(rowsOf(m, m.days()[1]) ==
        "07:30 Set-up\n07:45–11:30 Fix\n11:30–12:00 Break\n12:00–15:45 Fix\n15:45 Pack-down\n");
  CHECK(rowsOf(m, m.days().back()) ==
        "07:45 Set-up\n08:00–10:00 Cut-in, oil 08:00\n10:00–10:10 Cut-in, oil 10:00\n"
        "10:10 Pack-down; rags under water, lid on\n");
}

TEST_CASE("the day plan names no price") {
  Made m;
  m.make();
  m.result.price.total = {123'456'78};
  const auto facts = sheets::makeFacts(m.computed()).at(model::Reader::Crew);
  for (const auto& [name, fact] : facts) CHECK(name.find("price") == std::string::npos);
}
