// A drawing that waits for its height: it says what it can do with, layout says what it gets, then it is
// made.
#pragma once

#include "typeset/page.h"

#include <functional>
#include <map>

namespace typeset {

struct HeightRange {
  Dim least, best;
};

/// Holds what it has made, so it is for one thread.
class DrawingRequest {
 public:
  DrawingRequest(Drawing drawing);
  /// One of a single height, made when a document asks for it.
  explicit DrawingRequest(std::function<Drawing()> make);
  /// 'make' gets a height and gives a drawing no higher than that, or an empty one where none is possible. An
  /// optional one may be left out of a document that would else have too many pages.
  DrawingRequest(HeightRange heights, std::function<Drawing(Dim)> make, bool isOptional = false);

  bool isFlexible() const { return heights_.least < heights_.best; }
  bool isOptional() const { return isOptional_; }
  HeightRange heights() const { return heights_; }
  const Drawing& at(Dim height) const;
  /// The lowest of a few heights at which there is a drawing; the best where there is none.
  Dim possibleLeast() const;
  const Drawing& best() const { return at(heights_.best); }

 private:
  HeightRange heights_;
  std::function<Drawing(Dim)> make_;
  bool isOptional_ = false;
  mutable std::map<Dim, Drawing> made_;
};

using Drawings = std::map<std::string, DrawingRequest>;  // by name

}  // namespace typeset
