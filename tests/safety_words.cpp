// What the documents say of dangers and limits, and what they never say.
#include "app/pack/telling.h"
#include "example_jobs.h"
#include "safety/exposure.h"
#include "safety/hazards.h"
#include "safety_jobs.h"
#include "sheets/facts/explain.h"

#include <regex>

using namespace safety_jobs;

namespace {

/// The sheet of a job on which a person works four hours at 92 dB(A) and one at 98, or a share of both.
std::string noisySheet(const std::string& region, int percent) {
  auto x = computed(inRegion(worstJob, region));
  model::Content content = shipped().content;
  const auto share = base::Share::whole(percent);
  x.c.job.crew.breakMinutes = 0;
  content.tools = {{"a", "a", {"sand"}, 92, {}, share, true, false},
                   {"b", "b", {"edges"}, 98, {}, share, true, false}};
  model::Plan plan;
  const auto day = x.plan.days.front();
  plan.shifts = {{"sand", 0, 80, {day, 8 * 60}, {day, 12 * 60}, 2},
                 {"edges", 0, 80, {day, 13 * 60}, {day, 14 * 60}, 2}};
  x.exposure.noise = safety::exposureOf(x.c, content, x.estimate, plan).noise;
  return together(documents(x, {"safety"}).at("safety"));
}

/// With another product or region in place of the job's.
std::string sheetOf(app::Computation x) {
  x.hazards = safety::hazardsOf(x.c, shipped().content, x.estimate, x.exposure);
  return together(documents(x, {"safety"}).at("safety"));
}

}  // namespace

TEST_CASE("limits are printed with the year of their rule, and those from memory not at all") {
  const auto sheetIn = [](const std::string& region) {
    return together(documents(computed(inRegion(worstJob, region)), {"safety"}).at("safety"));
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
                            "a fall of 7\u00A0ft", "NIOSH 2016-106"}) {
    INFO(words);
    CHECK(holds(us, words));
  }
  for (const char* metric : {"°C", "m³/h", " kg"}) {
    INFO(metric);
    CHECK_FALSE(holds(us, metric));
  }
  // No value for vibration is set by OSHA, so nothing is told that would rest on one.
  CHECK(holds(us, "check with the state\u2019s work safety office or federal OSHA"));
  CHECK_FALSE(holds(us, "2 h 28"));
}

TEST_CASE("a limit that the region has only from memory gives way to whom to ask") {
  auto x = computed(worstJob);
  auto& limits = x.exposure.limits;
  for (auto* source : {&limits.noise.source, &limits.vibration.source, &limits.heat.source})
    *source = "a guide, from memory";
  const std::string words = sheetOf(x);
  for (const char* number : {"85 dB(A)", "2.5 and 5", "27\u00A0°C", "from memory", "dB out", "At most"}) {
    INFO(number);
    CHECK_FALSE(holds(words, number));
  }
  const std::string ask = "check with WorkSafe New Zealand";
  std::size_t times = 0;
  for (std::size_t at = words.find(ask); at != std::string::npos; at = words.find(ask, at + 1)) ++times;
  CHECK(times == 4);  // noise, vibration, heat and wood dust
}

TEST_CASE("a day of 4 h at 92 dB(A) and 1 h at 98 is told in the form of the place") {
  // L_EX,8h of Directive 2003/10/EC: 10 log10((4 10^9.2 + 10^9.8) / 8) = 91.99; down to the lower action
  // value of 80 are 12 dB, and 10^(6.99 / 10) = 5 people bring it under the upper one of 85. The crew has
  // three, so the hours of five people are those of five days.
  const std::string gb = noisySheet("gb", 100);
  CHECK(holds(gb, "92 dB(A)"));
  CHECK(holds(gb, "Ear protection must keep 12 dB out as worn; its label has to say more."));
  CHECK(holds(gb, "Under 85 dB(A) only spread over 5 days, or with a quieter tool."));
  // Shared by two: 88.98 dB(A), 9 dB and 10^(3.98 / 10) = 2.5 people.
  const std::string two = noisySheet("gb", 50);
  CHECK(holds(two, "89 dB(A)"));
  CHECK(holds(two, "Ear protection must keep 9 dB out as worn; its label has to say more."));
  CHECK(holds(two, "Under 85 dB(A) only spread over 3 days, or with a quieter tool."));
  // 29 CFR 1910.95, App. A: 4 / 6.063 + 1 / 2.639 = 104 %, which is 90 + 16.61 log10 1.04 = 90.27 dB(A), 5.27
  // above the action level: an NRR of 2 x 5.27 + 7 = 17.5. NIOSH 98-126: 4 / 1.587 + 1 / 0.397 = 504 %.
  const std::string us = noisySheet("us", 100);
  CHECK(holds(us, "90 dB(A), dose 104 %; guidance of NIOSH: 504 %"));
  CHECK(holds(us, "Ear protection of NRR 18 or more: (NRR − 7) ÷ 2 is what it keeps out."));
  CHECK(holds(us, "Under 90 dB(A) only spread over 2 days, or with a quieter tool."));
  // Half of it: 52 %, 85.27 dB(A), under 90 in one day.
  const std::string usTwo = noisySheet("us", 50);
  CHECK(holds(usTwo, "85 dB(A), dose 52 %; guidance of NIOSH: 252 %"));
  CHECK(holds(usTwo, "Ear protection of NRR 8 or more"));
  CHECK_FALSE(holds(usTwo, "only spread over"));
  CHECK_FALSE(holds(usTwo, "Past NIOSH"));
  // Two fifths: 42 %, 83.66 dB(A), under OSHA's action level and above NIOSH's guidance.
  const std::string usLess = noisySheet("us", 40);
  CHECK(holds(usLess, "84 dB(A), dose 42 %; guidance of NIOSH: 202 %"));
  CHECK_FALSE(holds(usLess, "of NRR"));
  CHECK(holds(usLess, "Past NIOSH\u2019s guidance: muffs or plugs on."));
}

