// A computed job becomes the documents of its pack.
#pragma once

#include "app/pack/files.h"
#include "app/pack/telling.h"

#include "sheets/facts/make_facts.h"
#include "typeset/page.h"

#include <vector>

namespace app {

/// The names '--only' takes: quote aftercare safety dayplan orders office.
const std::vector<std::string>& documentNames();

/// Every fact a document's template may name, with its words in this job.
sheets::Facts factsOf(const std::string& document, const sheets::Computed& x);

struct SetDocument {
  std::string name;  // 'safety', and 'safety-es' for a further language
  typeset::Document pages;
};

/// The pages of the named documents (all when empty) in each of their languages; those with mistakes in
/// templates or pictures are told in 'messages' and left out.
std::vector<SetDocument> setDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, base::Diagnostics& messages);

/// Sets the named documents (all when empty) as PDF, 'quote.pdf'. Mistakes of templates and pictures go to
/// 'messages'; then the result is not to be written.
std::vector<OutputFile> makeDocuments(const Computation& x, const Shipped& shipped, const Choices& choices,
                                      const std::vector<std::string>& only, base::Diagnostics& messages);

}  // namespace app
