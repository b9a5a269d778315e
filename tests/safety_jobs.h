// Jobs at both ends of what a crew meets, their documents, and the words on them.
#pragma once

#include "app/pack/documents.h"
#include "firm_jobs.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

namespace safety_jobs {

inline const std::string firm = std::string("firm: ") + SOURCE_DIR + "/out_examples/firms/tideboard\n";

/// Water-borne oil on a softwood deck on two cool days.
inline const std::string plainJob = R"(ref: PLAIN-1
quoted: 2027-03-02
customer: {name: Inga Thorley}
site: {region: nz, timezone: Pacific/Auckland, latitude: -45.0, longitude: 168.7, exposure: sheltered,
  hospital: 'Dunford, 20 min by road',
  meeting_point: car park, first_aider: Ada, sds_place: cab, extinguisher: tailgate}
start: 2027-03-16
product: plover-wb
colour: natural
loss: 5 %
areas:
  - name: Deck
    shape: {rectangle: [6 m, 4 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    timber: larch
    state: weathered
work: [wash, oil]
crew: {people: 2, hours: 07:30-16:00, names: [Ada, Ben], leader: Ada}
price: {deposit: 10 %}
)" + firm;

/// All that one job is likely to bring together: lead, arsenic and vapour, a high edge over cold water,
/// children and passers-by, and days too hot for hard work.
inline const std::string worstJob = [] {
  std::string job = R"(ref: WORST-1
quoted: 2027-01-02
customer: {name: Inga Thorley}
site: {region: nz, timezone: Pacific/Auckland, latitude: -45.0, longitude: 168.7, exposure: coastal,
  access: 'gate behind the boat house, 0.9 m wide', water: tap at the shed, power: outlet at the door,
  hospital: 'Dunford Hospital, 20 min by road, 03 555 0100', meeting_point: 'car park, by the sign',
  first_aider: 'Ada, kit behind her seat', sds_place: blue folder in the cab, extinguisher: 'tailgate, left side',
  year_built: 1962, near_water: true, public: true, children: true}
start: 2027-02-15
product: tern-oil
colour: natural
loss: 5 %
areas:
  - name: Veranda
    shape: {rectangle: [10 m, 5 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    joists: 450 mm
    fixings: {kind: screws}
    timber: kwila
    state: film
    covered: true
    edge_height: 2.4 m
  - name: Terrace
    shape: {rectangle: [12 m, 8 m]}
    boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}
    joists: 450 mm
    fixings: {kind: screws}
    timber: radiata-treated
    state: oiled
    edge_height: 0.9 m
work: [wash, fix, sand, oil]
sanding: [60, 80, 100]
crew: {people: 3, hours: 07:30-16:00, names: [Ada, Ben, Cyd], leader: Ada}
licensed_for: [treated]
price: {deposit: 10 %}
weather:
  source: invented for the test
  normals:
)";
  for (const char* month :
       {"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"})
    job += std::string("    ") + month +
           ": {coldest: 22 C, warmest: 36 C, humidity: 80 %, cloud: 20 %, wind: 1 m/s, rain_days: 2}\n";
  return job + firm;
}();

inline std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

/// The worst job with six people, long days, and all that a site may have besides.
inline const std::string crowdedJob = [] {
  const auto put = [](std::string job, const std::string& from, const std::string& to) {
    return job.replace(job.find(from), from.size(), to);
  };
  std::string job = put(worstJob, "people: 3, hours: 07:30-16:00, names: [Ada, Ben, Cyd]",
                        "people: 6, hours: 07:00-18:30, names: [Ada, Ben, Cyd, Dee, Eli, Fay]");
  return put(job, "children: true}",
             "children: true, eye_wash: bottle in the cab,\n"
             "  hazards: [no signal, vehicles, generator, ticks, wasps, snakes, needles, no toilet]}");
}();

/// The job as it would be in another region, with a firm that has its prices.
inline std::string inRegion(const std::string& job, const std::string& region) {
  static const std::map<std::string, std::string> others = {
      {"nz", "tideboard"}, {"gb", "withyplank"}, {"us", "cricketboard"}};
  return replaced(replaced(job, "region: nz", "region: " + region), "firms/tideboard",
                  "firms/" + others.at(region));
}

using firm_jobs::compute;
using firm_jobs::firms;
using firm_jobs::shipped;

inline model::JobResult computedFrom(const std::filesystem::path& job) {
  base::Diagnostics messages;
  auto x = compute(job.string(), {}, messages);
  REQUIRE(x);
  return std::move(*x);
}

/// Of out_examples.
inline model::JobResult example(const std::string& name) {
  return computedFrom(SOURCE_DIR "/out_examples/" + name + "/job.yaml");
}

inline model::JobResult computed(const std::string& job, const app::Choices& choices = {}) {
  base::Diagnostics messages;
  auto x = compute(app::JobText{"job.yaml", job}, choices, messages);
  for (const auto& d : messages.all()) {
    if (d.severity == base::Severity::Error) FAIL(base::format(d));
  }
  REQUIRE(x);
  return std::move(*x);
}

/// The documents by name; all of them where none is named.
inline std::map<std::string, typeset::Document> documents(const model::JobResult& x,
                                                          const std::vector<std::string>& only = {},
                                                          const app::Choices& choices = {}) {
  base::Diagnostics messages;
  std::map<std::string, typeset::Document> all;
  for (auto& [name, pages] : app::setDocuments(x, shipped(), choices, only, messages))
    all[name] = std::move(pages);
  for (const base::Diagnostic& d : messages.all()) {
    if (d.severity == base::Severity::Error) FAIL(base::format(d));
  }
  return all;
}

/// The words of each paragraph, item or cell, without drawings and furniture.
inline std::vector<std::string> blocksOf(const typeset::Document& document) {
  using typeset::Role;
  std::map<int, std::string> blocks;
  std::map<int, std::pair<std::size_t, typeset::Dim>> last;
  for (std::size_t p = 0; p < document.pages.size(); ++p) {
    for (const typeset::Item& item : document.pages[p].items) {
      const auto* run = std::get_if<typeset::TextRun>(&item.what);
      if (!run || item.tag <= 0) continue;
      int tag = item.tag;
      while (tag > 0 && (document.tags[static_cast<std::size_t>(tag)].role == Role::Link ||
                         document.tags[static_cast<std::size_t>(tag)].role == Role::Span))
        tag = document.tags[static_cast<std::size_t>(tag)].parent;
      if (document.tags[static_cast<std::size_t>(tag)].role == Role::Figure) continue;
      auto& words = blocks[tag];
      const std::pair place{p, run->baseline.y};
      if (!words.empty() && last[tag] != place) words += " ";
      last[tag] = place;
      words += run->text;
    }
  }
  std::vector<std::string> all;
  for (const auto& [tag, words] : blocks) all.push_back(words);
  return all;
}

inline std::string together(const typeset::Document& document) {
  std::string all;
  for (const auto& block : blocksOf(document)) all += block + "\n";
  return all;
}

inline bool holds(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace safety_jobs