TEST_CASE("heat stroke is told by confused, slurred and stumbling people, who may sweat") {
  // The Korey Stringer Institute, exertional heat stroke: the skin is hot, wet or dry.
  const std::string words = sheetOf(computed(worstJob));
  CHECK(holds(words, "Confused, slurred, stumbling? Call 111, shade, cold water all over."));
  CHECK_FALSE(holds(words, "no sweat"));
}

TEST_CASE("the warmth felt says whether it is that of the sun or of the shade") {
  // Steadman (1994) has a form for each; the heat index is one of the shade, and full sun adds up to 15 F
  // (National Weather Service).
  CHECK(holds(sheetOf(computed(worstJob)), " in the sun at "));
  const std::string roofed = replaced(worstJob, "edge_height: 0.9 m", "covered: true");
  CHECK(holds(sheetOf(computed(roofed)), " in the shade at "));
  CHECK_FALSE(holds(sheetOf(computed(roofed)), " in the sun"));
  const std::string us = sheetOf(computed(inRegion(worstJob, "us")));
  CHECK(holds(us, " in the shade at "));
  CHECK(holds(us, ", full sun up to 15\u00A0°F more"));
}

TEST_CASE("on treated boards neither jet, bleach, acid nor blower, and a HEPA vacuum only") {
  // Caring for Our Children, standard 5.2.9.12: no power washing, bleach or acid cleaner on CCA timber. NSW
  // EPA, treated timber: a HEPA vacuum, others blow the dust back.
  const std::string mixed = sheetOf(computed(worstJob));  // kwila and treated pine
  CHECK(holds(mixed, "B Terrace: no pressure washer, bleach, acid or blower."));
  CHECK(holds(mixed, "HEPA vacuum only."));
  CHECK(holds(mixed, "Switch the HEPA vacuum on before the sander."));
  CHECK(holds(mixed, "Blown grit"));  // the veranda is blown off and washed
  CHECK(holds(mixed, "The jet, wet leads"));
  const std::string treated =
      sheetOf(computed(replaced(worstJob, "timber: kwila", "timber: radiata-treated")));
  CHECK_FALSE(holds(treated, "Blown grit"));
  CHECK_FALSE(holds(treated, "The jet, wet leads"));
  const std::string none = sheetOf(computed(replaced(worstJob, "timber: radiata-treated", "timber: kwila")));
  CHECK_FALSE(holds(none, "HEPA"));
  CHECK(holds(none, "Switch the class M vacuum on before the sander."));
}

TEST_CASE("a product without safety data stops the sheet, and the check tells of it") {
  app::Shipped firm = shipped();
  model::Product bare = firm.content.products.at("tern-oil");
  bare.id = "bare-oil";
  bare.sds.reset();
  firm.content.products["bare-oil"] = bare;
  base::Diagnostics messages;
  const auto x =
      app::computeText(replaced(plainJob, "plover-wb", "bare-oil"), "job.yaml", firm, {}, messages);
  REQUIRE(x);
  std::string told;
  for (const auto& d : messages.all()) told += base::format(d);
  CHECK(holds(told, "job.yaml:8:10: warning: product: 'bare-oil' has no safety data"));
  CHECK(holds(told, "copy them from its safety data sheet (SDS) under 'sds:' in its file"));
  const std::string words = together(documents(*x, {"safety"}).at("safety"));
  CHECK(holds(words, "SDS missing: do not start."));
  CHECK(holds(words, "The safety data sheet is missing."));
  CHECK_FALSE(holds(words, "SDS section 4"));
}

