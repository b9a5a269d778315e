// A document as plain text, for an e-mail.
#pragma once

#include "markup/block.h"

#include <string>

namespace markup {

struct PlainText {
  std::string title;
  std::string body;    // paragraphs and lists, an empty line between them
  int unreadLine = 0;  // of the first block that is neither; 0 = there is none
};

/// Paragraphs and lists of paragraphs, words only; addresses of links are left out.
PlainText plainText(const Document& document);

}  // namespace markup
