// What the documents say of dangers and limits.
#include "near.h"
#include "safety/exposure.h"
#include "safety/hazards.h"
#include "safety_jobs.h"
#include "sheets/explain/explain.h"

#include <regex>

using namespace safety_jobs;

namespace {

/// Leaf and assessment of a job on which a person works four hours at 92 dB(A) and one at 98, or a share of
/// both.
std::pair<std::string, std::string> noisySheets(const std::string& region, int percent) {
  auto x = computed(inRegion(worstJob, region));
  model::Content content = shipped().content;
  const auto share = base::Share::whole(percent);
  x.c.job.crew.breakMinutes = 0;
  content.tools = {{"a", "a", {"sand"}, 92, {}, share, true, false},
                   {"b", "b", {"edges"}, 98, {}, share, true, false}};
  model::Plan plan;
  const auto day = x.plan.days.front().date;
  plan.shifts = {{"sand", 0, 80, {day, 8 * 60}, {day, 12 * 60}, 2},
                 {"edges", 0, 80, {day, 13 * 60}, {day, 14 * 60}, 2}};
  const auto exposure = safety::exposureOf(x.c, content, x.estimate, x.resources, plan);
  x.exposure.noise = exposure.noise;
  x.exposure.protector = exposure.protector;
  const auto sheets = documents(x, {"safety", "risk"});
  return {together(sheets.at("safety")), together(sheets.at("risk"))};
}

/// With another product or region in place of the job's.
std::string sheetOf(model::JobResult x) {
  x.hazards = safety::hazardsOf(x.c, shipped().content, x.estimate, x.resources, x.exposure);
  return together(documents(x, {"safety"}).at("safety"));
}

}  // namespace

TEST_CASE("limits are printed with the year of their rule, and those from memory not at all") {
  const auto sheetIn = [](const std::string& region) {
    return together(documents(computed(inRegion(worstJob, region)), {"risk"}).at("risk"));
  };
  const std::string nz = sheetIn("nz");
  CHECK(
      holds(nz, "check with WorkSafe New Zealand"));  // wood dust: its file has no number it would stand for
  CHECK(holds(nz, "Directive 2002/44/EC (2002)"));
  const std::string gb = sheetIn("gb");
  CHECK(holds(gb, "3\u00A0mg/m³"));  // EH40/2005, hardwood
  CHECK(holds(gb, "Noise at Work Regulations 2005"));
  const std::string us = sheetIn("us");
  for (const char* words : {"29 CFR 1910.95", "85 and 90 dB(A)", "80\u00A0°F", "ft³/min",
                            "A fall of 7\u00A0ft", "NIOSH 2016-106", "29 CFR 1926.501(b)(1)"}) {
    INFO(words);
    CHECK(holds(us, words));
  }
  for (const char* metric : {"°C", "m³/h", " kg"}) {
    INFO(metric);
    CHECK_FALSE(holds(us, metric));
  }
  // No value for vibration is set by OSHA, so nothing is told that would rest on one.
  CHECK(holds(us, "check with the state\u2019s work safety office or federal OSHA"));
}

TEST_CASE("a limit that the region has only from memory gives way to whom to ask") {
  auto x = computed(worstJob);
  auto& limits = x.exposure.limits;
  for (auto* source : {&limits.noise.source, &limits.vibration.source, &limits.heat.source})
    *source = "a guide, from memory";
  x.hazards = safety::hazardsOf(x.c, shipped().content, x.estimate, x.resources, x.exposure);
  const auto sheets = documents(x, {"safety", "risk"});
  const std::string risk = together(sheets.at("risk")), leaf = together(sheets.at("safety"));
  for (const char* number : {"85 dB(A)", "2.5 and 5", "from 27\u00A0°C", "a guide"}) {
    INFO(number);
    CHECK_FALSE(holds(risk, number));
  }
  CHECK(holds(leaf, "ask first"));
  CHECK_FALSE(std::regex_search(leaf, std::regex(R"(Class.{1,2}\d muffs)")));
  CHECK_FALSE(holds(leaf, " each\n"));
  const std::string ask = "check with WorkSafe New Zealand";
  std::size_t times = 0;
  for (std::size_t at = risk.find(ask); at != std::string::npos; at = risk.find(ask, at + 1)) ++times;
  CHECK(times == 4);  // noise, vibration, heat and wood dust
}

