// Composite fonts with Identity-H codes: ISO 32000-1:2008, 9.7; ToUnicode maps: 9.10.3.
#include "pdf/cut_font.h"

#include "base/cache.h"
#include "base/fixed.h"
#include "pdf/file.h"
#include "pdf/notation.h"
#include "pdf/subset.h"

#include <hb.h>

#include <algorithm>

namespace pdf {
namespace {

using typeset::FontFace;

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

/// One bit for each glyph in the file.
std::string cidSet(unsigned glyphs) {
  std::string present((glyphs + 7) / 8, '\0');
  for (unsigned i = 0; i < glyphs; ++i) present[i / 8] = static_cast<char>(present[i / 8] | 0x80 >> i % 8);
  return present;
}

std::string descriptor(const FontFace& face, const std::string& name) {
  const typeset::FaceMetrics& m = face.metrics();
  const auto entry = [&](const char* key, int units) {
    return std::string("/") + key + " " + std::to_string(perMille(face, units)) + "\n";
  };
  std::string box;
  for (const int units : m.box) box += std::to_string(perMille(face, units)) + " ";
  const int flags = 4 | (m.italicAngle != 0 ? 64 : 0);  // symbolic: letters beyond the standard Latin set
  const int stem = 50 + m.weight * m.weight / 4225;     // no table holds it; 87 at 400 and 165 at 700
  return "/Type /FontDescriptor\n/FontName /" + name + "\n/Flags " + std::to_string(flags) + "\n/FontBBox [" +
         box + "]\n/ItalicAngle " + std::to_string(m.italicAngle) + "\n" + entry("Ascent", m.ascent) +
         entry("Descent", m.descent) + entry("CapHeight", m.capHeight) + entry("XHeight", m.xHeight) +
         "/StemV " + std::to_string(stem) + "\n";
}

CutFont makeCut(const GlyphSet& set) {
  const FontFace& face = *set.face;
  const GlyphTexts glyphs = glyphsOf(set);
  const Subset cut = subset(face, glyphs);
  CutFont font;
  font.name = subsetName(face, glyphs);
  font.isCff = face.isCff();
  font.unitsPerEm = face.metrics().unitsPerEm;
  font.ids = cut.ids;
  font.advance.resize(cut.glyphs);
  for (const auto& [glyph, text] : glyphs)
    font.advance.at(cut.ids[glyph]) = perMille(face, hb_font_get_glyph_h_advance(face.hbFont(), glyph));
  if (const auto space = spaceOf(face); space && glyphs.contains(*space)) font.space = cut.ids[*space];
  for (const std::int32_t advance : font.advance) font.widths += std::to_string(advance) + " ";
  font.descriptor = descriptor(face, font.name);
  font.programSize = cut.program.size();
  font.program = deflated(cut.program, Effort::Thorough);
  font.cidSet = deflated(cidSet(cut.glyphs));
  font.toUnicode = deflated(toUnicode(cut, glyphs), Effort::Thorough);
  return font;
}

}  // namespace

std::shared_ptr<const CutFont> cutFont(const GlyphSet& set) {
  static base::Cache<GlyphSet, CutFont> shelf(500);
  return shelf.getOrMake(set, [&] { return makeCut(set); });
}

}  // namespace pdf
