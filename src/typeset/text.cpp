// Inlines become boxes and glue, then lines.
#include "typeset/text.h"

#include "base/fixed.h"
#include "base/utf8.h"

#include <algorithm>

namespace typeset {

char32_t letterAt(const TextRun& run, std::size_t glyph) {
  if (glyph >= run.glyphs.size()) return 0;
  std::size_t at = run.glyphs[glyph].cluster;
  return at < run.text.size() ? base::nextLetter(run.text, at) : 0;
}

bool isLetter(char32_t c) { return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c >= 0xC0; }

namespace {

using Kind = BreakItem::Kind;

constexpr int afterHyphen = 50;  // penalty of a break at a word's own hyphen
constexpr std::int64_t fill = std::int64_t{1} << 40;

BreakItem penaltyItem(int penalty) { return {Kind::Penalty, 0, 0, 0, penalty, false}; }

/// An open line may end here: after a hyphen between letters, after a dash that has no space of its own.
bool mayBreakAfter(const TextRun& run, std::size_t glyph) {
  const char32_t c = letterAt(run, glyph);
  if (c == U'-') return glyph > 0 && isLetter(letterAt(run, glyph - 1)) && isLetter(letterAt(run, glyph + 1));
  return c == 0x2014 && letterAt(run, glyph + 1) != 0;
}

/// Signs and pictograms are square and follow the size of the type; any other drawing keeps its size.
bool isSquare(const Drawing& d) {
  const Dim more = d.size.w > d.size.h ? d.size.w - d.size.h : d.size.h - d.size.w;
  return more * 10 <= d.size.h;
}

TextRun cut(const TextRun& run, std::size_t begin, std::size_t end) {
  TextRun part = run;
  const std::uint32_t from = begin < run.glyphs.size() ? run.glyphs[begin].cluster : 0;
  const std::size_t to = end < run.glyphs.size() ? run.glyphs[end].cluster : run.text.size();
  part.text = run.text.substr(from, to - from);
  part.glyphs.assign(run.glyphs.begin() + static_cast<std::ptrdiff_t>(begin),
                     run.glyphs.begin() + static_cast<std::ptrdiff_t>(end));
  for (Glyph& g : part.glyphs) g.cluster -= from;
  return part;
}

}  // namespace

Text::Text(Setter& setter, markup::Inlines words, const Style& style)
    : setter_(setter), words_(std::move(words)), style_(style) {
  for (std::size_t i = 0; i < words_.size(); ++i) {
    const markup::Inline& part = words_[i];
    if (!part.figure.empty()) {
      addDrawing(part, i);
      continue;
    }
    addWords(part, i, lookOf(part));
  }
}

Span Text::lookOf(const markup::Inline& part) const {
  Span look = style_.plain;
  if (part.style == markup::Inline::Style::Strong) look.face = style_.strong;
  if (part.style == markup::Inline::Style::Emphasis) look.face = style_.emphasis;
  return look;
}

void Text::addWords(const markup::Inline& part, std::size_t index, const Span& look) {
  std::size_t begin = 0;
  while (true) {
    const std::size_t end = std::min(part.text.find('\n', begin), part.text.size());
    Span span = look;
    span.text = part.text.substr(begin, end - begin);
    if (!span.text.empty()) {
      Shaped shaped = shape(setter_.in.fonts, span, [&](char32_t c) { setter_.missing(c); });
      for (TextRun& run : shaped.runs) {
        Piece piece;
        piece.inlineIndex = index;
        piece.units = {0};
        for (const Glyph& g : run.glyphs) piece.units.push_back(piece.units.back() + g.advance);
        piece.run = std::move(run);
        pieces_.push_back(std::move(piece));
        addRun(pieces_.size() - 1);
      }
    }
    if (end == part.text.size()) break;
    addForced();
    begin = end + 1;
  }
}

void Text::addRun(std::size_t index) {
  const Piece& piece = pieces_[index];
  const std::size_t count = piece.run.glyphs.size();
  const auto add = [&](Kind kind, std::size_t from, std::size_t to) {
    BreakItem item;
    item.kind = kind;
    item.width = widthOf(piece, from, to).raw;
    if (kind == Kind::Glue && style_.isJustified) {  // as in the paper on total-fit breaking: a half, a third
      item.stretch = item.width / 2;
      item.shrink = item.width / 3;
    }
    atoms_.push_back({item, index, from, to});
  };
  std::size_t from = 0;
  for (std::size_t i = 0; i < count; ++i) {
    if (letterAt(piece.run, i) == U' ') {
      if (i > from) add(Kind::Box, from, i);
      add(Kind::Glue, i, i + 1);
      from = i + 1;
    } else if (mayBreakAfter(piece.run, i)) {
      add(Kind::Box, from, i + 1);
      atoms_.push_back({penaltyItem(afterHyphen), index, i + 1, i + 1});
      from = i + 1;
    }
  }
  if (count > from) add(Kind::Box, from, count);
}

void Text::addDrawing(const markup::Inline& part, std::size_t index) {
  const Drawing* drawing = setter_.drawing(part.figure);
  if (!drawing) {
    addWords(part, index, style_.plain);  // the alternative text stands for it
    return;
  }
  Piece piece;
  piece.inlineIndex = index;
  piece.drawing = drawing;
  piece.size = drawing->size;
  if (isSquare(*drawing) && drawing->size.h > Dim{}) piece.size = {style_.rise, style_.rise};
  BreakItem item;
  item.width = piece.size.w.raw;
  pieces_.push_back(std::move(piece));
  atoms_.push_back({item, pieces_.size() - 1, 0, 0});
}

void Text::addForced() {
  const auto add = [&](BreakItem item) { atoms_.push_back({item, noPiece, 0, 0}); };
  add(penaltyItem(neverBreak));
  add({Kind::Glue, 0, fill, 0, 0, false});
  add(penaltyItem(mustBreak));
}

Dim Text::widthOf(const Piece& piece, std::size_t begin, std::size_t end) const {
  const int em = setter_.in.fonts.faces[piece.run.face]->metrics().unitsPerEm;
  const Dim w = {
      base::mulDiv(piece.units[end] - piece.units[begin], piece.run.size.raw, em, base::Round::Up)};
  return w + piece.run.tracking * static_cast<std::int64_t>(end - begin);
}

Dim Text::natural() const {
  Dim widest, line, glue;  // glue counts only between words
  for (const Atom& atom : atoms_) {
    if (atom.item.kind == Kind::Penalty && atom.item.penalty <= mustBreak) {
      widest = std::max(widest, line);
      line = glue = {};
    }
    if (atom.item.kind == Kind::Glue) glue += Dim{atom.item.width};
    if (atom.item.kind == Kind::Box) {
      if (line > Dim{}) line += glue;
      glue = {};
      line += Dim{atom.item.width};
    }
  }
  return std::max(widest, line);
}

Dim Text::longest() const {
  Dim widest, word;
  for (const Atom& atom : atoms_) {
    if (atom.item.kind == Kind::Box) word += Dim{atom.item.width};
    else word = {};
    widest = std::max(widest, word);
  }
  return widest;
}

/// The hyphen belongs to the run it ends, so that a reader copies them out together.
void Text::addHyphen(TextLine& line, const Piece& piece, Dim& x) const {
  Span look = lookOf(words_[piece.inlineIndex]);
  look.text = "-";
  for (TextRun& hyphen : shape(setter_.in.fonts, look).runs) {
    const int tag = line.items.back().tag;
    const Dim w = hyphen.width;
    if (auto* run = std::get_if<TextRun>(&line.items.back().what); run && run->face == hyphen.face) {
      for (Glyph& g : hyphen.glyphs) g.cluster += static_cast<std::uint32_t>(run->text.size());
      run->glyphs.insert(run->glyphs.end(), hyphen.glyphs.begin(), hyphen.glyphs.end());
      run->text += hyphen.text;
      run->width += w;
    } else {
      hyphen.baseline = {x, line.rise};
      line.items.push_back({std::move(hyphen), tag});
    }
    x += w;
  }
}

TextLine Text::lineOf(const std::vector<Atom>& atoms, BrokenLine line, int tag, Dim full) {
  TextLine out;
  out.height = style_.leading;
  out.rise = style_.rise;
  std::size_t begin = line.begin, end = line.end;
  while (end > begin && atoms[end - 1].item.kind != Kind::Box) --end;
  while (begin < end && atoms[begin].item.kind != Kind::Box) ++begin;
  for (std::size_t i = begin; i < end; ++i) {
    const Piece* piece = atoms[i].piece != noPiece ? &pieces_[atoms[i].piece] : nullptr;
    if (!piece || !piece->drawing || piece->size.h <= style_.leading) continue;
    const Dim drop = style_.leading - style_.rise;
    out.height = std::max(out.height, roundUp(piece->size.h + drop, setter_.grid.unit));
    out.rise = out.height - drop;
  }
  // The white that is missing or over is shared out to a count, so that the last word ends at the margin.
  const bool isFull = full > Dim{};
  std::int64_t glues = 0, glue = 0;
  Dim white = full;
  for (std::size_t i = begin; i < end; ++i) {
    glues += atoms[i].item.kind == Kind::Glue;
    if (atoms[i].item.kind != Kind::Penalty) white -= Dim{atoms[i].item.width};
  }
  if (isDivision(atoms, line)) white -= Dim{atoms[line.end].item.width};
  Dim x;
  for (std::size_t i = begin; i < end;) {
    const std::size_t index = atoms[i].piece;
    if (index == noPiece) {
      ++i;
      continue;
    }
    const Piece& piece = pieces_[index];
    const std::size_t from = atoms[i].begin;
    std::size_t to = from;
    Dim fullWord;  // with the white behind it
    for (bool isWord = true; isWord && i < end && atoms[i].piece == index; ++i) {
      to = std::max(to, atoms[i].end);
      if (!isFull || atoms[i].item.kind == Kind::Penalty) continue;
      fullWord += Dim{atoms[i].item.width};
      if (atoms[i].item.kind != Kind::Glue) continue;
      fullWord += white * (glue + 1) / glues - white * glue / glues;
      ++glue;
      isWord = false;
    }
    const markup::Inline& part = words_[piece.inlineIndex];
    int own = tag;
    if (tag != artifact && (piece.drawing || !part.link.empty())) {
      const auto [known, isNew] = tags_.emplace(piece.inlineIndex, 0);
      if (isNew) {
        known->second = setter_.tag(piece.drawing ? Role::Figure : Role::Link, tag);
        if (piece.drawing) setter_.out.tags.back().alt = part.text.empty() ? piece.drawing->alt : part.text;
      }
      own = known->second;
    }
    Dim w;
    if (piece.drawing) {
      w = piece.size.w;
      const bool isSmall = piece.size.h <= style_.leading;
      // A small picture stands a little below the baseline, as the letters' descenders do.
      const Dim down = isSmall ? style_.rise / 7 : Dim{};
      for (Item item : piece.drawing->items) {
        item = scaledItem(std::move(item), piece.size.h, piece.drawing->size.h);
        move(item, x, out.rise + down - piece.size.h);
        item.tag = own;
        out.items.push_back(std::move(item));
      }
    } else {
      w = isFull ? fullWord : widthOf(piece, from, to);
      TextRun run = cut(piece.run, from, to);
      run.baseline = {x, out.rise};
      run.width = w;
      out.items.push_back({std::move(run), own});
    }
    if (!part.link.empty())
      out.items.push_back(
          {Link{{{x, out.rise - style_.rise}, {w, style_.leading}}, part.link, part.text}, own});
    x += w;
  }
  if (isDivision(atoms, line)) addHyphen(out, pieces_[atoms[line.end].piece], x);
  out.width = x;
  return out;
}

}  // namespace typeset
