// Inlines become boxes and glue: shaped, measured, and kept for the next document that says the same.
#include "typeset/text.h"

#include "base/fixed.h"

#include <algorithm>

namespace typeset {
namespace {

using Kind = BreakItem::Kind;

constexpr int afterHyphen = 50;  // penalty of a break at a word's own hyphen
constexpr int inTie = 3000;      // and between a number and its unit
constexpr std::int64_t fill = std::int64_t{1} << 40;

BreakItem penaltyItem(int penalty) { return {Kind::Penalty, 0, 0, 0, penalty, false}; }

/// An open line may end here: after a hyphen between letters, after a dash that has no space of its own.
bool mayBreakAfter(const TextRun& run, std::size_t glyph) {
  const char32_t c = letterAt(run, glyph);
  if (c == U'-') return glyph > 0 && isLetter(letterAt(run, glyph - 1)) && isLetter(letterAt(run, glyph + 1));
  return c == 0x2014 && letterAt(run, glyph + 1) != 0;
}

bool isDigit(char32_t c) { return c >= U'0' && c <= U'9'; }

/// The space holds a number and its unit together ('85 dB(A)', '12 rags'), or a sign and what it works on
/// ('- 26 %'): lines of a formula begin with the sign.
bool isTie(const TextRun& run, std::size_t space) {
  constexpr std::size_t longestUnit = 7;
  if (space == 0) return false;
  const char32_t before = letterAt(run, space - 1), after = letterAt(run, space + 1);
  const bool isAlone = space == 1 || letterAt(run, space - 2) == U' ';
  if (isAlone && after != 0 &&
      (before == U'\u00D7' || before == U'\u00F7' || before == U'\u2212' || before == U'+' || before == U'='))
    return true;
  if (!isDigit(before) || !(isLetter(after) || after == U'%' || after == U'\u00B0')) return false;
  std::size_t end = space + 1;
  while (letterAt(run, end) != 0 && letterAt(run, end) != U' ') ++end;
  return end - space - 1 <= longestUnit;
}

/// Signs and pictograms are square and follow the size of the type; any other drawing keeps its size.
bool isSquare(const Drawing& d) {
  const Dim more = d.size.w > d.size.h ? d.size.w - d.size.h : d.size.h - d.size.w;
  return more * 10 <= d.size.h;
}

class Preparer {
 public:
  Preparer(Setter& setter, const Style& style) : setter_(setter), style_(style) {}

  Paragraph run(const markup::Inlines& words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
      if (words[i].figure.empty()) addWords(words[i], i, lookOf(style_, words[i]));
      else addDrawing(words[i], i);
    }
    measure();
    return std::move(out_);
  }

 private:
  void addWords(const markup::Inline& part, std::size_t index, const Span& look) {
    std::size_t begin = 0;
    while (true) {
      const std::size_t end = std::min(part.text.find('\n', begin), part.text.size());
      Span span = look;
      span.text = part.text.substr(begin, end - begin);
      if (!span.text.empty()) {
        Shaped shaped = shape(setter_.in.fonts, span, [&](char32_t c) { out_.missing.push_back(c); });
        for (TextRun& run : shaped.runs) {
          Paragraph::Piece piece;
          piece.inlineIndex = index;
          piece.units = {0};
          for (const Glyph& g : run.glyphs) piece.units.push_back(piece.units.back() + g.advance);
          piece.run = std::move(run);
          out_.pieces.push_back(std::move(piece));
          addRun(out_.pieces.size() - 1);
        }
      }
      if (end == part.text.size()) break;
      addForced();
      begin = end + 1;
    }
  }

  void addRun(std::size_t index) {
    const Paragraph::Piece& piece = out_.pieces[index];
    const std::size_t count = piece.run.glyphs.size();
    const auto add = [&](Kind kind, std::size_t from, std::size_t to) {
      BreakItem item;
      item.kind = kind;
      item.width = out_.widthOf(setter_.in.fonts, piece, from, to).raw;
      if (kind == Kind::Glue &&
          style_.isJustified) {  // as in the paper on total-fit breaking: a half, a third
        item.stretch = item.width / 2;
        item.shrink = item.width / 3;
      }
      out_.atoms.push_back({item, index, from, to});
    };
    std::size_t from = 0;
    for (std::size_t i = 0; i < count; ++i) {
      if (letterAt(piece.run, i) == U' ') {
        if (i > from) add(Kind::Box, from, i);
        if (isTie(piece.run, i)) out_.atoms.push_back({penaltyItem(inTie), index, i, i});
        add(Kind::Glue, i, i + 1);
        from = i + 1;
      } else if (mayBreakAfter(piece.run, i)) {
        add(Kind::Box, from, i + 1);
        out_.atoms.push_back({penaltyItem(afterHyphen), index, i + 1, i + 1});
        from = i + 1;
      }
    }
    if (count > from) add(Kind::Box, from, count);
  }

