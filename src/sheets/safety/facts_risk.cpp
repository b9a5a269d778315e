// The written risk assessment: every hazard with its reasons, and what each day comes to.
#include "sheets/safety/day_values.h"
#include "sheets/safety/facts_safety.h"
#include "sheets/safety/leaf.h"

namespace sheets {
namespace {

FactList dayFactsOf(const model::JobResult& x, const Formatter& w) {
  FactList list;
  const std::string none = "\u2013";
  for (const auto& site : x.plan.days) {
    const base::Date date = site.date;
    const auto* noise = on(x.exposure.noise, date);
    const auto* vibration = on(x.exposure.vibration, date);
    const auto* heat = on(x.exposure.heat, date);
    list.push_back({{"day", w.shortDate(date)},
                    {"noise", noise ? rounded(w, noise->level, 0) : none},
                    {"loudest", noise && noise->loudest > 0 ? std::to_string(noise->loudest) : none},
                    {"vibration", vibration ? rounded(w, vibration->a8, 1) : none},
                    {"points", vibration ? rounded(w, vibration->points, 0) : none},
                    {"felt", heat ? rounded(w, inDegrees(w, heat->celsius)) : none}});
  }
  return list;
}

/// A source that says so loses the remark; that it is from memory is told in its place.
std::string sourceWords(const std::string& source, const Formatter& w) {
  const std::string remark = " - from memory";
  const std::size_t at = source.find(remark);
  return at == std::string::npos
             ? source
             : source.substr(0, at) + " " + w("risk.unchecked") + source.substr(at + remark.size());
}

}  // namespace

void addRisks(Facts& f, const model::JobResult& x, const Formatter& w) {
  FactList risks;
  for (const auto* hazard : hazardsByHarm(x)) {
    Facts risk = hazardFacts(x, *hazard, w);
    const auto index = static_cast<std::size_t>(hazard - x.content.hazards.data());
    risk.emplace_back("why", x.hazards[index].why);
    risk.emplace_back("severity", std::to_string(hazard->severity));
    risk.emplace_back("exposure", std::to_string(hazard->exposure));
    risk.emplace_back("score", std::to_string(hazard->harmOrder()));
    risk.emplace_back("source", sourceWords(hazard->source, w));
    risks.push_back(std::move(risk));
  }
  f.emplace_back("risks", std::move(risks));
  f.emplace_back("exposure_days", dayFactsOf(x, w));
  f.emplace_back("felt_unit", degreeSign(w));
}

}  // namespace sheets
