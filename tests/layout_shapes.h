// Where things stand on the sample's page, and the lines and boxes of a dump.
#pragma once

#include "layout_sample.h"

#include <sstream>

namespace sample {

// The columns of the sample theme in points: 20 mm, 68 mm, and half of the text column further on.
inline constexpr double left = 56.69, textX = 192.76, half = 368.50, right = 527.24;

/// Lines and boxes of the dump: 'x y w h' and what follows.
struct Shape {
  int page = 0;
  double x = 0, y = 0, w = 0, h = 0;
  std::string look;
};

inline std::vector<Shape> shapesOf(const std::string& dump, const std::string& look) {
  std::vector<Shape> out;
  std::istringstream in(dump);
  for (std::string line; std::getline(in, line);) {
    std::istringstream parts(line);
    Shape s;
    std::string role, kind;
    parts >> s.page >> role >> kind;
    if (kind != "path") continue;
    parts >> s.x >> s.y >> s.w >> s.h;
    std::getline(parts, s.look);
    if (s.look.find(look) != std::string::npos) out.push_back(s);
  }
  return out;
}

inline const std::string heavy = "line 1.00 #211b17", hairline = "line 0.50 #9c9083",
                         thin = "line 0.50 #211b17";

}  // namespace sample
