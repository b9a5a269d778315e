// Fewer pixels for a picture that has more than paper can show.
#pragma once

#include <cstddef>
#include <string>

namespace pdf {

/// Rows of pixels from left to right, each red, green, blue and alpha (255 = opaque).
struct Pixels {
  std::size_t width = 0, height = 0;
  std::string rgba;
};

/// Squares of pixels become their mean, colours weighed by alpha, as small as a height of at least 'rows'
/// allows; 0 keeps all. What is clear, or so nearly that nobody can tell, takes the colour to its left:
/// likeness deflates well.
Pixels shrink(Pixels pixels, std::size_t rows);

}  // namespace pdf