  void addDrawing(const markup::Inline& part, std::size_t index) {
    const Drawing* drawing = setter_.drawing(part.figure);
    if (!drawing) {
      addWords(part, index, style_.plain);  // the alternative text stands for it
      return;
    }
    Paragraph::Piece piece;
    piece.inlineIndex = index;
    piece.drawing = drawing;
    piece.size = drawing->size;
    if (isSquare(*drawing) && drawing->size.h > Dim{}) piece.size = {style_.rise, style_.rise};
    BreakItem item;
    item.width = piece.size.w.raw;
    out_.pieces.push_back(std::move(piece));
    out_.atoms.push_back({item, out_.pieces.size() - 1, 0, 0});
  }

  void addForced() {
    const auto add = [&](BreakItem item) { out_.atoms.push_back({item, Paragraph::noPiece, 0, 0}); };
    add(penaltyItem(neverBreak));
    add({Kind::Glue, 0, fill, 0, 0, false});
    add(penaltyItem(mustBreak));
  }

  void measure() {
    Dim line, glue, word;  // glue counts only between words
    bool isTied = false;
    for (const Paragraph::Atom& atom : out_.atoms) {
      const Dim width = {atom.item.width};
      if (atom.item.kind == Kind::Penalty && atom.item.penalty <= mustBreak) {
        out_.natural = std::max(out_.natural, line);
        line = glue = {};
      }
      const bool wasTied = isTied;
      isTied = atom.item.kind == Kind::Penalty && atom.item.penalty == inTie;
      if (atom.item.kind == Kind::Glue) glue += width;
      if (atom.item.kind == Kind::Box) {
        if (line > Dim{}) line += glue;
        glue = {};
        line += width;
        word += width;
        out_.longest = std::max(out_.longest, word);
      } else if (wasTied) {
        word += width;
      } else if (!isTied) {
        word = {};
      }
    }
    out_.natural = std::max(out_.natural, line);
  }

  Setter& setter_;
  const Style& style_;
  Paragraph out_;
};

/// What a paragraph depends on, but for its pictures and the faces.
std::string keyOf(const markup::Inlines& words, const Style& style, const LayoutInput& in) {
  const Span& plain = style.plain;
  std::string key;
  const auto add = [&](const auto& value) {
    key.append(reinterpret_cast<const char*>(&value), sizeof value);
  };
  const auto addText = [&](const std::string& text) {
    add(text.size());
    key += text;
  };
  const std::uint8_t look[] = {plain.colour.r,
                               plain.colour.g,
                               plain.colour.b,
                               static_cast<std::uint8_t>(plain.face),
                               static_cast<std::uint8_t>(style.strong),
                               static_cast<std::uint8_t>(style.emphasis),
                               plain.tabular,
                               style.isJustified,
                               style.mayDivide};
  add(look);
  add(plain.size.raw);
  add(plain.tracking.raw);
  addText(in.language);  // of hyphens
  addText(in.fonts.language);
  for (const markup::Inline& part : words) {
    const bool isLink = !part.link.empty();  // addresses are not divided
    key += static_cast<char>(2 * static_cast<int>(part.style) + isLink);
    addText(part.text);
  }
  return key;
}

}  // namespace

Span lookOf(const Style& style, const markup::Inline& part) {
  Span look = style.plain;
  if (part.style == markup::Inline::Style::Strong) look.face = style.strong;
  if (part.style == markup::Inline::Style::Emphasis) look.face = style.emphasis;
  return look;
}

Dim Paragraph::widthOf(const Fonts& fonts, const Piece& piece, std::size_t begin, std::size_t end) const {
  const int em = fonts.faces[piece.run.face]->metrics().unitsPerEm;
  const Dim w = {
      base::mulDiv(piece.units[end] - piece.units[begin], piece.run.size.raw, em, base::Round::Up)};
  return w + piece.run.tracking * static_cast<std::int64_t>(end - begin);
}

std::shared_ptr<const Paragraph> prepare(Setter& setter, const markup::Inlines& words, const Style& style) {
  const auto make = [&] { return Preparer(setter, style).run(words); };
  const bool hasPicture =
      std::any_of(words.begin(), words.end(), [](const auto& part) { return !part.figure.empty(); });
  if (hasPicture) return std::make_shared<const Paragraph>(make());
  return setter.in.fonts.paragraphs->getOrMake(keyOf(words, style, setter.in), make);
}

}  // namespace typeset
