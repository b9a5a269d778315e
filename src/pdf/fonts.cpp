// Composite fonts with Identity-H codes: ISO 32000-1:2008, 9.7; ToUnicode maps: 9.10.3.
#include "pdf/fonts.h"

#include "base/fixed.h"
#include "pdf/notation.h"
#include "pdf/subset.h"

#include <hb.h>

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

using typeset::FontFace;

/// A glyph can stand for several letters ('fi') and, with marks, for none. One that stands for different
/// letters in different places (a space and a no-break space) is read as the shortest and lowest.
void note(GlyphTexts& texts, std::uint32_t glyph, std::string_view text) {
  std::string& known = texts[glyph];
  if (text.empty()) return;
  if (known.empty() || text.size() < known.size() || (text.size() == known.size() && text < known))
    known = text;
}

void noteRun(GlyphTexts& texts, const typeset::TextRun& run, unsigned glyphsInFace) {
  for (std::size_t i = 0; i < run.glyphs.size(); ++i) {
    const typeset::Glyph& glyph = run.glyphs[i];
    if (glyph.id >= glyphsInFace) throw std::logic_error("internal error: unknown glyph in a run");
    std::size_t end = run.text.size();
    for (std::size_t next = i + 1; next < run.glyphs.size() && end == run.text.size(); ++next)
      if (run.glyphs[next].cluster != glyph.cluster) end = run.glyphs[next].cluster;
    if (glyph.cluster > end) throw std::logic_error("internal error: the letters of a run are out of order");
    const bool isFirst = i == 0 || run.glyphs[i - 1].cluster != glyph.cluster;
    const auto text = std::string_view(run.text).substr(glyph.cluster, end - glyph.cluster);
    note(texts, glyph.id, isFirst ? text : std::string_view{});
  }
}

std::vector<GlyphTexts> usedGlyphs(const typeset::Document& document, const WordEnds& ends) {
  std::vector<GlyphTexts> used(document.faces.size());
  for (const typeset::Page& page : document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* run = std::get_if<typeset::TextRun>(&item.what)) {
        if (run->face >= document.faces.size() || !document.faces[run->face])
          throw std::logic_error("internal error: unknown face in a run");
        const FontFace& face = *document.faces[run->face];
        noteRun(used[run->face], *run, hb_face_get_glyph_count(face.hbFace()));
        if (ends.isAfter(*run))
          if (const auto space = spaceOf(face)) note(used[run->face], *space, " ");
      }
  return used;
}

std::string hex(std::uint16_t id) {
  constexpr char digits[] = "0123456789ABCDEF";
  return {'<', digits[id >> 12], digits[id >> 8 & 15], digits[id >> 4 & 15], digits[id & 15], '>'};
}

