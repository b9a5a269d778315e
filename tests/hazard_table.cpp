// A decision table of the shipped hazards: each row is a job and all that has to stand on its safety sheet.
// Which hazards a job has is common practice; the thresholds behind them are checked in
// safety_conditions.cpp.
#include "input/read.h"
#include "safety/hazards.h"

#include <catch2/catch.hpp>
#include <sstream>

namespace {

const model::Content& content() {
  static const model::Content shipped = [] {
    base::Diagnostics messages;
    model::Content c = input::readContent(std::string(SOURCE_DIR) + "/content", messages);
    REQUIRE(messages.ok());
    model::Product bare = c.products.at("tern-oil");  // as a firm adds one in a hurry
    bare.sds.reset();
    c.products["bare-oil"] = bare;
    return c;
  }();
  return shipped;
}

/// The plain job: two people lay a water-borne oil on weathered larch, in the shade of a house in Great
/// Britain, on a cool day, with quiet tools and small tins.
struct Job {
  model::JobInputs c;
  model::Estimate estimate;
  model::CrewExposure exposure;

  Job() {
    c.job.areas.resize(1);
    c.job.areas[0].name = "Deck";
    c.job.areas[0].timber = "larch";
    c.job.areas[0].sun = model::ClockSpan{0, 0};
    c.job.crew.people = 2;
    set("region", "gb");
    c.product = &content().products.at("plover-wb");
    heat(15, model::HeatBand::None);
    set("noise", "70");
    set("vibration", "1");
    exposure.lifting.heaviestTin = 3;
  }

  void heat(double celsius, model::HeatBand band) { exposure.heat = {{{}, {}, celsius, false, band, false}}; }

  void set(const std::string& key, const std::string& value) {
    auto& site = c.job.site;
    auto& deck = c.job.areas.back();
    const double number = std::atof(value.c_str());
    if (key == "product") c.product = &content().products.at(value);
    else if (key == "region") c.region = &content().regions.at(value), exposure.limits = c.region->limits;
    else if (key == "timber") deck.timber = value;
    else if (key == "and") c.job.areas.push_back(deck), c.job.areas.back().timber = value;
    else if (key == "oiled") deck.state = model::State::Oiled;
    else if (key == "film") deck.state = model::State::Film;
    else if (key == "treated") deck.isTreated = true;
    else if (key == "covered") deck.isCovered = true;
    else if (key == "enclosed") deck.isEnclosed = true;
    else if (key == "edge") deck.edgeHeight = base::millimetres(std::atoi(value.c_str()));
    else if (key == "built") site.yearBuilt = std::atoi(value.c_str());
    else if (key == "water") site.isNearWater = true;
    else if (key == "public") site.isPublic = true;
    else if (key == "children") site.hasChildren = true;
    else if (key == "sun") deck.sun.reset();
    else if (key == "alone") c.job.crew.people = 1;
    else if (key == "tin") exposure.lifting.heaviestTin = number;
    else if (key == "noise") exposure.noise = {{{}, 0, 0, number, number, 0, 0, 0}};
    else if (key == "vibration") exposure.vibration = {{{}, number, 0, 0, {}}};
    else if (key == "hot") heat(30, model::HeatBand::Caution);
    else if (key == "unknown-weather") exposure.heat.clear();
    else if (key != "wash" && key != "fix" && key != "sand" && key != "oil") FAIL("no key '" << key << "'");
  }

  /// The tasks of the kinds of work, as the estimate lists them.
  void work(const std::string& words) {
    const std::pair<const char*, model::Work> kinds[] = {{"wash", model::Work::Wash},
                                                         {"fix", model::Work::Fix},
                                                         {"sand", model::Work::Sand},
                                                         {"oil", model::Work::Oil}};
    for (const auto& task : content().tasks) {
      const bool isDone =
          !task.work || std::any_of(std::begin(kinds), std::end(kinds), [&](const auto& kind) {
            return kind.second == *task.work && words.find(kind.first) != std::string::npos;
          });
      const bool isLate = words.find("late") != std::string::npos;
      if (!isDone || (task.isForLateCoat && !isLate)) continue;
      for (std::size_t deck = 0; deck < c.job.areas.size(); ++deck) {
        model::LabourLine line;
        line.task = task.id;
        if (task.work) line.deck = deck;
        estimate.labour.push_back(line);
      }
    }
    if (words.find("oil") != std::string::npos) estimate.coats.resize(1);
  }
};

std::string hazardsOf(const std::string& work, const std::string& words) {
  Job job;
  std::istringstream in(words);
  for (std::string word; in >> word;) {
    const std::size_t at = word.find('=');
    job.set(word.substr(0, at), at == std::string::npos ? "" : word.substr(at + 1));
  }
  job.work(work);
  std::string ids;
  for (const auto& h : safety::hazardsOf(job.c, content(), job.estimate, job.exposure)) {
    CHECK_FALSE(h.why.empty());
    CHECK(h.why.find('{') == std::string::npos);
    if (h.applies) ids += (ids.empty() ? "" : " ") + h.id;
  }
  return ids;
}

struct Row {
  const char* work;
  const char* job;  // what differs from the plain job
  const char* hazards;
};

}  // namespace

