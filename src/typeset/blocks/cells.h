// The cells of a table, shaped once, and the widths of its columns.
#pragma once

#include "typeset/lines/text.h"

#include <list>

namespace typeset {

/// How a cell is written in by hand.
enum class Writing {
  None,
  Line,     // a line for writing
  WordsOn,  // words stand on the line
  Label     // words stand small below the line
};

struct CellContent {
  std::unique_ptr<Text> text;
  std::unique_ptr<Text>
      note;  // in the first column: emphasised words after the head of a row, small below it
  Writing writing = Writing::None;
  bool isTick = false;  // begins with an empty box
  bool isNumber = false;
  bool isStrong = false;  // all of its words
  Dim fraction;           // width of the decimal mark and what follows
  Dim natural, longest;

  bool isFilled() const { return !text->isEmpty() || note || isTick; }
};
using RowContent = std::vector<CellContent>;

struct TableContent {
  const markup::Table& table;
  bool isWide = false;
  bool hasWriting = false;
  bool isKeyed = false;  // a list of keys and values, without a head
  RowContent head;
  std::vector<RowContent> rows;
  std::vector<Dim> fractions;  // widest of each column
  std::vector<Column> columns;
};

/// Shapes all cells. 'heading' stands for the first head cell when it is given.
TableContent readCells(LayoutContext& context, const markup::Table& table, Column place,
                       const markup::Heading* heading);
/// Divides the place among the columns.
void placeColumns(LayoutContext& context, TableContent& set, Column place);
/// Width of the box that a cell begins with, with the white after it.
Dim tickIndent();

}  // namespace typeset
