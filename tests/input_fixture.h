// A small content and a good job for the tests of reading.
#pragma once

#include "hints.h"

#include "input/read.h"

#include <catch2/catch.hpp>
#include <string>

namespace fixture {

inline model::Content content() {
  using namespace model;
  Content c;
  for (const char* id : {"kwila", "larch", "radiata-treated"}) c.timbers[id].id = id;
  Region nz;
  nz.id = "nz";
  nz.name = "New Zealand";
  nz.language = "en-NZ";
  nz.currency = "NZD";
  nz.tax.rate = base::Share::whole(15);
  c.regions["nz"] = nz;
  c.regions["us"].id = "us";
  c.regions["us"].name = "United States";
  c.regions["us"].language = "en-US";
  c.regions["us"].units = UnitSystem::UsCustomary;
  Product oil;
  oil.id = "tern-oil";
  oil.tins["nz"] = {{base::millilitres(2500), {11800}}};
  oil.times.recoatMin = base::Hours::whole(12);
  oil.times.recoatMax = base::Hours::whole(72);
  c.products["tern-oil"] = oil;
  c.products["plover-wb"].id = "plover-wb";
  const std::pair<const char*, Measure> tasks[] = {{"set-up", Measure::Day},   {"wash", Measure::Surface},
                                                   {"fix", Measure::Fixings},  {"sand", Measure::Surface},
                                                   {"cut-in", Measure::CutIn}, {"coat", Measure::Wetted}};
  for (const auto& [id, measure] : tasks) {
    Task t;
    t.id = id;
    t.measure = measure;
    if (measure == Measure::Surface) t.ratePerHour = base::Count::whole(20);
    c.tasks.push_back(t);
  }
  c.languages = {"en", "es"};
  c.documents = {"quote", "aftercare", "safety", "dayplan", "orders", "office"};
  return c;
}

inline const std::string goodJob = R"(ref: LA-2027-031
quoted: 2027-03-02
customer: {name: Inga Thorley, email: inga@coldwater.example}
site: {region: nz, latitude: -44.70, longitude: 169.13, timezone: Pacific/Auckland}
start: 2027-03-16
firm: ../firm
product: tern-oil
areas:
  - name: Landing
    shape: {rectangle: [12.4 m, 6.2 m]}
    without: [{circle: 1.2 m, at: [6 m, 3 m], name: tree}]
    boards: {width: 138 mm, gap: 5 mm, thickness: 38 mm}
    joists: 450 mm
    fixings: {kind: nails}
    timber: kwila
    state: sanded
work: [wash, fix, sand, oil]
sanding: [40, 60, 80]
crew: {people: 2, hours: 07:30-16:00, breaks: 45 min}
in_stock: [{product: tern-oil, size: 2.5 L, count: 1}]
price: {deposit: 10 %, options: [{text: Handrail, price: 620.00}]}
)";

/// All messages of a job's text, as printed.
inline std::string messagesOf(const std::string& job) {
  base::Diagnostics messages;
  const auto read = [](const std::string& text, base::Diagnostics& out) {
    input::readJob(text, "job.yaml", content(), out);
  };
  read(job, messages);
  checkHints(job, messages, read);
  std::string all;
  for (const base::Diagnostic& d : messages.all()) {
    all += base::format(d);
    CHECK(d.pos.line > 0);
    CHECK_FALSE(d.hint.empty());
  }
  return all;
}

/// The good job with 'from' replaced; it must stand there.
inline std::string edited(std::string job, const std::string& from, const std::string& to) {
  const std::size_t at = job.find(from);
  if (at == std::string::npos) throw std::logic_error("the good job has no '" + from + "'");
  return job.replace(at, from.size(), to);
}

/// A mistake in the good job, and all that is said about it.
struct BadJob {
  const char* name;
  std::vector<std::pair<std::string, std::string>> edits;  // from, to
  std::string expected;
};

template <std::size_t N>
void checkAll(const BadJob (&jobs)[N]) {
  for (const BadJob& bad : jobs) {
    std::string job = goodJob;
    for (const auto& [from, to] : bad.edits) job = edited(job, from, to);
    INFO(bad.name);
    CHECK(messagesOf(job) == bad.expected);
  }
}

}  // namespace fixture
