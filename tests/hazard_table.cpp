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
  model::Resources resources;
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
    else if (key == "rail") deck.hasRail = true;
    else if (key == "site")
      site.hazards.push_back(value == "no-signal" ? "no signal" : value == "no-toilet" ? "no toilet" : value);
    else if (key == "long") c.job.crew.endMinutes = c.job.crew.startMinutes + 660;
    else if (key == "boards") exposure.warmestBoards = number;
    else if (key == "tool") exposure.lifting.heaviestTool = static_cast<int>(number);
    else if (key == "tin") exposure.lifting.heaviestTin = number;
    else if (key == "noise") exposure.noise = {{{}, 0, 0, number, number, 0, 0, 0}};
    else if (key == "vibration") exposure.vibration = {{{}, number, 0, 0, 0, {}}};
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
        resources.labour.push_back(line);
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
  for (const auto& h : safety::hazardsOf(job.c, content(), job.estimate, job.resources, job.exposure)) {
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
      {"oil", "", "coating-rags electric grit slips product-contact trips lightning"},
      {"", "", "trips lightning"},
      {"wash", "", "electric washing dirty-water slips trips lightning"},
      {"fix", "", "nails batteries trips lightning"},
      {"sand", "", "electric machines wood-dust trips lightning"},
      {"wash oil", "",
       "coating-rags electric washing dirty-water grit slips product-contact trips lightning"},
      {"wash fix sand oil", "",
       "coating-rags electric machines wood-dust washing dirty-water nails batteries grit slips "
       "product-contact trips lightning"},
      // Drying oils.
      {"oil", "product=tern-oil", "oily-rags electric grit flammable slips product-contact trips lightning"},
      {"oil", "product=knot-care", "oily-rags electric grit flammable slips product-contact trips lightning"},
      {"oil", "product=dunlin-stain",
       "oily-rags electric grit flammable slips product-contact trips lightning"},
      {"sand", "product=tern-oil", "electric machines wood-dust trips lightning"},
      {"wash sand", "product=tern-oil",
       "electric machines wood-dust washing dirty-water slips trips lightning"},
      {"sand oil", "product=tern-oil",
       "oily-rags-and-dust electric machines wood-dust grit flammable slips product-contact trips lightning"},
      {"oil late", "", "coating-rags electric machines wood-dust grit slips product-contact trips lightning"},
      {"oil late", "timber=kwila",
       "coating-rags electric machines hardwood-dust grit slips product-contact trips lightning"},
      {"oil", "product=bare-oil", "no-sds oily-rags electric grit slips product-contact trips lightning"},
      {"sand", "product=bare-oil", "electric machines wood-dust trips lightning"},
      // Boards that were oiled before.
      {"sand", "oiled", "electric machines wood-dust oiled-dust trips lightning"},
      {"sand oil", "oiled",
       "coating-rags electric machines wood-dust oiled-dust grit slips product-contact trips lightning"},
      {"sand oil", "oiled product=tern-oil",
       "oily-rags-and-dust electric machines wood-dust oiled-dust grit flammable slips product-contact trips "
       "lightning"},
      {"wash", "oiled", "electric washing dirty-water slips trips lightning"},
      // Roofs and walls.
      {"oil", "covered", "coating-rags electric grit slips product-contact trips lightning"},
      {"oil", "covered product=tern-oil",
       "oily-rags electric vapour grit flammable slips product-contact trips lightning"},
      {"oil", "enclosed product=dunlin-stain",
       "oily-rags electric vapour grit flammable slips product-contact trips lightning"},
      {"sand", "covered product=tern-oil", "electric machines wood-dust trips lightning"},
      // Timbers.
      {"sand", "timber=kwila", "electric machines hardwood-dust trips lightning"},
      {"oil", "timber=kwila", "coating-rags electric grit slips product-contact trips lightning"},
      {"sand", "timber=larch and=oak", "electric machines hardwood-dust trips lightning"},
      {"sand", "timber=radiata-treated", "treated-timber electric machines wood-dust trips lightning"},
      {"oil", "treated", "coating-rags treated-left electric slips product-contact trips lightning"},
      {"fix", "timber=radiata-treated", "treated-left nails batteries trips lightning"},
      // Neither jet nor blower on treated boards.
      {"wash", "timber=radiata-treated", "treated-left treated-water slips trips lightning"},
      {"wash", "timber=radiata-treated and=larch",
       "treated-left electric washing treated-water slips trips lightning"},
      {"oil", "timber=radiata-treated and=larch",
       "coating-rags treated-left electric grit slips product-contact trips lightning"},
      // Old coatings, with the year the building was built where the region knows one.
      {"sand", "film", "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=us built=1962",
       "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=us built=1978", "electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=us", "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=gb built=2009", "electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=gb built=1991",
       "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=nz built=1989",
       "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=nz built=1990", "electric machines wood-dust oiled-dust trips lightning"},
      {"sand", "film region=ie built=2009",
       "old-coating electric machines wood-dust oiled-dust trips lightning"},
      {"wash", "built=1900", "electric washing dirty-water slips trips lightning"},
      // The place and its people.
      {"oil", "edge=400", "coating-rags electric grit slips product-contact trips lightning"},
      {"oil", "edge=900 water",
       "coating-rags water edge electric grit slips product-contact trips lightning"},
      {"oil", "edge=2400", "coating-rags edge-high electric grit slips product-contact trips lightning"},
      {"wash", "public children alone",
       "electric washing dirty-water slips trips lightning alone public children"},
      {"fix", "sun", "nails batteries trips lightning sun"},
      // Days: heat, noise, vibration, weight.
      {"oil", "hot", "coating-rags electric grit slips product-contact trips lightning heat"},
      {"oil", "hot sun product=tern-oil",
       "oily-rags electric grit flammable slips product-contact trips lightning heat sun"},
      {"fix", "unknown-weather", "nails batteries trips lightning heat"},
      {"sand", "noise=79.9 vibration=2.4", "electric machines wood-dust trips lightning"},
      {"sand", "noise=80 vibration=2.5", "electric machines wood-dust noise vibration trips lightning"},
      {"fix", "sun covered", "nails batteries trips lightning"},
      {"sand", "noise=84 region=us", "electric machines wood-dust trips lightning"},
      {"sand", "noise=85 region=us", "electric machines wood-dust noise trips lightning"},
      // ANSI/ASA S2.70-2006 (US): action value 2.5 m/s2, from memory.
      {"sand", "vibration=2.4 region=us", "electric machines wood-dust trips lightning"},
      {"sand", "vibration=2.5 region=us", "electric machines wood-dust vibration trips lightning"},
      {"sand", "vibration=5 region=us", "electric machines wood-dust vibration trips lightning"},
      {"oil", "tin=15", "coating-rags electric grit slips product-contact trips lightning"},
      {"oil", "tin=19", "coating-rags electric grit slips product-contact lifting trips lightning"},
      // Everything at once.
      {"wash fix sand oil",
       "product=tern-oil timber=kwila film covered edge=900 water treated sun hot noise=93 vibration=4 "
       "tin=19 public children alone",
       "oily-rags-and-dust treated-timber old-coating water edge electric machines vapour hardwood-dust "
       "oiled-dust noise vibration treated-water nails batteries flammable slips product-contact lifting "
       "trips "
       "lightning alone heat public children"},
      // What only the job can tell, and what the days bring.
      {"", "site=vehicles site=ticks", "vehicles trips lightning ticks"},
      {"", "site=no-signal site=generator site=no-toilet", "trips lightning no-signal generator no-toilet"},
      {"", "site=wasps site=snakes site=needles", "trips lightning wasps snakes needles"},
      {"", "long", "trips lightning long-day"},
      {"", "boards=60", "trips lightning"},
      {"", "boards=61", "trips lightning hot-boards"},
      {"sand", "tool=62", "electric machines wood-dust heavy-tools trips lightning"},
      {"sand", "tool=15", "electric machines wood-dust trips lightning"},
      {"", "edge=900 rail", "trips lightning"},
  };
  for (const Row& row : table) {
    INFO("'" << row.work << "' with '" << row.job << "'");
    CHECK(hazardsOf(row.work, row.job) == row.hazards);
  }
  CHECK(std::size(table) >= 60);
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
