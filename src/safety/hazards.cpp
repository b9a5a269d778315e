#include "safety/hazards.h"

#include "safety/conditions.h"

namespace safety {
namespace {

std::string replaced(std::string text, const std::string& name, const std::string& by) {
  if (const std::size_t at = text.find(name); at != std::string::npos) text.replace(at, name.size(), by);
  return text;
}

class Judge {
 public:
  explicit Judge(const Situation& s) : s_(s) {}

  model::HazardChoice weigh(const model::Hazard& h) {
    why_.clear();
    return {h.id, applies(h.when), why_};
  }

 private:
  /// Tells why in passing: what makes it apply, or the first reason that it does not.
  bool applies(const model::When& when) {
    for (const auto& clause : when.all) {
      if (!holds(clause)) return because(clause, false);
    }
    bool isOne = when.any.empty();
    for (const auto& clause : when.any) isOne = isOne || holds(clause);
    if (!isOne) {
      for (const auto& clause : when.any) because(clause, false);
      return false;
    }
    for (const auto& clause : when.none) {
      if (holds(clause)) {
        because(clause, true);
        return false;
      }
    }
    for (const auto& clause : when.all) because(clause, true);
    for (const auto& clause : when.any) {
      if (holds(clause)) because(clause, true);
    }
    return true;
  }

  bool holds(const model::Clause& clause) const { return answerTo(clause, s_).holds; }

  bool because(const model::Clause& clause, bool is) {
    const Answer a = answerTo(clause, s_);
    const auto& words = s_.content.conditionWords.at(clause.condition);
    const std::string& form = !is                                  ? words.fails
                              : a.isKnown || words.unknown.empty() ? words.holds
                                                                   : words.unknown;
    why_ += (why_.empty() ? "" : "; ") + replaced(replaced(form, "{value}", a.value), "{limit}", a.limit);
    return is;
  }

  const Situation& s_;
  std::string why_;
};

}  // namespace

std::vector<model::HazardChoice> hazardsOf(const model::JobInputs& c, const model::Content& content,
                                           const model::Estimate& estimate, const model::Resources& resources,
                                           const model::CrewExposure& exposure) {
  const Situation s{c, content, estimate, resources, exposure};
  Judge judge(s);
  std::vector<model::HazardChoice> choices;
  for (const auto& hazard : content.hazards) choices.push_back(judge.weigh(hazard));
  return choices;
}

}  // namespace safety