TEST_CASE("each job has exactly its own hazards") {
  const Row table[] = {
      // The plain case: no fire, no heat.
      {"oil", "", "electric grit slips trips product-contact"},
      {"", "", "trips"},
      {"wash", "", "electric washing slips trips"},
      {"fix", "", "nails trips"},
      {"sand", "", "electric wood-dust machines trips"},
      {"wash oil", "", "electric washing grit slips trips product-contact"},
      {"wash fix sand oil", "", "electric wood-dust machines nails washing grit slips trips product-contact"},
      // Drying oils.
      {"oil", "product=tern-oil", "oily-rags electric grit slips trips flammable product-contact"},
      {"oil", "product=knot-care", "oily-rags electric grit slips trips flammable product-contact"},
      {"oil", "product=dunlin-stain", "oily-rags electric grit slips trips flammable product-contact"},
      {"sand", "product=tern-oil", "electric wood-dust machines trips"},
      {"wash sand", "product=tern-oil", "electric wood-dust machines washing slips trips"},
      {"sand oil", "product=tern-oil",
       "oily-rags electric wood-dust machines grit slips trips flammable product-contact"},
      {"oil late", "", "electric wood-dust machines grit slips trips product-contact"},
      {"oil late", "timber=kwila", "electric hardwood-dust machines grit slips trips product-contact"},
      {"oil", "product=bare-oil", "no-sds oily-rags electric grit slips trips product-contact"},
      {"sand", "product=bare-oil", "electric wood-dust machines trips"},
      // Boards that were oiled before.
      {"sand", "oiled", "oiled-dust electric wood-dust machines trips"},
      {"sand oil", "oiled", "oiled-dust electric wood-dust machines grit slips trips product-contact"},
      {"sand oil", "oiled product=tern-oil",
       "oily-rags electric wood-dust machines grit slips trips flammable product-contact"},
      {"wash", "oiled", "electric washing slips trips"},
      // Roofs and walls.
      {"oil", "covered", "electric grit slips trips product-contact"},
      {"oil", "covered product=tern-oil",
       "oily-rags vapour electric grit slips trips flammable product-contact"},
      {"oil", "enclosed product=dunlin-stain",
       "oily-rags vapour electric grit slips trips flammable product-contact"},
      {"sand", "covered product=tern-oil", "electric wood-dust machines trips"},
      // Timbers.
      {"sand", "timber=kwila", "electric hardwood-dust machines trips"},
      {"oil", "timber=kwila", "electric grit slips trips product-contact"},
      {"sand", "timber=larch and=oak", "electric hardwood-dust machines trips"},
      {"sand", "timber=radiata-treated", "treated-timber electric wood-dust machines trips"},
      {"oil", "treated", "treated-left electric slips trips product-contact"},
      {"fix", "timber=radiata-treated", "treated-left nails trips"},
      // Neither jet nor blower on treated boards.
      {"wash", "timber=radiata-treated", "treated-left slips trips"},
      {"wash", "timber=radiata-treated and=larch", "treated-left electric washing slips trips"},
      {"oil", "timber=radiata-treated and=larch", "treated-left electric grit slips trips product-contact"},
      // Old coatings, with the year the building was built where the region knows one.
      {"sand", "film", "old-coating oiled-dust electric wood-dust machines trips"},
      {"sand", "film region=us built=1962", "old-coating oiled-dust electric wood-dust machines trips"},
      {"sand", "film region=us built=1978", "oiled-dust electric wood-dust machines trips"},
      {"sand", "film region=us", "old-coating oiled-dust electric wood-dust machines trips"},
      {"sand", "film region=gb built=2009", "old-coating oiled-dust electric wood-dust machines trips"},
      {"wash", "built=1900", "electric washing slips trips"},
      // The place and its people.
      {"oil", "edge=400", "electric grit slips trips product-contact"},
      {"oil", "edge=900 water", "edge water electric grit slips trips product-contact"},
      {"oil", "edge=2400", "edge-high electric grit slips trips product-contact"},
      {"wash", "public children alone", "electric washing slips trips public children alone"},
      {"fix", "sun", "nails trips sun"},
      // Days: heat, noise, vibration, weight.
      {"oil", "hot", "electric grit slips trips product-contact heat"},
      {"oil", "hot sun product=tern-oil",
       "oily-rags electric grit slips trips flammable product-contact heat"},
      {"fix", "unknown-weather", "nails trips heat"},
      {"sand", "noise=79.9 vibration=2.4", "electric wood-dust machines trips"},
      {"sand", "noise=80 vibration=2.5", "electric wood-dust noise vibration machines trips"},
      {"fix", "sun covered", "nails trips"},
      {"sand", "noise=84 region=us", "electric wood-dust machines trips"},
      {"sand", "noise=85 region=us", "electric wood-dust noise machines trips"},
      {"sand", "vibration=5 region=us", "electric wood-dust vibration machines trips"},
      {"oil", "tin=15", "electric grit slips trips product-contact"},
      {"oil", "tin=19", "electric grit slips trips product-contact lifting"},
      // Everything at once.
      {"wash fix sand oil",
       "product=tern-oil timber=kwila film covered edge=900 water treated sun hot noise=93 vibration=4 "
       "tin=19 public children alone",
       "oily-rags old-coating treated-timber vapour edge water electric hardwood-dust noise vibration "
       "machines nails slips trips flammable product-contact heat lifting public children alone"},
  };
  for (const Row& row : table) {
    INFO("'" << row.work << "' with '" << row.job << "'");
    CHECK(hazardsOf(row.work, row.job) == row.hazards);
  }
  CHECK(std::size(table) >= 40);
}

TEST_CASE("every hazard says whom it hurts, how, what to do best first, what stays and on what it rests") {
  for (const auto& hazard : content().hazards) {
    INFO(hazard.id);
    for (const auto* text : {&hazard.title, &hazard.who, &hazard.harm, &hazard.left, &hazard.source})
      CHECK_FALSE(text->empty());
    REQUIRE_FALSE(hazard.controls.empty());
    CHECK(std::is_sorted(hazard.controls.begin(), hazard.controls.end(),
                         [](const auto& a, const auto& b) { return a.level < b.level; }));
  }
}