std::string toUnicode(const Subset& cut, const GlyphTexts& used) {
  std::vector<std::string> lines;
  for (const auto& [glyph, text] : used)  // a glyph without letters of its own reads as a zero-width space
    lines.push_back(hex(cut.ids[glyph]) + " <" + utf16(text.empty() ? "\u200B" : text) + ">\n");
  std::sort(lines.begin(), lines.end());
  std::string out =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
      "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"
      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
  constexpr std::size_t most = 100;  // in one block
  for (std::size_t i = 0; i < lines.size(); i += most) {
    const std::size_t end = std::min(lines.size(), i + most);
    out += std::to_string(end - i) + " beginbfchar\n";
    for (std::size_t k = i; k < end; ++k) out += lines[k];
    out += "endbfchar\n";
  }
  return out + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

/// Six letters that change with the glyphs: ISO 32000-1:2008, 9.6.4.
std::string subsetName(const FontFace& face, const GlyphTexts& used) {
  Digest digest;
  digest.add(face.postscriptName());
  for (const auto& [glyph, text] : used) digest.add(std::to_string(glyph));
  std::string name;
  std::uint64_t rest = digest.value()[0];
  for (int i = 0; i < 6; ++i, rest /= 26) name += static_cast<char>('A' + rest % 26);
  return name + "+" + face.postscriptName();
}

std::int32_t perMille(const FontFace& face, std::int64_t units) {
  return static_cast<std::int32_t>(base::mulDiv(units, 1000, face.metrics().unitsPerEm, base::Round::HalfUp));
}

Object addDescriptor(File& file, const FontFace& face, const Subset& cut, const std::string& name) {
  const typeset::FaceMetrics& m = face.metrics();
  const auto entry = [&](const char* key, int units) {
    return std::string("/") + key + " " + std::to_string(perMille(face, units)) + "\n";
  };
  std::string present((cut.glyphs + 7) / 8, '\0');  // CIDSet: one bit a glyph
  for (unsigned i = 0; i < cut.glyphs; ++i)
    present[i / 8] = static_cast<char>(present[i / 8] | 0x80 >> i % 8);
  const Object cidSet = file.addStream("", present);
  const Object program = file.addStream(
      face.isCff() ? "/Subtype /CIDFontType0C\n" : "/Length1 " + std::to_string(cut.program.size()) + "\n",
      cut.program);
  std::string box;
  for (const int units : m.box) box += std::to_string(perMille(face, units)) + " ";
  const int flags = 4 | (m.italicAngle != 0 ? 64 : 0);  // symbolic: letters beyond the standard Latin set
  const int stem = 50 + m.weight * m.weight / 4225;     // no table holds it; 87 at 400 and 165 at 700
  return file.addDictionary(
      "/Type /FontDescriptor\n/FontName /" + name + "\n/Flags " + std::to_string(flags) + "\n/FontBBox [" +
      box + "]\n/ItalicAngle " + std::to_string(m.italicAngle) + "\n" + entry("Ascent", m.ascent) +
      entry("Descent", m.descent) + entry("CapHeight", m.capHeight) + entry("XHeight", m.xHeight) +
      "/StemV " + std::to_string(stem) + "\n/CIDSet " + reference(cidSet) +
      (face.isCff() ? "\n/FontFile3 " : "\n/FontFile2 ") + reference(program) + "\n");
}

EmbeddedFont embed(File& file, const FontFace& face, const GlyphTexts& used) {
  const Subset cut = subset(face, used);
  EmbeddedFont font;
  font.unitsPerEm = face.metrics().unitsPerEm;
  font.advance.resize(cut.glyphs);
  for (const auto& [glyph, text] : used)
    font.advance.at(cut.ids[glyph]) = perMille(face, hb_font_get_glyph_h_advance(face.hbFont(), glyph));
  std::string widths;
  for (const std::int32_t advance : font.advance) widths += std::to_string(advance) + " ";

  const std::string name = subsetName(face, used);
  const Object descriptor = addDescriptor(file, face, cut, name);
  const Object descendant = file.addDictionary(
      std::string("/Type /Font\n/Subtype /") + (face.isCff() ? "CIDFontType0" : "CIDFontType2") +
      "\n/BaseFont /" + name + "\n/CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>>\n" +
      (face.isCff() ? "" : "/CIDToGIDMap /Identity\n") + "/DW 0\n/W [0 [" + widths + "]]\n/FontDescriptor " +
      reference(descriptor) + "\n");
  const Object map = file.addStream("", toUnicode(cut, used));
  font.object = file.addDictionary("/Type /Font\n/Subtype /Type0\n/BaseFont /" + name +
                                   "\n/Encoding /Identity-H\n/DescendantFonts [" + reference(descendant) +
                                   "]\n/ToUnicode " + reference(map) + "\n");
  font.ids = cut.ids;
  if (const auto space = spaceOf(face); space && used.contains(*space)) font.space = cut.ids[*space];
  return font;
}

}  // namespace

std::vector<EmbeddedFont> embedFonts(File& file, const typeset::Document& document, const WordEnds& ends) {
  const std::vector<GlyphTexts> used = usedGlyphs(document, ends);
  std::vector<EmbeddedFont> fonts(document.faces.size());
  for (std::size_t i = 0; i < fonts.size(); ++i)
    if (!used[i].empty()) fonts[i] = embed(file, *document.faces[i], used[i]);
  return fonts;
}

}  // namespace pdf
