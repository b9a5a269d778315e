// What every part of the layout needs: the look, the grid of the page, the tags and the messages.
#pragma once

#include "typeset/layout_input.h"
#include "typeset/vertical_list.h"

#include <set>

namespace typeset {

Size paperSize(model::Paper paper);

/// A style of the theme with its faces and lengths looked up.
struct Style {
  StyledText plain;  // without text
  model::Face strong, emphasis;
  Dim leading, baseline;
  bool isJustified = false;
  bool mayDivide = false;  // at hyphens, in narrow columns: running words, not heads and names
};

/// The columns of the page, from the left edge of the paper.
struct Grid {
  Size paper;
  Dim left, side, gutter, text;
  Dim textX, right, full;
  Dim unit, line, snap;
  Dim top, letterheadTop, bottom;  // of the matter

  Dim half() const { return unit * 2; }
};

/// Where blocks are set.
struct Column {
  Dim x, width;
  bool isFull = false;  // across both columns
};

class LayoutContext {
 public:
  /// 'look' is the input's theme or one like it on a tighter grid.
  LayoutContext(const LayoutInput& input, const model::Theme& look, Document& document,
                base::Diagnostics& diagnostics);

  const LayoutInput& in;
  const model::Theme& theme;
  Document& out;
  Grid grid;
  int line = 0;                    // of the block being set
  bool isSmall = false;            // tables are set in the size of notes
  bool leavesOutOptional = false;  // drawings
  bool isTight = false;            // in a panel: rows stand closer

  const Style& style(const std::string& name);
  Colour colour(const std::string& name) const;
  int tag(Role role, int parent);
  /// Nothing (and an error) for an unknown name.
  const DrawingRequest* request(const std::string& name);
  const Drawing* drawing(const std::string& name);  // as high as it likes
  void warn(const std::string& what, const std::string& hint);
  void missing(char32_t letter);

  Column sideColumn() const { return {grid.left, grid.side, false}; }
  Column textColumn() const { return {grid.textX, grid.text, false}; }
  Column fullColumn() const { return {grid.left, grid.full, true}; }
  /// With drawings as high as they like, or as low as they can be.
  Dim height(std::span<const Fragment> list) const { return heightOf(list, grid.line, grid.unit); }
  Dim leastHeight(std::span<const Fragment> list) const { return leastHeightOf(list, grid.line, grid.unit); }
  Dim pageHeight() const { return grid.bottom - grid.top; }

 private:
  const Style& smallStyle(const std::string& name);

  base::Diagnostics& messages_;
  std::map<std::string, Style> styles_;
  std::set<char32_t> missing_;     // already told
  std::set<std::string> unknown_;  // drawings already told
};

}  // namespace typeset