TEST_CASE("a day of 4 h at 92 dB(A) and 1 h at 98 is told in the form of the place") {
  // L_EX,8h of Directive 2003/10/EC: 10 log10((4 10^9.2 + 10^9.8) / 8) = 91.99. EN 458 with 4 dB lost in use
  // (HSE L108): 98 - 80 + 4 = 22 to 98 - 70 + 4 = 32 dB SNR.
  const auto gb = noisySheets("gb", 100);
  CHECK(holds(gb.first, "SNR 22–32"));
  CHECK(holds(gb.first, "Loudest: 98 dB(A)"));
  // 29 CFR 1910.95, App. A: 4 / 6.063 + 1 / 2.639 = 104 %, which is 90 + 16.61 log10 1.04 = 90.27 dB(A).
  // NIOSH 98-126: 4 / 1.587 + 1 / 0.397 = 504 %. 98 to the action level of 85 are 13 dB, an NRR of 2 x 13 + 7
  // = 33.
  const auto us = noisySheets("us", 100);
  CHECK(holds(us.first, "NRR 33 muffs"));
  CHECK(holds(us.second, "90 dB(A), dose 104 %; guidance of NIOSH: 504 %"));
  const auto usTwo = noisySheets("us", 50);
  CHECK(holds(usTwo.second, "85 dB(A), dose 52 %; guidance of NIOSH: 252 %"));
  // AS/NZS 1269.3:2005: 92 dB(A) is class 2; the tool of 98 needs 13 dB, which class 2 has with 14.
  const auto nz = noisySheets("nz", 100);
  CHECK(holds(nz.first, "Class\u00A02 muffs"));
}

TEST_CASE("vibration tells what is left of one person's day, down to five minutes") {
  // HSE's ready-reckoner: a day of 2 h at 3.5 m/s2 (49 points) and some at 4.5: (100 - 49) / 40.5 h = 75.6
  // min.
  auto x = computed(worstJob);
  model::Content content = shipped().content;
  x.c.job.crew.breakMinutes = 0;
  content.tools = {
      {"belt", "belt sander", {"sand"}, {}, base::Count{3'500'000}, base::Share::whole(100), true, false},
      {"disc", "disc sander", {"edges"}, {}, base::Count{4'500'000}, base::Share::whole(100), true, false}};
  model::Plan plan;
  const auto day = x.plan.days.front().date;
  plan.shifts = {{"sand", 0, 80, {day, 8 * 60}, {day, 10 * 60}, 2},
                 {"edges", 0, 80, {day, 13 * 60}, {day, 14 * 60}, 2}};
  x.exposure.vibration = safety::exposureOf(x.c, content, x.estimate, x.resources, plan).vibration;
  CHECK(x.exposure.vibration.at(0).minutesLeft == near(75.6).margin(0.1));
  const std::string words = together(documents(x, {"safety"}).at("safety"));
  CHECK(holds(words, "1\u00A0h\u00A015 each"));
}

TEST_CASE("heat stroke is told by confused, stumbling and fainting people, who may sweat") {
  // The Korey Stringer Institute, exertional heat stroke: the skin is hot, wet or dry. NIOSH (2014): 20 % of
  // the shift on the first day, 20 % of 7.75 h is 1 h 33.
  const std::string words = sheetOf(computed(worstJob));
  CHECK(holds(words, "Confused, stumbling, fainting? Call 111, cool with water."));
  CHECK(holds(words, "New to heat: 1\u00A0h\u00A0"));
  CHECK(holds(words, "a cup each 20\u00A0min"));
  CHECK_FALSE(holds(words, "no sweat"));
}

TEST_CASE("the warmth felt says whether it is that of the sun or of the shade") {
  // Steadman (1994) has a form for each; the heat index is one of the shade, and full sun adds up to 15 F
  // (National Weather Service).
  const auto riskOf = [](const std::string& job) {
    return together(documents(computed(job), {"risk"}).at("risk"));
  };
  CHECK(holds(sheetOf(computed(worstJob)), " in the sun."));
  CHECK(holds(riskOf(worstJob), " in the sun at "));
  const std::string roofed = replaced(worstJob, "edge_height: 0.9 m", "covered: true");
  CHECK(holds(sheetOf(computed(roofed)), " in the shade."));
  CHECK_FALSE(holds(riskOf(roofed), " in the sun at"));
  const std::string us = riskOf(inRegion(replaced(worstJob, "covered: true", "covered: false"), "us"));
  CHECK(holds(us, " in the shade at "));
  CHECK(holds(us, ", full sun up to 15\u00A0°F more"));
}

