// A Mustache template and facts become CommonMark. Strict: whatever the template names must exist.
#pragma once

#include "base/diagnostic.h"
#include "sheets/facts/facts.h"
#include "sheets/template/template.h"

#include <map>
#include <memory>

namespace sheets {

/// Fills a template. Every name in it and in its partials is checked against the facts before anything is
/// rendered; mistakes go to 'messages' as file:line:column and the result is empty. Facts are escaped, so
/// that '*', '|' or '#' in them print as typed; '{{{' and '{{&' are errors. An empty word counts as false in
/// a section.
std::string fill(const Template& main, const std::map<std::string, Template>& partials, const Facts& facts,
                 base::Diagnostics& messages);

/// A template with its partials in their places, ready to be filled with the facts of any number of jobs.
struct CompiledTemplate {
  struct Parts;
  std::shared_ptr<const Parts> parts;
  base::Diagnostics messages;  // what is wrong with the template whatever the facts
};
CompiledTemplate compileTemplate(const Template& main, const std::map<std::string, Template>& partials);

struct Filled {
  std::string text;
  std::vector<base::SourcePos> lines;  // where each line of the text comes from: the template's file and line
};

/// The same, and for each line of the result its line in the template.
Filled fillWithLines(
    const CompiledTemplate& sheet, const Facts& facts, base::Diagnostics& messages,
    const Withheld& withheld = [](const auto&) { return std::string(); });
Filled fillWithLines(const Template& main, const std::map<std::string, Template>& partials,
                     const Facts& facts, base::Diagnostics& messages);

}  // namespace sheets
