// What the file says about itself.
#pragma once

#include "pdf/objects/file.h"
#include "pdf/objects/variant.h"

#include <string>

namespace pdf {

/// Sets the information dictionary and adds the same as XMP, with the part of PDF/A the file keeps to.
/// Returns the entries of the catalogue. Throws std::runtime_error when the colour profile is not installed.
std::string addMetadata(File& file, const typeset::Document& document, Variant variant);

}  // namespace pdf
