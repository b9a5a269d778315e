// The crew's days and the hazards, with all that the content says of them: text for the terminal, in English.
#include "sheets/explain/explain.h"
#include "sheets/safety/day_values.h"
#include "sheets/safety/facts_safety.h"
#include "sheets/safety/leaf.h"

namespace sheets {
namespace {

std::string dayLine(const model::JobResult& x, base::Date date, const Formatter& w) {
  std::string line;
  const auto add = [&](const std::string& words) { line += (line.empty() ? "" : "; ") + words; };
  if (const auto* day = on(x.exposure.noise, date)) {
    add("noise " + rounded(w, day->lex8h, 1) + " dB(A) as L_EX,8h, " + rounded(w, day->nioshDose, 0) +
        " % by NIOSH, " + rounded(w, day->oshaDose, 0) + " % by OSHA, " + rounded(w, day->protection, 1) +
        " dB of protection needed");
  }
  if (const auto* day = on(x.exposure.vibration, date))
    add("vibration " + rounded(w, day->a8, 2) + " m/s² as A(8), " + rounded(w, day->points, 0) + " points");
  if (const auto* day = on(x.exposure.heat, date))
    add("feels like " + rounded(w, day->celsius, 1) +
        (day->isInSun && !x.exposure.limits.heat.usesHeatIndex ? " °C in the sun at "
                                                               : " °C in the shade at ") +
        w.clock(day->at.minutes));
  return line.empty() ? "" : "  " + w.shortDateYear(date) + ": " + line + "\n";
}

/// Ready words of a hazard's texts, by name.
std::string wordsOf(const Facts& facts, const char* name) {
  return std::get<std::string>(find(facts, name)->value);
}

std::string hazardLines(const model::JobResult& x, const model::Hazard& hazard, const Formatter& w) {
  const Facts facts = hazardFacts(x, hazard, w);
  std::string lines = "    who: " + wordsOf(facts, "who") + "\n    harm: " + wordsOf(facts, "harm") + "\n";
  const auto& controls = std::get<FactList>(find(facts, "controls")->value);
  for (std::size_t i = 0; i < controls.size(); ++i)
    lines +=
        std::string("    ") + nameOf(hazard.controls[i].level) + ": " + wordsOf(controls[i], "text") + "\n";
  return lines + "    stays: " + wordsOf(facts, "left") + "\n    source: " + hazard.source +
         "\n    harm order: " + std::to_string(hazard.severity) + " x " + std::to_string(hazard.exposure) +
         "\n    told in: " + placeOnLeaf(leafOf(x), hazard) + "\n";
}

}  // namespace

std::string explainSafety(const model::JobResult& x) {
  const Formatter w(*x.c.region, x.language);
  std::string days;
  for (const auto& site : x.plan.days) days += dayLine(x, site.date, w);
  std::string all = days.empty() ? "" : "\nthe day of one person\n" + days;
  all += "\nhazards on the safety sheet\n";
  for (std::size_t i = 0; i < x.hazards.size(); ++i) {
    const auto& choice = x.hazards[i];
    if (choice.applies)
      all += "  " + choice.id + ": " + choice.why + "\n" + hazardLines(x, x.content.hazards[i], w);
  }
  all += "\nhazards left out\n";
  for (const auto& choice : x.hazards) {
    if (!choice.applies) all += "  " + choice.id + ": " + choice.why + "\n";
  }
  return all;
}

}  // namespace sheets
