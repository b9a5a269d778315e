// Where templates and themes come from: the firm's own folder first, then the ones that come with the
// program.
#pragma once

#include "model/document.h"
#include "sheets/template/fill.h"

#include <map>
#include <string>
#include <vector>

namespace app {

/// Folders that hold 'pack.yaml' and '<language>/*.md', and those of themes; the first that has a file wins.
struct Looks {
  std::vector<std::string> templates, themes;
};

/// The path of a file in one of the folders; empty when none of them has it.
std::string findLook(const std::vector<std::string>& folders, const std::string& name);

/// The names of all themes, in order.
std::vector<std::string> themeNames(const Looks& looks);

/// What a template says of the document it is, and what is wrong with that.
struct DocumentHead {
  model::DocumentKind kind;
  base::Diagnostics messages;
};

/// The templates of one language by name, the firm's own over the shipped ones.
struct Templates {
  std::map<std::string, sheets::Template> texts;
  std::map<std::string, DocumentHead> documents;  // those that are documents; the others are parts of them
};
/// One that cannot be read is a mistake.
Templates readTemplates(const Looks& looks, const std::string& language, base::Diagnostics& messages);

/// "'quot' is not a document; did you mean 'quote'?", with the known ones as the hint.
void reportUnknown(base::SourcePos pos, std::string path, const std::string& word, const std::string& what,
                   const std::vector<std::string>& known, base::Diagnostics& messages);

}  // namespace app
