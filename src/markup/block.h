// A document as a tree of blocks: what CommonMark text becomes before it is set on pages.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace markup {

/// A stretch of text of one kind, or a picture in the line.
struct Inline {
  enum class Style { Plain, Strong, Emphasis };
  Style style = Style::Plain;
  std::string text;    // may hold '\n' for a forced line break
  std::string link;    // address; empty = none
  std::string figure;  // 'plan' for ![words](figure:plan); then text is the alternative text
};
using Inlines = std::vector<Inline>;

struct Block;
using Blocks = std::vector<Block>;

enum class Align { Left, Centre, Right };

/// Marks of an unordered list: '-' a dash, '*' a cross (what not to do), '+' a drawn tick; '- [ ]' an empty
/// box.
enum class Mark { Number, Dash, Cross, Tick, Box };

enum class Callout {
  Note,
  Caution,
  Warning,
  Danger,    // panels
  Side,      // small words in the side column, under the head of the section
  Figures,   // a strip of large figures: a list of '**figure** label'
  Columns,   // its blocks side by side
  Signs,     // a list of '![sign](figure:x) **words** more', three in a row
  Totals,    // a table without head that stays with the last row before it
  Keep,      // never broken over pages
  Letter,    // label and value pairs under the title: a list of '**label** value'
  Matrix,    // a table whose cells hold a sign or a dash
  Steps,     // a list of '**name** *note*', each with its numbered steps in three columns
  Address,   // where one is, large: a list of '**words** more' beside the box's title
  Cards,     // a list of '![sign](figure:x) **words** more' side by side, what is to do below the sign
  Profiles,  // a list of '**name** words ![sign](figure:x)', each with its list of '**key** words', side by
             // side
  Orders,    // a list of '*label* **order** more' side by side
  Answers,   // the same with large answers above their labels
  Go         // a list of '*name* **limit** more' to tick, side by side in a frame, the title dark
};

/// level 1 = the title, 2 = a section. 'wide' matter runs across both columns ('## Price {wide}').
struct Heading {
  int level = 1;
  Inlines text;
  bool isWide = false;
  bool isFenced = false;  // '{fenced}': heavy rules above and below
  bool isSmall = false;   // '{small}': tables in the size of notes
  bool isWhole = false;   // '{whole}': not broken over pages
};
struct Paragraph {
  Inlines text;
};
/// Holds paragraphs and, one level deep, a list; never empty: an item without words is left out.
struct ListItem {
  Blocks body;
};
struct List {
  Mark mark = Mark::Dash;
  int start = 1;
  std::vector<ListItem> items;
};
struct Cell {
  Inlines text;
};
struct Row {
  std::vector<Cell> cells;
  int line = 0;
};
struct Column {
  Align align = Align::Left;
  int weight = 3;
};  // weight: dashes in the delimiter row
/// A table whose head cells are all empty has no head. '____' in a cell is a writing line.
struct Table {
  std::vector<Column> columns;
  std::vector<Cell> head;
  bool hasHead = true;
  std::vector<Row> rows;
};
struct Box {
  Callout kind = Callout::Note;
  Inlines title;
  Blocks body;
};
/// A drawing alone in its paragraph: '![alternative text](figure:plan)'. In a list item it stays an Inline.
struct Figure {
  std::string name;
  std::string alt;
};
struct PageBreak {};

struct Block {
  std::variant<Heading, Paragraph, List, Table, Box, Figure, PageBreak> node;
  int line = 0;  // in the filled text, from 1
};

struct Document {
  Blocks blocks;
};

}  // namespace markup
