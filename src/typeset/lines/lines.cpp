// A text's shaped words become lines, divided at hyphens where the column is narrow.
#include "typeset/lines/text.h"

#include "base/letters.h"
#include "typeset/lines/hyphen.h"

#include <algorithm>

namespace typeset {
namespace {

using Kind = BreakItem::Kind;

// Penalties of breaks inside a word: at a hyphen, and where a word wider than the column must break.
constexpr int atHyphen = 80, afterSign = 500, anywhere = 4000;
constexpr std::int64_t fill = std::int64_t{1} << 40;
const Dim narrow = Dim::mm(60);  // wider columns have room enough to break between words

bool isSign(char32_t c) {
  return c == U'-' || c == U'/' || c == U'.' || c == U'_' || c == U'@' || c == U',' || c == 0xA0 ||
         c == 0x202F;
}

/// The word without the signs around it, as bytes of the text; nothing when there is more than one.
struct Core {
  std::size_t begin = 0, end = 0;
};
Core coreOf(const std::string& text) {
  Core core;
  bool isBehind = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = at;
    const char32_t c = base::nextLetter(text, at);
    const bool isDigit = c >= U'0' && c <= U'9';
    if (isDigit || (isLetter(c) && isBehind)) return {};
    if (isLetter(c)) {
      if (core.end == 0) core.begin = from;
      core.end = at;
    } else {
      isBehind = core.end > 0;
    }
  }
  return core;
}

}  // namespace

/// Narrow columns are ragged whatever the style says: few spaces would have to take all the white.
bool Text::isJustified(Dim width) const { return style_.isJustified && width >= narrow; }

/// The width that the words of a line are spread to; 0 leaves them as they are: the last line of a paragraph,
/// and one whose spaces would become more than twice as wide.
Dim Text::fullWidth(const std::vector<Atom>& atoms, const BrokenLine& line, Dim width) {
  constexpr std::int64_t most = 2'000'000;  // ratio 2: a space is stretched by half of its width twice
  const bool isLast = atoms[line.end].item.kind == Kind::Penalty && atoms[line.end].item.penalty <= mustBreak;
  const bool isTooFew = line.ratio > most || line.ratio < -1'000'000;
  return (isLast && line.ratio >= 0) || isTooFew ? Dim{} : width;
}

bool Text::mayDivide(Dim width) const { return style_.mayDivide && width < narrow; }

/// Whether this atom is a word by itself that may be divided: between two spaces, so neither a part of a
/// longer one nor the last of its paragraph. Where it has to break anyway, its neighbours do not matter.
bool Text::isLoneWord(std::size_t i, bool mustBreak) const {
  const std::vector<Atom>& all = paragraph_->atoms;
  const Piece& piece = paragraph_->pieces[all[i].piece];
  if (piece.drawing || !words_[piece.inlineIndex].link.empty()) return false;
  const auto isKind = [&](std::size_t k, Kind kind) { return k < all.size() && all[k].item.kind == kind; };
  const auto isForced = [&](std::size_t k) { return k < all.size() && all[k].piece == noPiece; };
  if (mustBreak) return (i == 0 || !isKind(i - 1, Kind::Box)) && !isKind(i + 1, Kind::Box);
  const bool begins = i == 0 || isKind(i - 1, Kind::Glue) || isForced(i - 1);
  return begins && isKind(i + 1, Kind::Glue) && !isForced(i + 1);
}

/// The glyphs of the atom before which it may be divided.
std::vector<std::size_t> Text::divisionsOf(const Atom& atom) const {
  const TextRun& run = paragraph_->pieces[atom.piece].run;
  const std::size_t from = run.glyphs[atom.begin].cluster;
  const std::size_t to = atom.end < run.glyphs.size() ? run.glyphs[atom.end].cluster : run.text.size();
  const std::string text = run.text.substr(from, to - from);
  const Core core = coreOf(text);
  std::vector<std::size_t> glyphs;
  for (const std::size_t place :
       hyphenPlaces(context_.in.language, std::string_view(text).substr(core.begin, core.end - core.begin)))
    for (std::size_t g = atom.begin + 1; g < atom.end; ++g)
      if (run.glyphs[g].cluster == from + core.begin + place) {  // not inside joined letters
        glyphs.push_back(g);
        break;
      }
  return glyphs;
}

