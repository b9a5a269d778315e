// Ways through the file: links to the web and bookmarks.
#pragma once

#include "pdf/structure.h"

#include <optional>

namespace pdf {

/// The link annotations of a page.
std::vector<Object> addLinks(File& file, const typeset::Document& document, std::size_t page,
                             Structure& structure);

/// The outline; nothing without bookmarks.
std::optional<Object> addOutline(File& file, const typeset::Document& document,
                                 const std::vector<Object>& pages);

}  // namespace pdf