TEST_CASE("on treated boards neither jet, bleach, acid nor blower, and a HEPA vacuum only") {
  // Caring for Our Children, standard 5.2.9.12: no power washing, bleach or acid cleaner on CCA timber. NSW
  // EPA, treated timber: a HEPA vacuum, others blow the dust back.
  const std::string mixed = sheetOf(computed(worstJob));  // kwila and treated pine
  CHECK(holds(mixed, "Arsenic may be in these boards"));
  CHECK(holds(mixed,
              "B Terrace: only licensed people sand. No blower, no jet, no bleach, no acid, "
              "no fire."));
  CHECK(holds(mixed, "HEPA vacuum only"));
  const auto riskOf = [](const std::string& job) {
    return together(documents(computed(job), {"risk"}).at("risk"));
  };
  CHECK(holds(riskOf(worstJob), "HEPA vacuum on before the sander."));
  CHECK(holds(riskOf(worstJob), "Blown grit"));  // the veranda is blown off and washed
  CHECK(holds(riskOf(worstJob), "The jet"));
  const std::string treated = riskOf(replaced(worstJob, "timber: kwila", "timber: radiata-treated"));
  CHECK_FALSE(holds(treated, "Blown grit"));
  CHECK_FALSE(holds(treated, "The jet"));
  const std::string none = riskOf(replaced(worstJob, "timber: radiata-treated", "timber: kwila"));
  CHECK_FALSE(holds(none, "HEPA"));
  CHECK(holds(none, "Class M vacuum on before the sander."));
}

TEST_CASE("boards that may hold arsenic are not sanded without papers") {
  base::Diagnostics messages;
  const auto x = compute({"job.yaml", replaced(worstJob, "licensed_for: [treated]\n", "")}, {}, messages);
  CHECK_FALSE(x);
  std::string told;
  for (const auto& d : messages.all()) told += base::format(d);
  CHECK(holds(
      told,
      ": error: areas: the boards of 'Terrace' may hold arsenic and are not sanded\n"
      "  hint: take 'sand' out of 'work:', or write 'licensed_for: [treated]' where your papers and the "
      "Environmental Protection Authority allow it; NSW EPA, treated timber; Caring for Our Children, "
      "standard "
      "5.2.9.12\n"));
}

TEST_CASE("what washes off treated boards is caught and never let run onto the lawn") {
  // Caring for Our Children, standard 5.2.9.12: water that frees arsenic goes nowhere children play; catching
  // it is common practice.
  const std::string boards = replaced(plainJob, "timber: larch", "timber: radiata-treated");
  for (const auto& words : {sheetOf(computed(boards)), sheetOf(computed(worstJob))}) {
    CHECK(holds(words, "Catch the wash water, to no lawn, to no drain."));
    CHECK_FALSE(holds(words, "Dirty water to the lawn"));
  }
  CHECK(holds(sheetOf(computed(plainJob)), "Dirty water to the lawn, to no drain or pond."));
}

TEST_CASE("a coat so late that treated boards are sanded first is refused without papers") {
  // One day a week, and a stain that waits 96 h at most.
  std::string job =
      replaced(replaced(plainJob, "plover-wb", "dunlin-stain"), "timber: larch", "timber: radiata-treated");
  job = replaced(job, "hours: 07:30-16:00,", "hours: 07:30-16:00, days: [tue],");
  const auto toldOf = [](const std::string& text) {
    base::Diagnostics messages;
    firm_jobs::compute(app::JobText{"job.yaml", text}, {}, messages);
    std::string told;
    for (const auto& d : messages.all()) {
      if (d.severity == base::Severity::Error) told += base::format(d);
    }
    return told;
  };
  CHECK(toldOf(replaced(job, "price:", "licensed_for: [treated]\nprice:")).empty());
  CHECK(toldOf(replaced(job, "radiata-treated", "larch")).empty());
  CHECK(
      toldOf(job) ==
      "job.yaml:12:5: error: areas: coat 2 of 'Deck' comes so late that the boards are sanded first, and "
      "they may hold arsenic\n"
      "  hint: give the crew more days, take another product, or write 'licensed_for: [treated]' where your "
      "papers and the Environmental Protection Authority allow it\n");
}

