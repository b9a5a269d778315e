#include "app/report/facts_text.h"

namespace app {
namespace {

/// Line breaks made visible, so that a fact stays on its line.
std::string oneLine(const std::string& words) {
  std::string s;
  for (const char c : words) s += c == '\n' ? " / " : std::string(1, c);
  return s;
}

std::string valueText(const sheets::Fact& fact, const std::string& name) {
  if (const auto* words = std::get_if<std::string>(&fact.value)) return name + ": " + oneLine(*words) + "\n";
  if (const auto* is = std::get_if<bool>(&fact.value)) return name + ": " + (*is ? "yes" : "no") + "\n";
  if (const auto* group = std::get_if<sheets::Facts>(&fact.value)) return factsText(*group, name + ".");
  const auto& list = std::get<sheets::FactList>(fact.value);
  std::string s = name + ": list of " + std::to_string(list.size()) + "\n";
  if (!list.empty()) s += factsText(list.front(), "  " + name + "[1].");
  return s;
}

}  // namespace

std::string factsText(const sheets::Facts& facts, const std::string& prefix) {
  std::string s;
  for (const auto& [name, fact] : facts) s += valueText(fact, prefix + name);
  return s;
}

}  // namespace app
