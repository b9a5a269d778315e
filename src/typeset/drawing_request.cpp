#include "typeset/drawing_request.h"

#include <algorithm>

namespace typeset {

DrawingRequest::DrawingRequest(Drawing drawing) : made_{{Dim{}, std::move(drawing)}} {}

DrawingRequest::DrawingRequest(std::function<Drawing()> make)
    : make_([make = std::move(make)](Dim) { return make(); }) {}

DrawingRequest::DrawingRequest(HeightRange heights, std::function<Drawing(Dim)> make, bool isOptional)
    : heights_(heights), make_(std::move(make)), isOptional_(isOptional) {}

const Drawing& DrawingRequest::at(Dim height) const {
  height = std::clamp(height, heights_.least, heights_.best);
  const auto known = made_.find(height);
  return known != made_.end() ? known->second : made_.emplace(height, make_(height)).first->second;
}

Dim DrawingRequest::possibleLeast() const {
  constexpr int steps = 4;
  for (int i = 0; i < steps; ++i) {
    const Dim height = heights_.least + (heights_.best - heights_.least) * i / steps;
    if (const Drawing& drawing = at(height); !drawing.items.empty()) return drawing.size.h;
  }
  return best().size.h;
}

}  // namespace typeset
