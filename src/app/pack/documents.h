// A computed job becomes the documents of its pack.
#pragma once

#include "app/pack/languages.h"
#include "app/system/files.h"

#include "typeset/page.h"

#include <vector>

namespace app {

struct SetDocument {
  std::string name;  // 'safety', and 'safety-es' for a further language
  typeset::Document pages;
};

/// The pages of the named documents (those of a pack when empty) in each of their languages; those with
/// mistakes in templates or pictures are told in 'messages' and left out.
std::vector<SetDocument> setDocuments(const model::JobResult& x, const Shipped& shipped,
                                      const Choices& choices, const std::vector<std::string>& only,
                                      base::Diagnostics& messages);

/// Sets the named documents (those of a pack when empty) as PDF, 'quote.pdf'. Mistakes of templates and
/// pictures go to 'messages'; then the result is not to be written.
std::vector<OutputFile> makeDocuments(const model::JobResult& x, const Shipped& shipped,
                                      const Choices& choices, const std::vector<std::string>& only,
                                      base::Diagnostics& messages);

struct Letter {
  std::string title, text;
};
/// A part of the customer's templates that is no document, as plain text, in the main language of one that
/// is; nothing, and messages, where it cannot be filled, has no title, or holds more than paragraphs and
/// lists.
std::optional<Letter> makeLetter(const std::string& part, const std::string& document,
                                 const model::JobResult& x, const Shipped& shipped, const Choices& choices,
                                 base::Diagnostics& messages);

}  // namespace app
