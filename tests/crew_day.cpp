// A coat day as everyone spends it: packing down while the last strips soak in, the way home.
#include "calendar_job.h"

using namespace calendar;

namespace {

Wish oneDeck() {
  Wish w;
  w.areas = deck("Deck", "6 m, 4 m", "at: [0 m, 0 m]");
  return w;
}

std::vector<model::Duty> of(const Planned& p, const std::string& task) {
  std::vector<model::Duty> all;
  for (const auto& duty : p.plan.duties) {
    if (duty.what == model::Duty::What::Task && duty.shift.task == task) all.push_back(duty);
  }
  return all;
}

}  // namespace

TEST_CASE("whoever is free while the last strips soak in packs down for all") {
  const auto p = planned(oneDeck());
  const auto packing = of(p, "pack-down"), wiping = of(p, "wipe");
  REQUIRE(!packing.empty());
  REQUIRE(!wiping.empty());
  std::map<base::Date, int> minutes;  // of all people
  for (const auto& duty : packing)
    minutes[duty.shift.start.day] += (duty.shift.end.minutes - duty.shift.start.minutes) * duty.shift.people;
  for (const auto& [day, all] : minutes) CHECK(all == 30);  // half an hour's work each day
  CHECK(packing.front().shift.end <= wiping.back().shift.start);
}

TEST_CASE("everyone stands on the ground when a day ends, and enters no deck from nowhere") {
  const auto p = planned(oneDeck());
  const schedule::AccessGraph graph(p.c.job);
  std::map<std::size_t, schedule::Where> at;
  std::map<std::size_t, base::Date> day;
  for (const auto& walk : schedule::walksOf(p.plan, graph)) {
    if (day.count(walk.person) && day[walk.person] != walk.start.day) CHECK_FALSE(at[walk.person]);
    CHECK(at[walk.person] == walk.from);
    at[walk.person] = walk.to;
    day[walk.person] = walk.start.day;
  }
  for (const auto& [person, place] : at) CHECK_FALSE(place);
}

TEST_CASE("as few come on a day of coats as cost least, whoever leads among them, and nobody alone") {
  Wish w = oneDeck();
  w.crew = "{people: 4, hours: 07:30-16:00, breaks: 30 min, names: [Ada, Ben, Cai, Dee], leader: Dee}";
  const auto four = planned(w);
  CHECK(four.c.job.crew.names == std::vector<std::string>{"Dee", "Ada", "Ben", "Cai"});
  std::int64_t paid = 0;
  for (const auto& day : four.plan.days) {
    CHECK(day.people == 2);
    paid += std::int64_t{day.home.minutes - day.arrive.minutes} * day.people;
  }
  CHECK(four.plan.cost.personMinutes == paid);
  for (const auto& duty : four.plan.duties) {
    for (const auto person : duty.shift.who) CHECK(person < 2);
  }
  for (const auto& day : planned(oneDeck()).plan.days) CHECK(day.people == 2);  // of a crew of two
}
