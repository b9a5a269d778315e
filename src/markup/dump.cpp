#include "markup/dump.h"

namespace markup {
namespace {

const char* nameOf(Align align) {
  switch (align) {
    case Align::Left:
      return "left";
    case Align::Centre:
      return "centre";
    case Align::Right:
      return "right";
  }
  return "";
}

const char* nameOf(Mark mark) {
  switch (mark) {
    case Mark::Number:
      return "number";
    case Mark::Dash:
      return "dash";
    case Mark::Cross:
      return "cross";
    case Mark::Tick:
      return "tick";
    case Mark::Box:
      return "box";
  }
  return "";
}

/// With the marks of CommonMark; a forced line break shows as '\n'.
std::string words(const Inlines& inlines) {
  std::string s;
  for (const auto& part : inlines) {
    std::string text;
    for (const char c : part.text) text += c == '\n' ? "\\n" : std::string(1, c);
    if (!part.figure.empty()) text = "![" + text + "](figure:" + part.figure + ")";
    if (part.style == Inline::Style::Strong) text = "**" + text + "**";
    if (part.style == Inline::Style::Emphasis) text = "*" + text + "*";
    s += part.link.empty() ? text : "[" + text + "](" + part.link + ")";
  }
  return s;
}

struct Dumper {
  std::string out;
  int depth = 0;

  void line(const std::string& text) {
    out.append(static_cast<std::size_t>(depth) * 2, ' ');
    out += text + "\n";
  }
  void blocks(const Blocks& inner) {
    ++depth;
    for (const auto& block : inner) std::visit(*this, block.node);
    --depth;
  }
  void cells(const std::string& kind, const std::vector<Cell>& row) {
    std::string s;
    for (const auto& cell : row) s += (s.empty() ? ": " : " | ") + words(cell.text);
    line("  " + kind + s);
  }

  void operator()(const Heading& h) {
    line("heading " + std::to_string(h.level) + (h.isWide ? " wide" : "") + (h.isFenced ? " fenced" : "") +
         (h.isSmall ? " small" : "") + (h.isWhole ? " whole" : "") + ": " + words(h.text));
  }
  void operator()(const Paragraph& p) { line("paragraph: " + words(p.text)); }
  void operator()(const List& list) {
    const std::string from = list.mark == Mark::Number ? " from " + std::to_string(list.start) : "";
    line(std::string("list ") + nameOf(list.mark) + from);
    ++depth;
    for (const auto& item : list.items) {
      line("item");
      blocks(item.body);
    }
    --depth;
  }
  void operator()(const Table& table) {
    std::string columns;
    for (const auto& column : table.columns)
      columns += std::string(" ") + nameOf(column.align) + " " + std::to_string(column.weight);
    line("table" + columns);
    if (table.hasHead) cells("head", table.head);
    for (const auto& row : table.rows) cells("row", row.cells);
  }
  void operator()(const Box& box) {
    line(std::string("box ") + markup::nameOf(box.kind) + (box.title.empty() ? "" : ": " + words(box.title)));
    blocks(box.body);
  }
  void operator()(const Figure& figure) { line("figure " + figure.name + ": " + figure.alt); }
  void operator()(const PageBreak&) { line("page break"); }
};

}  // namespace

const char* nameOf(Callout kind) {
  switch (kind) {
    case Callout::Note:
      return "note";
    case Callout::Caution:
      return "caution";
    case Callout::Warning:
      return "warning";
    case Callout::Danger:
      return "danger";
    case Callout::Side:
      return "side";
    case Callout::Figures:
      return "figures";
    case Callout::Columns:
      return "columns";
    case Callout::Signs:
      return "signs";
    case Callout::Totals:
      return "totals";
    case Callout::Keep:
      return "keep";
    case Callout::Letter:
      return "letter";
    case Callout::Matrix:
      return "matrix";
    case Callout::Steps:
      return "steps";
    case Callout::Address:
      return "address";
    case Callout::Cards:
      return "cards";
    case Callout::Profiles:
      return "profiles";
    case Callout::Orders:
      return "orders";
    case Callout::Answers:
      return "answers";
    case Callout::Go:
      return "go";
  }
  return "";
}

std::string dump(const Document& document) {
  Dumper dumper{"", -1};
  dumper.blocks(document.blocks);
  return dumper.out;
}

}  // namespace markup