/// The atoms, with words cut where they may break: at hyphens when asked for, and between any two letters,
/// best after a sign, where a part is wider than the column.
std::vector<Text::Atom> Text::brokenTo(Dim width, bool isDivided) const {
  std::vector<Atom> out;
  const auto addPart = [&](const Atom& atom, std::size_t begin, std::size_t end) {
    Atom part = atom;
    part.begin = begin;
    part.end = end;
    part.item.width = widthOf(paragraph_->pieces[atom.piece], begin, end).raw;
    out.push_back(part);
  };
  const auto addLetters = [&](const Atom& atom, std::size_t begin, std::size_t end, bool isLast) {
    const TextRun& run = paragraph_->pieces[atom.piece].run;
    for (std::size_t g = begin; g < end;) {
      std::size_t next = g + 1;  // marks stay with their letter
      while (next < end && run.glyphs[next].advance == 0) ++next;
      addPart(atom, g, next);
      const int penalty = isSign(letterAt(run, g)) ? afterSign : anywhere;
      if (next < end || !isLast)
        out.push_back({{Kind::Penalty, 0, 0, 0, penalty, false}, atom.piece, next, next});
      g = next;
    }
  };
  const std::vector<Atom>& all = paragraph_->atoms;
  for (std::size_t i = 0; i < all.size();) {
    std::size_t end = i;
    Dim word;
    for (; end < all.size() && all[end].item.kind == Kind::Box; ++end) word += Dim{all[end].item.width};
    if (end == i) ++end;
    for (; i < end; ++i) {
      const Atom& atom = all[i];
      if (atom.item.kind != Kind::Box || paragraph_->pieces[atom.piece].drawing) {
        out.push_back(atom);
        continue;
      }
      std::size_t begin = atom.begin;
      if (isDivided && isLoneWord(i, word > width))
        for (const std::size_t g : divisionsOf(atom)) {
          if (widthOf(paragraph_->pieces[atom.piece], begin, g) > width) break;
          addPart(atom, begin, g);
          out.push_back({{Kind::Penalty, hyphenWidth(atom).raw, 0, 0, atHyphen, true}, atom.piece, g, g});
          begin = g;
        }
      const bool isTooWide = begin == atom.begin
                                 ? word > width
                                 : widthOf(paragraph_->pieces[atom.piece], begin, atom.end) > width;
      if (isTooWide) addLetters(atom, begin, atom.end, i + 1 == end);
      else addPart(atom, begin, atom.end);
    }
  }
  const auto add = [&](BreakItem item) { out.push_back({item, noPiece, 0, 0}); };
  add({Kind::Penalty, 0, 0, 0, neverBreak, false});
  add({Kind::Glue, 0, fill, 0, 0, false});
  add({Kind::Penalty, 0, 0, 0, mustBreak, false});
  return out;
}

Dim Text::hyphenWidth(const Atom& atom) const {
  StyledText look = lookOf(style_, words_[paragraph_->pieces[atom.piece].inlineIndex]);
  look.text.assign(1, '-');
  return typeset::width(context_.in.fonts, look);
}

bool Text::isDivision(const std::vector<Atom>& atoms, const BrokenLine& line) {
  return line.end < atoms.size() && atoms[line.end].item.isFlagged;
}

/// A line that is not the last of its paragraph and stays a third empty.
bool Text::hasHole(const std::vector<BrokenLine>& lines, const std::vector<Atom>& atoms, Dim width) const {
  return std::any_of(lines.begin(), lines.end(), [&](const BrokenLine& line) {
    if (atoms[line.end].item.kind == Kind::Penalty && atoms[line.end].item.penalty <= mustBreak) return false;
    Dim words;
    for (std::size_t i = line.begin; i < line.end; ++i)
      if (atoms[i].item.kind != Kind::Penalty) words += Dim{atoms[i].item.width};
    return words * 3 < width * 2;
  });
}