TEST_CASE("a place where people pass is asked about") {
  const auto toldOf = [](const std::string& job) {
    base::Diagnostics messages;
    firm_jobs::compute(app::JobText{"job.yaml", job}, {}, messages);
    std::string told;
    for (const auto& d : messages.all()) told += base::format(d);
    return told;
  };
  const std::string club = replaced(plainJob, "name: Inga Thorley", "name: Lakeside Bathing Club");
  CHECK(holds(
      toldOf(club),
      ": warning: site.public: 'club' sounds like a place where people pass, and nothing is said of them\n"
      "  hint: write 'public: true', or 'public: false' where nobody does\n"));
  for (const char* said : {"public: false, ", "public: true, "})
    CHECK_FALSE(
        holds(toldOf(replaced(club, "site: {", std::string("site: {") + said)), "sounds like a place"));
  CHECK_FALSE(holds(toldOf(plainJob), "sounds like a place"));
}

TEST_CASE(
    "the first three are those with the highest severity times exposure, and the rest is told in steps") {
  const std::string words = sheetOf(computed(worstJob));
  CHECK(holds(words, "Three things here that kill or maim"));
  for (const char* title :
       {"Arsenic may be in these boards", "Lead may be in the old coating", "Deep or cold water"}) {
    INFO(title);
    CHECK(holds(words, title));  // 25 each; the drop of 2.4 m, 25 too, comes after them in the file
  }
  CHECK(holds(words, "Rail or scaffold, put up by trained people, first."));
  const std::string plain = sheetOf(computed(plainJob));
  CHECK(holds(plain, "Current on wet boards"));  // 20, then 12 each
}

TEST_CASE("where a rail stands nobody ropes the edge") {
  const std::string job = replaced(plainJob, "state: weathered", "state: weathered\n    edge_height: 0.9 m");
  CHECK(holds(sheetOf(computed(job)), "Rope and flags one step in."));
  CHECK_FALSE(
      holds(sheetOf(computed(replaced(job, "edge_height: 0.9 m", "edge_height: 0.9 m\n    rail: true"))),
            "Rope and flags"));
}

TEST_CASE("the cleaner has its label, first aid and run-off beside the oil's") {
  const auto sheets = documents(computed(worstJob), {"safety"});
  const std::string words = together(sheets.at("safety"));
  for (const char* part : {"Deck cleaner: Danger", "Causes severe skin burns and eye damage",
                           "Cleaner into water, never bleach.", "Not to plants, not to a drain.",
                           "The oil, natural: Danger", "Flammable liquid and vapour"}) {
    INFO(part);
    CHECK(holds(words, part));
  }
  CHECK_FALSE(
      holds(sheetOf(computed(replaced(worstJob, "work: [wash, fix,", "work: [fix,"))), "Deck cleaner"));
}

TEST_CASE("under a roof the row of the oil has its gas mask, elsewhere nobody wears one") {
  // A dust mask does not stop vapour: half mask A2P2 (AS/NZS 1716), common practice.
  const std::string words = sheetOf(computed(worstJob));
  CHECK(holds(words, "P2 mask\nA2P2 mask\nsleeves"));
  CHECK_FALSE(holds(sheetOf(computed(replaced(worstJob, "    covered: true\n", ""))), "A2P2 mask"));
}

TEST_CASE("dust is told of beside the rags only where boards are sanded") {
  const std::string sanded = sheetOf(computed(worstJob));
  CHECK(holds(sanded, "Oily rags and dust set themselves alight."));
  CHECK(holds(sanded, "Vacuum out at "));
  const std::string washed = sheetOf(computed(
      replaced(replaced(worstJob, "[wash, fix, sand, oil]", "[wash, oil]"), "sanding: [60, 80, 100]\n", "")));
  CHECK(holds(washed, "Oily rags set themselves alight."));
  CHECK_FALSE(holds(washed, "Vacuum out at "));
}

TEST_CASE("work that was stopped starts again when all of the crew agree") {
  CHECK(holds(sheetOf(computed(worstJob)), "Start again when all three agree."));
  CHECK(holds(sheetOf(computed(plainJob)), "Start again when both agree."));
  CHECK(holds(sheetOf(computed(replaced(plainJob, "people: 2, hours: 07:30-16:00, names: [Ada, Ben]",
                                        "people: 1, hours: 07:30-16:00, names: [Ada]"))),
              "Start again when you are sure."));
}

