// The glyphs each face is used for, and the font objects that show them.
#include "pdf/fonts/embed_fonts.h"

#include "pdf/objects/notation.h"

#include <hb.h>

#include <stdexcept>

namespace pdf {
namespace {

using typeset::FontFace;

/// A glyph can stand for several letters ('fi') and, with marks, for none. One that stands for different
/// letters in different places (a space and a no-break space) is read as the shortest and lowest.
void note(UsedGlyphs& used, std::uint32_t glyph, std::string_view text) {
  std::string_view& known = used.texts[glyph];
  const bool isLetter = text.size() == 1 && known.size() == 1 && text[0] == known[0];
  if (isLetter) return;  // as nearly all are, once they have been seen
  if (!known.data()) {
    used.glyphs.push_back(glyph);
    known = "";
  }
  if (text.empty() || text == known) return;
  if (known.empty() || text.size() < known.size() || (text.size() == known.size() && text < known))
    known = text;
}

void noteRun(UsedGlyphs& used, const typeset::TextRun& run) {
  for (std::size_t i = 0; i < run.glyphs.size(); ++i) {
    const typeset::Glyph& glyph = run.glyphs[i];
    if (glyph.id >= used.texts.size()) throw std::logic_error("internal error: unknown glyph in a run");
    std::size_t end = run.text.size();
    for (std::size_t next = i + 1; next < run.glyphs.size() && end == run.text.size(); ++next)
      if (run.glyphs[next].cluster != glyph.cluster) end = run.glyphs[next].cluster;
    if (glyph.cluster > end) throw std::logic_error("internal error: the letters of a run are out of order");
    const bool isFirst = i == 0 || run.glyphs[i - 1].cluster != glyph.cluster;
    const auto text = std::string_view(run.text).substr(glyph.cluster, end - glyph.cluster);
    note(used, glyph.id, isFirst ? text : std::string_view{});
  }
}

/// By face. The texts are views into the document.
std::vector<UsedGlyphs> usedGlyphs(const typeset::Document& document) {
  std::vector<UsedGlyphs> used(document.faces.size());
  for (const typeset::Page& page : document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) {
        if (run->face >= document.faces.size() || !document.faces[run->face])
          throw std::logic_error("internal error: unknown face in a run");
        const typeset::FontFace& face = *document.faces[run->face];
        UsedGlyphs& ofFace = used[run->face];
        if (ofFace.texts.empty()) ofFace.texts.resize(hb_face_get_glyph_count(face.hbFace()));
        noteRun(ofFace, *run);
        if (run->endsWord)
          if (const auto space = face.glyphOf(U' ')) note(ofFace, *space, " ");
      }
  return used;
}

Object embed(File& file, const FontSubset& font, Variant variant) {
  std::string cidSet;  // ISO 19005-1:2005, 6.3.5; later parts do without
  if (variant == Variant::A1b)
    cidSet = "/CIDSet " + reference(file.addStream("", font.cidSet, Packing::Deflated)) + "\n";
  const Object program = file.addStream(
      font.isCff ? "/Subtype /CIDFontType0C\n" : "/Length1 " + std::to_string(font.programSize) + "\n",
      font.program, Packing::Deflated);
  const Object descriptor = file.addDictionary(
      font.descriptor + cidSet + (font.isCff ? "/FontFile3 " : "/FontFile2 ") + reference(program) + "\n");
  const std::string subtype(font.isCff ? "CIDFontType0" : "CIDFontType2"),
      glyphMap(font.isCff ? "" : "/CIDToGIDMap /Identity\n");
  const Object descendant = file.addDictionary(
      "/Type /Font\n/Subtype /" + subtype + "\n/BaseFont /" + font.name +
      "\n/CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>>\n" + glyphMap +
      "/DW 0\n/W [0 [" + font.widths + "]]\n/FontDescriptor " + reference(descriptor) + "\n");
  const Object map = file.addStream("", font.toUnicode, Packing::Deflated);
  return file.addDictionary("/Type /Font\n/Subtype /Type0\n/BaseFont /" + font.name +
                            "\n/Encoding /Identity-H\n/DescendantFonts [" + reference(descendant) +
                            "]\n/ToUnicode " + reference(map) + "\n");
}

}  // namespace

std::vector<EmbeddedFont> embedFonts(File& file, const typeset::Document& document, Variant variant) {
  const std::vector<UsedGlyphs> used = usedGlyphs(document);
  std::vector<EmbeddedFont> fonts(document.faces.size());
  for (std::size_t i = 0; i < fonts.size(); ++i)
    if (!used[i].glyphs.empty()) {
      fonts[i].cut = fontSubset(glyphSet(document.faces[i], used[i]));
      fonts[i].object = embed(file, *fonts[i].cut, variant);
    }
  return fonts;
}

}  // namespace pdf
