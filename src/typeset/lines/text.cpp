// Broken lines become runs and pictures in their places.
#include "typeset/lines/text.h"

#include "base/fixed.h"
#include "base/letters.h"

#include <algorithm>

namespace typeset {

namespace {

using Kind = BreakItem::Kind;

TextRun cut(const TextRun& run, std::size_t begin, std::size_t end) {
  const auto glyphs = run.glyphs.begin();
  const std::uint32_t from = begin < run.glyphs.size() ? run.glyphs[begin].cluster : 0;
  const std::size_t to = end < run.glyphs.size() ? run.glyphs[end].cluster : run.text.size();
  TextRun part;
  part.face = run.face;
  part.size = run.size;
  part.colour = run.colour;
  part.text = run.text.substr(from, to - from);
  part.glyphs.assign(glyphs + static_cast<std::ptrdiff_t>(begin), glyphs + static_cast<std::ptrdiff_t>(end));
  for (Glyph& g : part.glyphs) g.cluster -= from;
  part.tracking = run.tracking;
  return part;
}

}  // namespace

Text::Text(LayoutContext& context, markup::Inlines words, const Style& style)
    : context_(context),
      words_(std::move(words)),
      style_(style),
      paragraph_(prepare(context, words_, style)) {
  for (const char32_t letter : paragraph_->missing) context_.missing(letter);
}

/// The hyphen belongs to the run it ends, so that a reader copies them out together.
void Text::addHyphen(TextLine& line, const Piece& piece, Dim& x) const {
  StyledText look = lookOf(style_, words_[piece.inlineIndex]);
  look.text.assign(1, '-');
  for (TextRun& hyphen : shape(context_.in.fonts, look).runs) {
    const int tag = line.items.back().tag;
    const Dim w = hyphen.width;
    if (auto* run = std::get_if<TextRun>(&line.items.back().what); run && run->face == hyphen.face) {
      for (Glyph& g : hyphen.glyphs) g.cluster += static_cast<std::uint32_t>(run->text.size());
      run->glyphs.insert(run->glyphs.end(), hyphen.glyphs.begin(), hyphen.glyphs.end());
      run->text += hyphen.text;
      run->width += w;
      run->isDivided = true;
    } else {
      hyphen.baseline = {x, line.baseline};
      hyphen.isDivided = true;
      line.items.push_back({std::move(hyphen), tag});
    }
    x += w;
  }
}

TextLine Text::lineOf(const std::vector<Atom>& atoms, BrokenLine line, int tag, Dim full) {
  TextLine out;
  out.height = style_.leading;
  out.baseline = style_.baseline;
  std::size_t begin = line.begin, end = line.end;
  while (end > begin && atoms[end - 1].item.kind != Kind::Box) --end;
  while (begin < end && atoms[begin].item.kind != Kind::Box) ++begin;
  for (std::size_t i = begin; i < end; ++i) {
    const Piece* piece = atoms[i].piece != noPiece ? &paragraph_->pieces[atoms[i].piece] : nullptr;
    if (!piece || !piece->drawing || piece->size.h <= style_.leading) continue;
    const Dim drop = style_.leading - style_.baseline;
    out.height = std::max(out.height, roundUp(piece->size.h + drop, context_.grid.unit));
    out.baseline = out.height - drop;
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
    const Piece& piece = paragraph_->pieces[index];
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
        known->second = context_.tag(piece.drawing ? Role::Figure : Role::Link, tag);
        if (piece.drawing) context_.out.tags.back().alt = part.text.empty() ? piece.drawing->alt : part.text;
      }
      own = known->second;
    }
    Dim w;
    if (piece.drawing) {
      w = piece.size.w;
      const bool isSmall = piece.size.h <= style_.leading;
      // A small picture stands a little below the baseline, as the letters' descenders do.
      const Dim down = isSmall ? style_.baseline / 7 : Dim{};
      for (Item item : piece.drawing->items) {
        item = scaledItem(std::move(item), piece.size.h, piece.drawing->size.h);
        move(item, x, out.baseline + down - piece.size.h);
        item.tag = own;
        out.items.push_back(std::move(item));
      }
    } else {
      w = isFull ? fullWord : widthOf(piece, from, to);
      TextRun run = cut(piece.run, from, to);
      run.baseline = {x, out.baseline};
      run.width = w;
      out.items.push_back({std::move(run), own});
    }
    if (!part.link.empty())
      out.items.push_back(
          {Link{{{x, out.baseline - style_.baseline}, {w, style_.leading}}, part.link, part.text}, own});
    x += w;
  }
  if (isDivision(atoms, line)) addHyphen(out, paragraph_->pieces[atoms[line.end].piece], x);
  out.width = x;
  return out;
}

}  // namespace typeset
