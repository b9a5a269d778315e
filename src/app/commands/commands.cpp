#include "app/commands/commands.h"

#include "app/firm/firm_folder.h"
#include "app/pack/documents.h"
#include "app/report/facts_text.h"
#include "app/report/figures_json.h"
#include "app/report/price_rows.h"
#include "base/hidden.h"
#include "sheets/explain/explain.h"
#include "sheets/facts/make_facts.h"

#include <iostream>
#include <set>

namespace app {
namespace {

constexpr int done = 0, refused = 1;

}  // namespace

int figures(const std::string& job, FiguresForm form, const Choices& choices) {
  base::Diagnostics messages;
  const auto [shipped, x] = computeFile(job, choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  if (form == FiguresForm::Json || form == FiguresForm::Csv) {
    std::cout << (form == FiguresForm::Json ? figuresJson(*x) : priceCsv(*x));
    return done;
  }
  std::string about;
  for (const auto& e : sheets::explain(*x)) {
    if (e.about != about) std::cout << (about.empty() ? "" : "\n") << e.about << "\n";
    about = e.about;
    std::cout << "  " << e.name << ": " << (form == FiguresForm::Explain ? e.formula + " = " : "") << e.value
              << "\n";
  }
  if (form == FiguresForm::Explain) std::cout << sheets::explainSafety(*x);
  return done;
}

int facts(const std::string& job, const Choices& choices) {
  base::Diagnostics messages;
  const auto [shipped, x] = computeFile(job, choices, messages);
  std::cerr << base::format(messages);
  if (!x) return refused;
  std::cout << "# firm: " << base::printable(firmWords(shipped->firmFolder, shipped->firmFiles)) << "\n\n";
  std::set<std::string> known;
  for (const auto& [reader, facts] : sheets::makeFacts(*x)) {
    sheets::Facts fresh;
    for (const auto& fact : facts) {
      if (known.insert(fact.first).second) fresh.push_back(fact);
    }
    std::cout << "# " << (reader == model::Reader::Customer ? "in every document for the " : "and for the ")
              << model::nameOf(reader) << "\n"
              << factsText(fresh) << "\n";
  }
  return done;
}

}  // namespace app
