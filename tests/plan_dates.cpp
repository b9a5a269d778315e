// The dates that hang on the last coat.
#include "fixtures.h"
#include "model/names.h"
#include "schedule/crew/dates.h"

#include <catch2/catch.hpp>

namespace {

/// When the deck may be walked on, 24 hours after a last coat that ends at these minutes of a Tuesday.
base::LocalTime walkAfter(int minutes) {
  const model::JobInputs c = fixtures::sampleCase();
  model::Plan plan;
  plan.finished = {c.job.start, minutes};
  schedule::addDates(plan, c, schedule::Calendar(c.job, c.region, 0, 0));
  for (const auto& event : plan.events)
    if (model::nameOf(event) == "walk") return event.at;
  return {};
}

}  // namespace

TEST_CASE("nobody is sent onto a deck between eight in the evening and seven in the morning", "[plan]") {
  const auto start = fixtures::sampleCase().job.start;
  const auto wednesday = start + std::chrono::days{1}, thursday = start + std::chrono::days{2};
  CHECK(walkAfter(19 * 60 + 59) == base::LocalTime{wednesday, 19 * 60 + 59});
  CHECK(walkAfter(20 * 60) == base::LocalTime{thursday, 7 * 60});
  CHECK(walkAfter(6 * 60) == base::LocalTime{wednesday, 7 * 60});
  CHECK(walkAfter(7 * 60 + 5) == base::LocalTime{wednesday, 7 * 60 + 5});
}
