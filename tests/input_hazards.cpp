// Hazards and the words of their conditions as read from content, and the mistakes in them.
#include "content_folder.h"
#include "near.h"

using fixture::Bad;
using fixture::Folder;

TEST_CASE("hazards are read with their conditions, the controls in the order of the hierarchy") {
  Folder folder;
  const model::Content c = folder.content();
  REQUIRE(folder.said() == "");
  REQUIRE(c.hazards.size() == 2);
  const model::Hazard& rags = c.hazards[0];
  CHECK(rags.id == "rags");
  CHECK((rags.severity == 5 && rags.exposure == 5 && rags.harmOrder() == 25));
  CHECK((rags.sign == "warn" && rags.tasks.empty()));
  REQUIRE(rags.when.all.size() == 1);
  CHECK(rags.when.all[0].condition == model::Condition::DryingOil);
  REQUIRE(rags.controls.size() == 2);
  CHECK(rags.controls[0].level == model::ControlLevel::Engineer);  // written second
  CHECK(rags.controls[1].text == "Gloves.");
  const model::When& edge = c.hazards[1].when;
  CHECK(edge.all[0].height == base::metres(1));
  CHECK(edge.all[1].id == "wash");
  CHECK(edge.any[0].condition == model::Condition::Children);
  CHECK(edge.any[1].number == 0);  // the region's year
  CHECK(edge.none[0].condition == model::Condition::Alone);
  CHECK(c.hazards[1].sign == "warn-edge");
  CHECK(c.hazards[1].tasks == std::vector<std::string>{"wash"});
  CHECK(c.conditionWords.at(model::Condition::Alone).holds == "it is alone");
  CHECK(c.labels.statements.at("H226") == "Flammable liquid and vapour");
}

TEST_CASE("mistakes in hazards are told with the whole message") {
  const char* file = "hazards.yaml";
  const Bad table[] = {
      {file, "when: drying_oil", "when: drying_oli",
       "hazards.yaml:4:11: error: hazards[1].when: 'drying_oli' is not a known condition; did you mean "
       "'drying_oil'?\n"
       "  hint: known: drying_oil, water_borne, coating, flammable, solvent, no_safety_data, hardwood, "
       "film_coating, oiled_before, built_before, may_be_treated, treated, near_water, edge_above, "
       "electric_tools, washing, sanding, task, tool, covered, enclosed, in_sun, hot_day, alone, public, "
       "children, noise_above, vibration_above, lifting_above, tool_above, boards_above, site or long_day\n"},
      {file, "when: drying_oil", "when: edge_above",
       "hazards.yaml:4:11: error: hazards[1].when: 'edge_above' needs a value\n"
       "  hint: write it like {edge_above: 1 m}\n"},
      {file, "when: drying_oil", "when: {drying_oil: true}",
       "hazards.yaml:4:24: error: hazards[1].when.drying_oil: this condition takes no value\n"
       "  hint: write it like '- oil', without a colon\n"},
      {file, "when: drying_oil", "when: {none: [alone]}",
       "hazards.yaml:4:11: error: hazards[1].when: 'none' alone would hold for every job\n"
       "  hint: add 'all' or 'any'\n"},
      {file, "task: wash", "task: wahs",
       "hazards.yaml:16:44: error: hazards[2].when.all[2].task: 'wahs' is not a known task; did you mean "
       "'wash'?\n"
       "  hint: known: clear, wash or sand\n"},
      {file, "task: wash", "tool: wash",
       "hazards.yaml:16:44: error: hazards[2].when.all[2].tool: 'wash' is not a known tool; did you mean "
       "'washer'?\n"
       "  hint: known: washer\n"},
      {file, "edge_above: 1 m", "edge_above: 1",
       "hazards.yaml:16:31: error: hazards[2].when.all[1].edge_above: '1' needs a unit\n"
       "  hint: write '1 m'\n"},
      {file, "any: [children, {built_before: lead}]", "any: []",
       "hazards.yaml:16:57: error: hazards[2].when.any: the list is empty\n"
       "  hint: name a condition or leave the key out\n"},
      {file, "    harm: fire\n", "",
       "hazards.yaml:2:5: error: hazards[1]: 'harm' is missing\n"
       "  hint: write it like harm: A fire at night can kill.\n"},
      {file, "harm: fire", "harm: ''",
       "hazards.yaml:8:11: error: hazards[1].harm: the text is empty\n"
       "  hint: give one or leave the key out\n"},
      {file, "- protect: Gloves.", "- protec: Gloves.",
       "hazards.yaml:10:9: error: hazards[1].controls[1].protec: 'protec' is not a known step of the "
       "hierarchy "
       "of controls; did you mean 'protect'?\n"
       "  hint: known: eliminate, substitute, engineer, organise or protect\n"},
      {file, "{cutout}", "{cutuot}",
       "hazards.yaml:11:19: error: hazards[1].controls[2].engineer: 'cutuot' is not a known word in braces; "
       "did "
       "you mean 'cutout'?\n"
       "  hint: known: cutout, mask, gas_mask, emergency, fall_rule, ask_safety, ask_waste, ask_lead, "
       "ask_treated, "
       "edge, decks, leader, tin, sander, vacuum, pause or generator_distance\n"},
      {file, "severity: 5", "severity: 6",
       "hazards.yaml:5:15: error: hazards[1].severity: '6' is out of range\n"
       "  hint: allowed: from 1 to 5\n"},
      {file, "tasks: [wash]", "tasks: [wahs]",
       "hazards.yaml:20:13: error: hazards[2].tasks[1]: 'wahs' is not a known task; did you mean 'wash'?\n"
       "  hint: known: clear, wash or sand\n"},
      {file, "id: edge", "id: rags",
       "hazards.yaml:14:5: error: hazards[2]: the hazard 'rags' is given twice\n"
       "  hint: give each its own id\n"},
      {file, "  alone: {holds: it is alone, fails: it is not alone}\n", "",
       "hazards.yaml:27:3: error: conditions: 'alone' is missing\n"
       "  hint: write it like alone: {holds: there is some, fails: there is none}\n"},
  };
  fixture::checkEach(table, [](Folder& f) { f.content(); });
}

