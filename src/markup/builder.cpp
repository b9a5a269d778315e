#include "markup/builder.h"

#include "base/joined.h"
#include "base/letters.h"
#include "base/nearest.h"
#include "markup/dump.h"

#include <algorithm>

namespace markup {
namespace {

constexpr std::size_t depthCap = 16;
constexpr Callout allKinds[] = {Callout::Note,   Callout::Caution, Callout::Warning, Callout::Danger,
                                Callout::Side,   Callout::Figures, Callout::Columns, Callout::Signs,
                                Callout::Totals, Callout::Keep,    Callout::Letter,  Callout::Matrix,
                                Callout::Steps,  Callout::Address, Callout::Cards,   Callout::Profiles,
                                Callout::Orders, Callout::Answers, Callout::Go};

Mark markOf(char c) { return c == '+' ? Mark::Tick : c == '*' ? Mark::Cross : Mark::Dash; }

Align alignOf(MD_ALIGN align) {
  switch (align) {
    case MD_ALIGN_CENTER:
      return Align::Centre;
    case MD_ALIGN_RIGHT:
      return Align::Right;
    case MD_ALIGN_LEFT:
    case MD_ALIGN_DEFAULT:
      break;
  }
  return Align::Left;
}

/// Takes n bytes and the blanks after them off the front.
void dropFront(Inlines& words, std::size_t n) {
  std::string& text = words.front().text;
  text.erase(0, std::min(text.find_first_not_of(' ', n), text.size()));
  if (text.empty()) words.erase(words.begin());
}

}  // namespace

bool Builder::enterBlock(MD_BLOCKTYPE type, const void* detail) {
  if (stack_.size() == depthCap) {
    error(line_, "blocks are nested too deeply here", "take some '>' or blanks away");
    return false;
  }
  closeTightParagraph();
  Frame frame;
  frame.type = type;
  start(frame, detail);
  stack_.push_back(std::move(frame));
  return true;
}

void Builder::start(Frame& frame, const void* detail) {
  switch (frame.type) {
    case MD_BLOCK_UL:
      frame.list.mark = markOf(static_cast<const MD_BLOCK_UL_DETAIL*>(detail)->mark);
      break;
    case MD_BLOCK_OL:
      frame.list.mark = Mark::Number;
      frame.list.start = static_cast<int>(static_cast<const MD_BLOCK_OL_DETAIL*>(detail)->start);
      break;
    case MD_BLOCK_LI: {
      const auto& item = *static_cast<const MD_BLOCK_LI_DETAIL*>(detail);
      if (item.is_task) frame.taskMark = item.task_mark;
      break;
    }
    case MD_BLOCK_H:
      frame.level = static_cast<const MD_BLOCK_H_DETAIL*>(detail)->level;
      break;
    case MD_BLOCK_TABLE:
      startTable(frame, *static_cast<const MD_BLOCK_TABLE_DETAIL*>(detail));
      break;
    case MD_BLOCK_THEAD:
    case MD_BLOCK_TBODY:
      openTable()->isHead = frame.type == MD_BLOCK_THEAD;
      break;
    case MD_BLOCK_TR:
      if (Frame& table = *openTable(); !table.isHead) {
        // The rows of a table follow one another without a gap.
        line_ = table.delimiterLine + 1 + static_cast<int>(table.table.rows.size());
        table.table.rows.push_back({{}, source_.original(line_)});
      }
      break;
    case MD_BLOCK_TH: {
      Table& table = openTable()->table;
      const std::size_t column = table.head.size();
      if (column < table.columns.size())
        table.columns[column].align = alignOf(static_cast<const MD_BLOCK_TD_DETAIL*>(detail)->align);
      break;
    }
    case MD_BLOCK_DOC:
    case MD_BLOCK_QUOTE:
    case MD_BLOCK_HR:
    case MD_BLOCK_CODE:
    case MD_BLOCK_HTML:
    case MD_BLOCK_P:
    case MD_BLOCK_TD:
      break;
  }
}

void Builder::startTable(Frame& frame, const MD_BLOCK_TABLE_DETAIL& detail) {
  const auto row = source_.delimiterRowAfter(line_, detail.col_count);
  frame.delimiterLine = row ? row->line : line_;
  frame.line = row ? row->line - 1 : line_;
  line_ = frame.line;
  frame.table.columns.resize(detail.col_count);
  for (std::size_t i = 0; row && i < row->dashes.size(); ++i) frame.table.columns[i].weight = row->dashes[i];
}

void Builder::leaveBlock() {
  closeTightParagraph();
  Frame frame = std::move(stack_.back());
  stack_.pop_back();
  if (frame.line == 0) frame.line = line_;
  finish(std::move(frame));
}

void Builder::finish(Frame frame) {
  switch (frame.type) {
    case MD_BLOCK_DOC:
      document.blocks = std::move(frame.body);
      break;
    case MD_BLOCK_QUOTE:
      finishBox(frame);
      break;
    case MD_BLOCK_UL:
    case MD_BLOCK_OL:
      finishList(frame);
      break;
    case MD_BLOCK_LI:
      finishItem(frame);
      break;
    case MD_BLOCK_HR:
      finishBreak();
      break;
    case MD_BLOCK_H:
      finishHeading(frame);
      break;
    case MD_BLOCK_CODE:
      error(frame.line, "code has no place in a document",
            "indent by fewer than four blanks, and take ``` or ~~~ away");
      break;
    case MD_BLOCK_HTML:
      error(frame.line, "HTML has no place in a document",
            "write \\< for a less-than sign, {{! ... }} for a comment");
      break;
    case MD_BLOCK_P:
      finishParagraph(frame);
      break;
    case MD_BLOCK_TABLE:
      finishTable(frame);
      break;
    case MD_BLOCK_TH:
      openTable()->table.head.push_back({inlines_.take()});
      break;
    case MD_BLOCK_TD:
      openTable()->table.rows.back().cells.push_back({inlines_.take()});
      break;
    case MD_BLOCK_THEAD:
    case MD_BLOCK_TBODY:
    case MD_BLOCK_TR:
      break;
  }
}

void Builder::text(MD_TEXTTYPE type, std::string_view text) {
  if (const int line = source_.lineOf(text.data()); line > 0 && !text.empty()) noteLine(line, text.data());
  const MD_BLOCKTYPE block = stack_.back().type;
  if (block != MD_BLOCK_CODE && block != MD_BLOCK_HTML) inlines_.text(type, text);
}

void Builder::noteLine(int line, const char* text) {
  line_ = line;
  checkLineStart(line);
  for (auto& frame : stack_) {
    if (frame.line != 0) continue;
    frame.line = line;
    const std::string_view whole = source_.line(line);
    auto begin = static_cast<std::size_t>(text - whole.data());
    if (begin > 0 && whole[begin - 1] == '\\') --begin;
    frame.before = whole.substr(0, begin);
    frame.opening = whole.substr(begin);
  }
  if (inlines_.isEmpty()) tightLine_ = line;
}

/// Lines that CommonMark joins to what stands above, though their author hardly meant that.
void Builder::checkLineStart(int line) {
  const MD_BLOCKTYPE type = stack_.back().type;
  if (line == checkedLine_ || (type != MD_BLOCK_P && type != MD_BLOCK_LI)) return;
  checkedLine_ = line;
  const LineStart start = startOf(source_.line(line));
  const Frame& parent = type == MD_BLOCK_P ? stack_[stack_.size() - 2] : stack_.back();
  const bool isKind = parent.type == MD_BLOCK_QUOTE && parent.line == 0;
  if (start.quotes < open(MD_BLOCK_QUOTE)) {
    error(line, "this line runs on into the box above", "put an empty line before it, or begin it with '>'");
  } else if (parent.type == MD_BLOCK_LI && parent.line != 0 && start.indent == 0) {
    error(line, "this line runs on into the list above", "put an empty line before it, or indent it");
  } else if (start.words.starts_with('|')) {
    error(line, "this row of a table runs on into the words above",
          "put an empty line before the table, and at least three dashes in each of its columns");
  } else if (start.words.starts_with("[!") && !isKind) {
    error(line, "a box begins amid other words",
          start.quotes == 0 ? "begin each of its lines with '>'" : "put an empty line without '>' before it");
  }
}

/// In a list without empty lines between its items md4c gives words without a paragraph.
void Builder::closeTightParagraph() {
  if (stack_.empty() || stack_.back().type != MD_BLOCK_LI || inlines_.isEmpty()) return;
  add(Paragraph{inlines_.take()}, tightLine_);
}

void Builder::finishParagraph(Frame& frame) {
  Inlines words = inlines_.take();
  Frame& parent = stack_.back();
  if (parent.type == MD_BLOCK_QUOTE && !parent.hasKind && parent.body.empty()) {
    readKind(parent, frame, std::move(words));
    return;
  }
  if (words.empty()) return;
  const bool isPicture = words.size() == 1 && !words.front().figure.empty();
  // In a list a picture is one of the item's signs, whether words follow or not.
  if (isPicture && parent.type != MD_BLOCK_LI)
    add(Figure{words.front().figure, words.front().text}, frame.line);
  else add(Paragraph{std::move(words)}, frame.line);
}

/// The first paragraph of a quote: '[!kind] title'.
void Builder::readKind(Frame& box, const Frame& paragraph, Inlines words) {
  box.hasKind = true;
  const std::size_t close = paragraph.opening.find(']');
  if (!paragraph.opening.starts_with("[!") || close == std::string_view::npos) {
    error(paragraph.line, "a quote must begin with its kind", "write '> [!note]' above it");
    return;
  }
  const std::string mark(paragraph.opening.substr(0, close + 1));
  const std::string word = mark.substr(2, mark.size() - 3);
  std::vector<std::string> names;
  for (const Callout kind : allKinds) {
    names.push_back(nameOf(kind));
    if (base::lowered(word) != names.back()) continue;
    box.box.kind = kind;
    if (!words.empty() && words.front().text.starts_with(mark)) dropFront(words, mark.size());
    box.box.title = std::move(words);
    return;
  }
  const std::string near = base::nearest(base::lowered(word), names);
  error(paragraph.line, "'" + word + "' is not a kind of box" + base::didYouMean(near),
        "known are " + base::joined(names));
}

void Builder::finishBox(Frame& frame) {
  if (!frame.hasKind) error(frame.line, "a quote must begin with its kind", "write '> [!note]' above it");
  if (open(MD_BLOCK_QUOTE) > 1) {
    error(frame.line, "boxes may hold boxes, but no deeper", "end the inner box first");
    return;
  }
  frame.box.body = std::move(frame.body);
  add(std::move(frame.box), frame.line);
}

void Builder::finishHeading(Frame& frame) {
  Inlines words = inlines_.take();
  if (frame.before.find('#') == std::string_view::npos && !words.empty()) {
    error(frame.line, "a line of dashes makes a heading of these words",
          "put an empty line between them for a page break, or write '## ' for a heading");
    return;
  }
  if (words.empty()) {
    error(frame.line, "a heading without words", "write some behind the #, or take it away");
    return;
  }
  if (frame.level > 2) {
    error(frame.line, "headings have two levels", "write '## ', or make the words **strong**");
    return;
  }
  const HeadingAttributes attributes = source_.attributesOf(frame.line);
  add(Heading{static_cast<int>(frame.level), std::move(words), attributes.isWide, attributes.isFenced,
              attributes.isSmall, attributes.isWhole},
      frame.line);
}

void Builder::finishItem(Frame& frame) {
  Frame& list = stack_.back();
  if (frame.taskMark == 'x' || frame.taskMark == 'X')
    error(frame.line, "a ticked box cannot be printed", "write '- [ ]', or '+' for a tick");
  if (frame.body.empty()) return;  // an item without words prints nothing, not even its mark
  if (frame.taskMark != 0) ++list.boxes;
  list.list.items.push_back({std::move(frame.body)});
}

void Builder::finishList(Frame& frame) {
  if (open(MD_BLOCK_LI) > 1) {
    error(frame.line, "lists nest two deep at most", "move these items one level out");
    return;
  }
  if (frame.list.items.empty()) return;
  if (frame.boxes > 0) {
    if (frame.boxes != static_cast<int>(frame.list.items.size()))
      error(frame.line, "some items of this list are boxes and some are not",
            "begin each with '[ ]', or none");
    frame.list.mark = Mark::Box;
  }
  add(std::move(frame.list), frame.line);
}

void Builder::finishTable(Frame& frame) {
  Table& table = frame.table;
  const std::size_t columns = table.columns.size();
  line_ = frame.delimiterLine + static_cast<int>(table.rows.size());
  for (int line = frame.delimiterLine + 1; line <= line_ && line <= source_.lineCount(); ++line) {
    const auto row = source_.line(line);
    const std::size_t cells = cellsIn(row);
    if (!startOf(row).words.starts_with('|')) {
      error(line, "this line has become a row of the table above",
            "put an empty line before it, or begin it with '|'");
    } else if (cells > columns) {
      error(line,
            "this row has " + std::to_string(cells) + " cells, the head of its table " +
                std::to_string(columns),
            "take some out, or write \\| for a stroke in a cell");
    }
  }
  table.hasHead =
      std::any_of(table.head.begin(), table.head.end(), [](const Cell& cell) { return !cell.text.empty(); });
  add(std::move(table), frame.line);
}

void Builder::finishBreak() {
  line_ = source_.breakAfter(line_);
  if (stack_.size() > 1) {
    error(line_, "a page break has no place in a box or a list",
          "put it before or behind, with empty lines around it");
    return;
  }
  add(PageBreak{}, line_);
}

/// To the block that is open now. A list item takes words and lists only.
void Builder::add(decltype(Block::node) node, int line) {
  const bool isPlain = std::holds_alternative<Paragraph>(node) || std::holds_alternative<List>(node);
  if (stack_.back().type == MD_BLOCK_LI && !isPlain) {
    error(line, "a list item may hold words and lists, nothing else", "put an empty line after the list");
    return;
  }
  stack_.back().body.push_back({std::move(node), source_.original(line)});
}

Builder::Frame* Builder::openTable() {
  const auto table =
      std::find_if(stack_.rbegin(), stack_.rend(), [](const Frame& f) { return f.type == MD_BLOCK_TABLE; });
  return &*table;
}

int Builder::open(MD_BLOCKTYPE type) const {
  return static_cast<int>(
      std::count_if(stack_.begin(), stack_.end(), [&](const Frame& f) { return f.type == type; }));
}

}  // namespace markup