TEST_CASE("generator, lightning and water are told with the figures of their sources") {
  // US Consumer Product Safety Commission: 20 ft (6 m) from the house. The 30/30 rule (NOAA): 30 s from flash
  // to bang, 30 min after the last thunder. NIOSH, 2014: a cup (237 mL) each 15 to 20 min.
  const auto leafIn = [](const std::string& region) {
    return sheetOf(computed(inRegion(
        replaced(replaced(plainJob, "site: {", "site: {hazards: [generator], "), "[wash, oil]", "[oil]"),
        region)));
  };
  CHECK(holds(leafIn("nz"), "Generator outdoors, 6\u00A0m from any opening."));
  CHECK(holds(leafIn("us"), "Generator outdoors, 20\u00A0ft from any opening."));
  // NIST, Generator safety (2021): 25 ft, which are 25 x 0.3048 = 7.6 m. The assessment names the larger
  // figure too.
  const std::string generator = replaced(plainJob, "site: {", "site: {hazards: [generator], ");
  CHECK(std::regex_search(together(documents(computed(generator), {"risk"}).at("risk")),
                          std::regex(R"(NIST, Generator safety \(2021\), 25.{1,2}ft \(7\.6.{1,2}m\))")));
  CHECK(holds(leafIn("nz"), "Flash, then thunder within 30 s? Indoors for 30 min."));
  CHECK(holds(sheetOf(computed(worstJob)), "a cup each 20\u00A0min"));
}

TEST_CASE("an address breaks between its parts") {
  const std::string words = sheetOf(
      computed(replaced(plainJob, "site: {", "site: {address: ['61 Quarry Hill Road, Sorrel Gap, NC'], ")));
  CHECK(holds(words, "61\u00A0Quarry\u00A0Hill\u00A0Road, Sorrel\u00A0Gap, NC"));
}

TEST_CASE("a value that is no law of the place is called so") {
  const auto riskIn = [](const std::string& region) {
    return together(documents(computed(inRegion(worstJob, region)), {"risk"}).at("risk"));
  };
  // Directive 2002/44/EC binds neither New Zealand nor Australia; no country here has a limit of heat.
  CHECK(holds(riskIn("nz"), "guide value, not law here: Directive 2002/44/EC (2002)"));
  CHECK(holds(riskIn("us"), "guide value, not law here: heat index of the National Weather Service"));
  CHECK(holds(riskIn("us"), "29 CFR 1926.52 in"));
  CHECK(holds(riskIn("us"), "29 CFR 1910.95"));
  CHECK_FALSE(holds(riskIn("gb"), "not law here: Control"));
}

TEST_CASE("a product without safety data stops the sheet, and the check tells of it") {
  app::Shipped firm = *firms().of({"job.yaml", plainJob});
  model::Product bare = firm.content.products.at("tern-oil");
  bare.id = "bare-oil";
  bare.sds.reset();
  firm.content.products["bare-oil"] = bare;
  firm.caches = std::make_shared<app::Caches>();  // what is read of this content
  base::Diagnostics messages;
  const auto x = app::compute(app::JobText{"job.yaml", replaced(replaced(plainJob, "plover-wb", "bare-oil"),
                                                                "work: [wash, oil]", "work: [oil]")},
                              firm, {}, messages);
  REQUIRE(x);
  std::string told;
  for (const auto& d : messages.all()) told += base::format(d);
  CHECK(holds(told, "job.yaml:8:10: warning: product: 'bare-oil' has no safety data"));
  CHECK(holds(told, "copy them from its safety data sheet (SDS) under 'sds:' in its file"));
  const std::string words = together(documents(*x, {"safety"}).at("safety"));
  CHECK(holds(words, "SDS missing: do not start"));
  CHECK(holds(words, "No safety data sheet"));
  CHECK_FALSE(holds(words, "breathed in"));
}

TEST_CASE("the explanation tells all of a hazard, and the doses of each day") {
  const auto x = computed(worstJob);
  base::Diagnostics messages;
  const std::string words = sheets::explainSafety(x);
  for (const char* part :
       {"\nthe day of one person\n  Mon\u00A015\u00A0Feb 2027: noise ", " dB(A) as L_EX,8h, ",
        " m/s² as A(8), ", "\nhazards on the safety sheet\n",
        "  edge-high: the edge drops 2.4 m, more than 1.8 m\n", "    who: everyone on the deck\n",
        "    harm: A fall of 2.40\u00A0m can kill.\n",
        "    engineer: Rail or scaffold, put up by trained people, first.\n",
        "    organise: Kneel and face the drop at the rim.\n", "    stays: steps and gaps\n",
        "    source: the rule of the place", "    harm order: 5 x 5\n", "    told in: the panel\n",
        "    told in: the first three\n", "    told in: the steps\n", "    told in: the orders\n",
        "\nhazards left out\n", "  alone: nobody works alone\n"}) {
    INFO(part);
    CHECK(holds(words, part));
  }
  CHECK_FALSE(holds(words, "{"));
}