TEST_CASE("no document promises what nobody can keep, in any language") {
  // What a sheet of paper cannot know: that something is safe, lawful or sure. By language, in letters that
  // std::regex knows.
  const std::map<std::string, std::regex> promises = {
      {"en", std::regex(R"(\b(safe|safely|compliant|compliance|complies|guaranteed|harmless|risk-free)\b)",
                        std::regex::icase)},
      {"es", std::regex(R"(\b(segur[oa]s?|cumple|cumplen|garantizad[oa]s?|inofensiv[oa]s?|sin riesgo)\b)",
                        std::regex::icase)},
      {"pl", std::regex(R"((^|\s)(bezpieczn(y|a|e|ie|ych)|gwarantowan\w*|nieszkodliw\w*|bez ryzyka)\b)",
                        std::regex::icase)}};
  const auto check = [&](const app::Computation& x, const std::string& language,
                         const std::vector<std::string>& only) {
    app::Choices choices;
    choices.languages = {language};
    for (const auto& [name, pages] : documents(x, only, choices)) {
      const std::string words = together(pages);
      std::smatch found;
      INFO(x.c.job.ref << ": " << name << " in " << language);
      if (std::regex_search(words, found, promises.at(language))) FAIL_CHECK("says '" << found.str() << "'");
    }
  };
  for (const auto* job : {&plainJob, &worstJob}) {
    const auto x = computed(*job);
    for (const char* language : {"en", "es"}) check(x, language, {});
    check(x, "pl", {"safety"});
  }
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = app::compute(file, shipped(), {}, messages);
    REQUIRE(x);
    for (const char* language : {"en", "es"}) check(*x, language, {});
    check(*x, "pl", {"safety"});
  }
}

TEST_CASE("every document that says how to work defers to law, data sheet and licensed people") {
  struct {
    const char *document, *language;
    std::vector<const char*> words;
  } cases[] = {
      {"safety", "en", {"stand above this page", "for licensed people"}},
      {"safety", "es", {"por encima de esta p\u00E1gina", "para personal autorizado"}},
      {"safety",
       "pl",
       {"maj\u0105 pierwsze\u0144stwo przed t\u0105 stron\u0105", "dla os\u00F3b z uprawnieniami"}},
      {"aftercare", "en", {"stand above this sheet"}},
      {"aftercare", "es", {"por encima de esta hoja"}},
      {"quote",
       "en",
       {"We work by the product\u2019s data sheet.", "follows local rules and may need licensed people"}},
      {"quote", "es", {"ficha t\u00E9cnica", "personal autorizado"}},
      {"dayplan", "en", {"law, SDS and safety sheet come first"}},
      {"dayplan", "es", {"ley, SDS y hoja de seguridad van antes"}},
      {"orders", "en", {"safety data sheet (SDS)", "Local rules stand above this list."}},
      {"orders", "es", {"hoja de datos de seguridad (SDS)", "por encima de esta lista"}},
      {"office", "en", {"the law of the place stands above them", "for licensed people"}},
      {"office", "es", {"la ley del lugar", "personal autorizado"}},
  };
  for (const auto* job : {&plainJob, &worstJob}) {
    const auto x = computed(*job);
    for (const auto& c : cases) {
      app::Choices choices;
      choices.languages = {c.language};
      const std::string words = together(documents(x, {c.document}, choices).at(c.document));
      for (const char* part : c.words) {
        INFO(x.c.job.ref << ": " << c.document << " in " << c.language << ": " << part);
        CHECK(holds(words, part));
      }
    }
  }
}

TEST_CASE("the explanation tells all of a hazard, and the doses of each day") {
  const auto x = computed(worstJob);
  base::Diagnostics messages;
  const auto told = app::tell(x, shipped(), "en", messages);
  const std::string words = sheets::explainSafety(told->computed());
  for (const char* part :
       {"\nthe day of one person\n  Mon\u00A015\u00A0Feb 2027: noise ", " dB(A) as L_EX,8h, ",
        " m/s² as A(8), ", "\nhazards on the safety sheet\n",
        "  edge-high: the edge drops 2.4 m, more than 1.8 m\n", "    who: everyone on the deck\n",
        "    harm: a fall of 2.40\u00A0m can kill\n",
        "    engineer: A rail or scaffold, put up by trained people, before anyone works there.\n",
        "    organise: Face the drop, never back up to it.\n", "    stays: steps and gaps\n",
        "    source: 29 CFR 1926.501 (US)", "    told in: a panel\n", "    told in: its row of the limits\n",
        "    told in: a row of the hazards\n", "\nhazards left out\n", "  alone: nobody works alone\n"}) {
    INFO(part);
    CHECK(holds(words, part));
  }
  CHECK_FALSE(holds(words, "{"));
}
