#include "app/commands/commands.h"

#include "app/pack/documents.h"
#include "app/report/facts_text.h"
#include "app/report/figures_json.h"
#include "sheets/facts/explain.h"

#include <iostream>
#include <set>

namespace app {
namespace {

constexpr int done = 0, refused = 1;

}  // namespace

int figures(const std::string& job, FiguresForm form, const Choices& choices) {
  const Shipped shipped = readShipped(choices);
  base::Diagnostics messages;
  const auto x = compute(job, shipped, choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  if (form == FiguresForm::Json) {
    std::cout << figuresJson(*x);
    return done;
  }
  const auto told = tell(*x, shipped, shipped.english.id, messages);
  std::string about;
  for (const auto& e : sheets::explain(told->computed())) {
    if (e.about != about) std::cout << (about.empty() ? "" : "\n") << e.about << "\n";
    about = e.about;
    std::cout << "  " << e.name << ": " << (form == FiguresForm::Explain ? e.formula + " = " : "") << e.value
              << "\n";
  }
  if (form == FiguresForm::Explain) std::cout << sheets::explainSafety(told->computed());
  return done;
}

int facts(const std::string& job, const Choices& choices) {
  const Shipped shipped = readShipped(choices);
  base::Diagnostics messages;
  const auto x = compute(job, shipped, choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  const auto told = tell(*x, shipped, shipped.english.id, messages);
  std::set<std::string> known;
  for (const auto& [document, title] : {std::pair{"quote", "in every document for the customer"},
                                        {"safety", "and for the crew"},
                                        {"office", "and for the office"}}) {
    sheets::Facts fresh;
    for (auto& fact : factsOf(document, told->computed())) {
      if (known.insert(fact.first).second) fresh.push_back(std::move(fact));
    }
    std::cout << "# " << title << "\n" << factsText(fresh) << "\n";
  }
  return done;
}

}  // namespace app
