// A plan cut into days: litres, strips and tins of each. Rates and sizes are those of the fixtures.
#include "sheets/day_work.h"

#include "english.h"
#include "estimate/estimate.h"
#include "fixtures.h"
#include "plan/plan.h"
#include "plan/strips.h"
#include "sheets/facts_decks.h"

#include <catch2/catch.hpp>
#include <numeric>

using namespace model;

namespace {

/// The fixtures' job from estimate to days.
struct Made {
  Case c = fixtures::sampleCase();
  Estimate e;
  Plan plan;
  Price price;
  model::CrewExposure exposure;
  std::vector<model::HazardChoice> hazards;

  void make() {
    base::Diagnostics messages;
    const auto& content = fixtures::sampleContent();
    plan = plan::makePlan(c, content, estimate::makeEstimate(c, content, 0), messages);
    REQUIRE(messages.ok());
    e = estimate::makeEstimate(c, content, static_cast<int>(plan.days.size()));
    plan.edges = plan::wetEdges(c, content, e, plan);
  }
  sheets::Computed computed() const {
    return {c, fixtures::sampleContent(), e, plan, price, english(), exposure, hazards};
  }
  sheets::Words words() const { return {*c.region, english()}; }
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
  CHECK(seen == 2 * (4 + 1));  // two coats: the landing in four strips, the steps in one
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
  CHECK(opened <= m.e.product.bought.volume + m.e.product.fromStock);
  CHECK(opened >= m.e.product.likely - m.words().volumeStep());
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
      CHECK(coat.isPart);
    }
  }
  CHECK(parts == 2);
  CHECK(boards == 40);
}

namespace {

bool isYes(const sheets::Facts& facts, const char* name) {
  return std::get<bool>(sheets::find(facts, name)->value);
}

sheets::FactList dayPlans(const Made& m) {
  const auto facts = sheets::dayFacts(m.computed());
  return std::get<sheets::FactList>(sheets::find(facts, "day_plans")->value);
}

}  // namespace

TEST_CASE("a day with a coat begins a page, and so does the day after it") {
  Made m;
  m.make();
  const auto days = dayPlans(m);
  REQUIRE(days.size() == m.plan.days.size());
  CHECK_FALSE(isYes(days[0], "breaks"));
  bool hasShared = false;
  for (std::size_t i = 1; i < days.size(); ++i) {
    const bool isAlone = isYes(days[i], "coated") || isYes(days[i - 1], "coated");
    if (isAlone) CHECK(isYes(days[i], "breaks"));
    hasShared = hasShared || !isYes(days[i], "breaks");
  }
  CHECK(hasShared);
}

TEST_CASE("the day plan names no price") {
  Made m;
  m.make();
  m.price.total = {123'456'78};
  for (const auto& [name, fact] : sheets::dayFacts(m.computed()))
    CHECK(name.find("price") == std::string::npos);
}
