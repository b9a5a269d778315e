// md4c's events become blocks. What the subset does not have is reported and left out.
#pragma once

#include "markup/inlines.h"

namespace markup {

class Builder {
 public:
  explicit Builder(const Source& source) : source_(source), inlines_(source, line_) {}
  Builder(const Builder&) = delete;  // the reader of inlines refers to the line
  Builder& operator=(const Builder&) = delete;

  Document document;

  /// False: nested so deeply that reading must stop.
  bool enterBlock(MD_BLOCKTYPE type, const void* detail);
  void leaveBlock();
  void enterSpan(MD_SPANTYPE type, const void* detail) { inlines_.enter(type, detail); }
  void leaveSpan(MD_SPANTYPE type) { inlines_.leave(type); }
  void text(MD_TEXTTYPE type, std::string_view text);

 private:
  /// An open block; its fields are used as its type needs them.
  struct Frame {
    MD_BLOCKTYPE type = MD_BLOCK_DOC;
    int line = 0;              // of its first words; 0 = none yet
    std::string_view before;   // the source of that line up to its first words
    std::string_view opening;  // and from there, with the backslash of an escaped letter
    Blocks body;               // of the document, a box or a list item
    Box box;
    bool hasKind = false;
    List list;
    int boxes = 0;       // items of a list that are '[ ]'
    char taskMark = 0;   // of a list item: what stands in the brackets
    unsigned level = 0;  // of a heading
    Table table;
    int delimiterLine = 0;
    bool isHead = false;  // a table's cells belong to its head
  };

  void start(Frame& frame, const void* detail);
  void startTable(Frame& frame, const MD_BLOCK_TABLE_DETAIL& detail);
  void finish(Frame frame);
  void finishParagraph(Frame& frame);
  void finishHeading(Frame& frame);
  void finishItem(Frame& frame);
  void finishList(Frame& frame);
  void finishBox(Frame& frame);
  void finishTable(Frame& frame);
  void finishBreak();

  void readKind(Frame& box, const Frame& paragraph, Inlines words);
  void closeTightParagraph();
  void noteLine(int line, const char* text);
  void checkLineStart(int line);
  void add(decltype(Block::node) node, int line);
  Frame* openTable();
  int open(MD_BLOCKTYPE type) const;
  void error(int line, std::string message, std::string hint) {
    source_.error(line, std::move(message), std::move(hint));
  }

  const Source& source_;
  int line_ = 0;  // being read
  InlineReader inlines_;
  std::vector<Frame> stack_;
  int tightLine_ = 0;  // of the words that stand in a list item without a paragraph of their own
  int checkedLine_ = 0;
};

}  // namespace markup
