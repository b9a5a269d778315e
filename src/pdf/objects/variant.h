// What a file keeps to.
#pragma once

namespace pdf {

/// PDF/A-2b (ISO 19005-2:2011), or PDF/A-1b (ISO 19005-1:2005) for archives that ask for it, where clear
/// pictures are laid on white. Both keep to PDF/UA-1.
enum class Variant { A2b, A1b };

}  // namespace pdf
