// Straight quotes as typed become the letters of print.
#pragma once

#include "markup/block.h"

namespace markup {

/// The apostrophe of "hand's" and "boards'" becomes U+2019, and so does the end of a 'quotation', whose
/// beginning becomes U+2018. Marks of feet stand after figures and stay straight, as do addresses that can be
/// pressed.
void curlApostrophes(Inlines& words);

}  // namespace markup
