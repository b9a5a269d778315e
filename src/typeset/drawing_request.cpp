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
  constexpr int steps = 4, halvings = 3;
  const auto isPossible = [this](Dim height) { return !at(height).items.empty(); };
  const auto after = [this](int step) {
    return heights_.least + (heights_.best - heights_.least) * step / steps;
  };
  int first = 0;
  while (first < steps && !isPossible(after(first))) ++first;
  Dim possible = after(first), tooLow = first == 0 ? possible : after(first - 1);
  for (int i = 0; i < halvings && tooLow < possible; ++i) {
    const Dim middle = tooLow + (possible - tooLow) / 2;
    (isPossible(middle) ? possible : tooLow) = middle;
  }
  return at(possible).size.h;
}

}  // namespace typeset
