// What no document says, and what each that tells how to work does say.
#include "example_jobs.h"
#include "safety_jobs.h"

#include <regex>

using namespace safety_jobs;

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
  const auto check = [&](const model::JobResult& x, const std::string& language,
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
    check(x, "pl", {"safety", "risk", "dayplan"});
  }
  for (const auto& file : examples::jobs()) {
    base::Diagnostics messages;
    const auto x = firm_jobs::compute(file, {}, messages);
    REQUIRE(x);
    for (const char* language : {"en", "es"}) check(*x, language, {});
    check(*x, "pl", {"safety", "risk", "dayplan"});
  }
}

TEST_CASE("every document that says how to work defers to law, data sheet and licensed people") {
  struct {
    const char *document, *language;
    std::vector<const char*> words;
  } cases[] = {
      {"safety", "en", {"Law, data sheets and manuals come first", "licensed trades only"}},
      {"safety", "es", {"Primero ley, SDS y manuales", "personal autorizado"}},
      {"safety", "pl", {"Najpierw prawo, SDS, instrukcje", "osoby z uprawnieniami"}},
      {"aftercare", "en", {"local rules take precedence"}},
      {"aftercare", "es", {"por encima de esta hoja"}},
      {"quote",
       "en",
       {"We work by the product\u2019s data sheet.", "follows local rules and may need licensed trades"}},
      {"quote", "es", {"ficha t\u00E9cnica", "personal autorizado"}},
      {"dayplan", "en", {"law, SDS and safety sheet come first"}},
      {"dayplan", "es", {"ley, SDS y hoja de seguridad van antes"}},
      {"dayplan", "pl", {"najpierw prawo, SDS i karta BHP"}},
      {"risk", "pl", {"dla os\u00F3b z uprawnieniami"}},
      {"orders", "en", {"safety data sheet (SDS)", "Local rules take precedence."}},
      {"orders", "es", {"hoja de datos de seguridad (SDS)", "por encima de esta lista"}},
      {"office", "en", {"Local law, SDS and data sheet take precedence", "licensed trades"}},
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