/// No more than two lines in a row end in a hyphen: the third finds another place.
std::vector<BrokenLine> Text::breaksWithFewHyphens(std::vector<Atom>& atoms, Dim width) const {
  while (true) {
    std::vector<BrokenLine> lines = breaks(atoms, width);
    int row = 0;
    const auto third = std::find_if(lines.begin(), lines.end(), [&](const BrokenLine& line) {
      row = isDivision(atoms, line) ? row + 1 : 0;
      return row > 2;
    });
    if (third == lines.end()) return lines;
    atoms[third->end].item.penalty = neverBreak;
  }
}

std::vector<BrokenLine> Text::breaks(const std::vector<Atom>& atoms, Dim width) const {
  std::vector<BreakItem> items;
  items.reserve(atoms.size());
  for (const Atom& atom : atoms) items.push_back(atom.item);
  BreakRules rules;
  rules.width = width.raw;
  // Four ems of white are as bad as glue stretched in full.
  rules.lineStretch = isJustified(width) ? 0 : style_.plain.size.raw * 4;
  rules.tolerance = INT64_MAX;
  return breakIntoLines(items, rules);
}

/// A last line of one short word looks lost: break a little narrower where that costs no line, as far as it
/// helps.
void Text::lengthenLast(std::vector<BrokenLine>& lines, const std::vector<Atom>& atoms, Dim width) const {
  const auto wordsOf = [&](const BrokenLine& line) {
    Dim words;
    for (std::size_t i = line.begin; i < line.end; ++i)
      if (atoms[i].item.kind == Kind::Box) words += Dim{atoms[i].item.width};
    return words;
  };
  const auto isShort = [&] { return wordsOf(lines.back()) * 6 < width; };
  const Dim em = style_.plain.size;
  for (Dim narrower = width - em; lines.size() > 1 && isShort(); narrower -= em) {
    if (narrower < width - em * 5 || narrower < longest()) return;
    std::vector<BrokenLine> other = breaks(atoms, narrower);
    if (other.size() > lines.size()) return;
    if (wordsOf(other.back()) > wordsOf(lines.back())) lines = std::move(other);
  }
}

Paragraph::Lines Text::brokenLines(Dim width, bool isBalanced) const {
  std::vector<Atom> atoms = brokenTo(width, false);
  std::vector<BrokenLine> found = breaks(atoms, width);
  if (mayDivide(width) && (longest() > width || hasHole(found, atoms, width))) {
    atoms = brokenTo(width, true);
    found = breaksWithFewHyphens(atoms, width);
  }
  if (isBalanced || !isJustified(width)) lengthenLast(found, atoms, width);
  if (isBalanced && found.size() > 1) {
    // The narrowest column that needs no more lines.
    Dim least = width / static_cast<std::int64_t>(found.size()) - Dim::pt(1), most = width;
    least = std::max(least, longest());
    while (most - least > Dim::pt(2)) {
      const Dim middle = (least + most) / 2;
      std::vector<BrokenLine> narrower = breaks(atoms, middle);
      if (narrower.size() > found.size()) {
        least = middle;
      } else {
        most = middle;
        found = std::move(narrower);
      }
    }
  }
  return {std::move(atoms), std::move(found)};
}

std::vector<TextLine> Text::lines(Dim width, int tag, bool isBalanced) {
  if (isEmpty()) return {};
  const auto broken =
      paragraph_->broken->getOrMake({width, isBalanced}, [&] { return brokenLines(width, isBalanced); });
  const bool isFull = isJustified(width) && !isBalanced;
  std::vector<TextLine> out;
  out.reserve(broken->lines.size());
  for (const BrokenLine& line : broken->lines)
    out.push_back(lineOf(broken->atoms, line, tag, isFull ? fullWidth(broken->atoms, line, width) : Dim{}));
  return out;
}

}  // namespace typeset
