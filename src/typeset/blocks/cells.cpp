// Shapes the cells of a table and looks for what they are: figures, writing lines, boxes to tick.
#include "typeset/blocks/cells.h"

#include "base/letters.h"

#include <algorithm>

namespace typeset {
namespace {

using markup::Inline;
using markup::Inlines;

bool isBlank(const std::string& s) { return s.find_first_not_of(" \n") == std::string::npos; }

void trim(Inlines& words) {
  while (!words.empty() && words.front().figure.empty()) {
    std::string& s = words.front().text;
    s.erase(0, std::min(s.find_first_not_of(" \n"), s.size()));
    if (!s.empty()) break;
    words.erase(words.begin());
  }
  while (!words.empty() && words.back().figure.empty()) {
    std::string& s = words.back().text;
    s.erase(s.find_last_not_of(" \n") + 1);
    if (!s.empty()) break;
    words.pop_back();
  }
}

/// Takes the writing line out of the words.
Writing takeLine(Inlines& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string& s = words[i].text;
    const std::size_t at = s.find("____");
    if (at == std::string::npos) continue;
    const std::size_t end = std::min(s.find_first_not_of('_', at), s.size());
    const auto isBlankBefore = [&] {
      for (std::size_t k = 0; k < i; ++k)
        if (!isBlank(words[k].text)) return false;
      return isBlank(s.substr(0, at));
    }();
    s.erase(at, end - at);
    trim(words);
    if (words.empty()) return Writing::Line;
    return isBlankBefore ? Writing::Label : Writing::WordsOn;
  }
  return Writing::None;
}

bool takeTick(Inlines& words) {
  if (words.empty() || words.front().text.rfind("[ ]", 0) != 0) return false;
  words.front().text.erase(0, 3);
  trim(words);
  return true;
}

/// Bytes of the decimal mark and the one or two digits after it, at the end of a number.
std::size_t fractionLength(const std::string& s) {
  for (const std::size_t digits : {std::size_t{1}, std::size_t{2}}) {
    if (s.size() < digits + 2) break;
    const char mark = s[s.size() - digits - 1];
    if (mark == '.' || mark == ',') return digits + 1;
  }
  return 0;
}

/// Digits with separators, a sign and a currency before them.
bool isNumber(std::string s) {
  for (const char* before : {"+", "-", "\u2212", "\u2013", "$", "\u20AC", "\u00A3", "\u00A5"})
    for (std::size_t at = s.find(before); at == 0; at = std::string::npos)
      s.erase(0, std::string(before).size());
  if (s.empty() || !base::isDigit(s.front()) || !base::isDigit(s.back())) return false;
  for (std::size_t i = 0; i < s.size(); ++i) {
    const char c = s[i];
    if (base::isDigit(c) || c == '.' || c == ',' || c == '\'') continue;
    if (s.compare(i, 2, "\u00A0") == 0) {
      i += 1;
    } else if (s.compare(i, 3, "\u202F") == 0 || s.compare(i, 3, "\u2019") == 0) {
      i += 2;
    } else {
      return false;
    }
  }
  return true;
}

CellContent readCell(LayoutContext& context, Inlines words, const Style& style, bool isHead) {
  CellContent cell;
  cell.writing = takeLine(words);
  cell.isTick = takeTick(words);
  trim(words);
  // A drawing at the beginning has a line of its own.
  if (words.size() > 1 && !words.front().figure.empty()) words[1].text.insert(0, 1, '\n');
  cell.isStrong = isAll(words, Inline::Style::Strong);
  const Style* look = &style;
  if (cell.writing == Writing::Label) {
    look = &context.style("note");
    for (Inline& part : words) part.style = Inline::Style::Strong;
  }
  const std::string plainText = plainWords(words);
  if (!isHead && isNumber(plainText)) {
    cell.isNumber = true;
    if (const std::size_t length = fractionLength(plainText)) {
      StyledText fraction = style.plain;  // of strong figures too, so that all end on one vertical
      fraction.text = plainText.substr(plainText.size() - length);
      cell.fraction = width(context.in.fonts, fraction);
    }
  }
  cell.text = std::make_unique<Text>(context, std::move(words), *look);
  const Dim indent = cell.isTick ? tickIndent() : Dim{};
  cell.natural = cell.text->natural() + indent;
  cell.longest = cell.text->longest() + indent;
  return cell;
}

/// The head of a row; emphasised words at its end stand small below it.
CellContent readRowHead(LayoutContext& context, Inlines words, const Style& style) {
  std::size_t end = words.size();
  while (end > 0 && words[end - 1].figure.empty() &&
         (words[end - 1].style == Inline::Style::Emphasis || isBlank(words[end - 1].text)))
    --end;
  Inlines note(words.begin() + static_cast<std::ptrdiff_t>(end), words.end());
  trim(note);
  if (note.empty() || end == 0) return readCell(context, std::move(words), style, false);
  words.erase(words.begin() + static_cast<std::ptrdiff_t>(end), words.end());
  CellContent cell = readCell(context, std::move(words), style, false);
  cell.note = std::make_unique<Text>(context, plain(std::move(note)), context.style("note"));
  cell.natural = std::max(cell.natural, cell.note->natural());
  cell.longest = std::max(cell.longest, cell.note->longest());
  return cell;
}

bool hasLine(const markup::Cell& cell) {
  return std::any_of(cell.text.begin(), cell.text.end(),
                     [](const Inline& part) { return part.text.find("____") != std::string::npos; });
}

}  // namespace

Dim tickIndent() { return Dim::mm(6); }

TableContent readCells(LayoutContext& context, const markup::Table& table, Column place,
                       const markup::Heading* heading) {
  TableContent set{table, place.isFull, false, false, {}, {}, {}, {}};
  const std::size_t count = table.columns.size();
  for (const markup::Row& row : table.rows)
    for (const markup::Cell& cell : row.cells) set.hasWriting = set.hasWriting || hasLine(cell);
  const auto wordsOf = [](const std::vector<markup::Cell>& cells, std::size_t i) {
    return i < cells.size() ? cells[i].text : Inlines{};
  };
  if (table.hasHead)
    for (std::size_t i = 0; i < count; ++i)
      set.head.push_back(heading && i == 0
                             ? readCell(context, heading->text, context.style("head"), true)
                             : readCell(context, wordsOf(table.head, i), context.style("label"), true));
  set.fractions.resize(count);
  const bool hasTicks = std::any_of(table.rows.begin(), table.rows.end(), [&](const markup::Row& row) {
    return plainWords(wordsOf(row.cells, 0)).rfind("[ ]", 0) == 0;
  });
  set.isKeyed = !table.hasHead && !set.hasWriting && !hasTicks && count == 2 &&
                table.columns[1].align != markup::Align::Right;
  for (const markup::Row& row : table.rows) {
    if (row.line != 0) context.line = row.line;
    RowContent cells;
    for (std::size_t i = 0; i < count; ++i) {
      Inlines words = wordsOf(row.cells, i);
      if (i == 0 && set.isKeyed)
        for (Inline& part : words) part.style = Inline::Style::Strong;
      const bool isRowHead = i == 0 && set.isWide && table.hasHead && count > 1;
      cells.push_back(isRowHead ? readRowHead(context, std::move(words), context.style("rowHead"))
                                : readCell(context, std::move(words), context.style("table"), false));
      if (cells.back().isNumber) set.fractions[i] = std::max(set.fractions[i], cells.back().fraction);
    }
    set.rows.push_back(std::move(cells));
  }
  placeColumns(context, set, place);
  return set;
}

}  // namespace typeset