TEST_CASE("a tool's vibration is a total, or its three axes") {
  // Root of the sum of squares: ISO 5349-1 and Directive 2002/44/EC, annex A.1; recomputed.
  struct {
    const char* axes;
    double total;
  } cases[] = {{"[1 m/s2, 2 m/s2, 2 m/s2]", 3.0},
               {"[3 m/s2, 4 m/s2, 0 m/s2]", 5.0},
               {"[2.1 m/s2, 1.7 m/s2, 3.3 m/s2]", 4.265},
               {"[0.5 m/s2, 0.5 m/s2, 0.5 m/s2]", 0.866}};
  for (const auto& c : cases) {
    Folder folder;
    folder.edit("tools.yaml", "vibration: 2.5 m/s2", std::string("vibration: ") + c.axes);
    const auto tools = folder.content().tools;
    INFO(c.axes);
    CHECK(folder.said() == "");
    CHECK(static_cast<double>(tools.at(0).vibration->millionths) / 1e6 == near(c.total).margin(0.001));
  }
}

TEST_CASE("a product names one solvent or several, each limit in its own unit") {
  Folder folder;
  folder.edit(
      "products/oil.yaml",
      "vapour: {substance: spirit, exposure_limit: 350 mg/m3, lel: 0.6 %, molar_mass: 142 g/mol}",
      "vapour:\n    - {substance: spirit, exposure_limit: 350 mg/m3, lel: 0.6 %, molar_mass: 142 g/mol, "
      "share: 90 %}\n"
      "    - {substance: xylene, exposure_limit: 50 ppm, lel: 1.0 %, molar_mass: 106 g/mol, share: 10 %}");
  const auto content = folder.content();
  REQUIRE(folder.said() == "");
  const auto& vapours = content.products.at("oil").sds->vapours;
  REQUIRE(vapours.size() == 2);
  CHECK((vapours[0].exposureLimit == 350 && !vapours[0].isInPpm));
  CHECK((vapours[1].exposureLimit == 50 && vapours[1].isInPpm));
  CHECK(vapours[1].share == base::Share::whole(10));
}

TEST_CASE("a limit of white spirit is read as it is published, what is dangerous at once is none") {
  // OSHA, chemical sampling information, Stoddard solvent (CH_268000): PEL of general industry 500 ppm, of
  // construction 200 ppm, TLV of ACGIH 100 ppm; immediately dangerous by NIOSH: 20,000 mg/m3.
  for (const auto& [limit, ppm] : {std::pair{"500 ppm", 500}, {"200 ppm", 200}, {"100 ppm", 100}}) {
    Folder folder;
    folder.edit("products/oil.yaml", "exposure_limit: 350 mg/m3", std::string("exposure_limit: ") + limit);
    const auto content = folder.content();
    REQUIRE(folder.said() == "");
    CHECK(content.products.at("oil").sds->vapours.at(0).exposureLimit == ppm);
    CHECK(content.products.at("oil").sds->vapours.at(0).isInPpm);
  }
  Folder folder;
  folder.edit("products/oil.yaml", "350 mg/m3", "20000 mg/m3");
  folder.content();
  CHECK(folder.said().find("'20000 mg/m3' is out of range") != std::string::npos);
}

TEST_CASE("mistakes in solvents and axes are told") {
  const char* solvent =
      "vapour: {substance: spirit, exposure_limit: 350 mg/m3, lel: 0.6 %, molar_mass: 142 g/mol}";
  const Bad table[] = {
      {"tools.yaml", "vibration: 2.5 m/s2", "vibration: [2.5 m/s2, 1 m/s2]",
       "tools.yaml:2:66: error: tools.washer.vibration: three axes are needed, or their total\n"
       "  hint: write it like [2.1 m/s2, 1.6 m/s2, 1.2 m/s2], or 3.1 m/s2\n"},
      {"products/oil.yaml", "350 mg/m3", "0 ppm",
       "products/oil.yaml:37:47: error: sds.vapour.exposure_limit: '0 ppm' is out of range\n"
       "  hint: allowed: from 1 ppm to 10000 ppm\n"},
      {"products/oil.yaml", solvent,
       "vapour:\n    - {substance: a, exposure_limit: 350 mg/m3, lel: 1 %, molar_mass: 142 g/mol, share: 60 "
       "%}\n"
       "    - {substance: b, exposure_limit: 350 mg/m3, lel: 1 %, molar_mass: 142 g/mol, share: 50 %}",
       "products/oil.yaml:38:5: error: sds.vapour: the shares come to more than 100 %\n"
       "  hint: they are parts of what evaporates\n"},
  };
  fixture::checkEach(table, [](Folder& folder) { folder.content(); });
}
