// Composite fonts with Identity-H codes: ISO 32000-1:2008, 9.7; ToUnicode maps: 9.10.3.
#include "pdf/fonts/font_subset.h"

#include "base/cache.h"
#include "base/fixed.h"
#include "pdf/fonts/unusable_font.h"
#include "pdf/objects/deflate.h"
#include "pdf/objects/digest.h"
#include "pdf/objects/notation.h"

#include <hb-subset.h>
#include <hb.h>

#include <algorithm>
#include <new>

namespace pdf {
namespace {

using typeset::FontFace;

/// A face cut down to the used glyphs, through HarfBuzz, without the tables that only typesetting needs.
struct CutFace {
  std::string program;             // TrueType tables, or the bare CFF table
  std::vector<std::uint16_t> ids;  // new glyph by old glyph; 0 where it was left out
  unsigned glyphs = 0;             // in the program, those that others are composed of included
};

template <class T>
using Owner = std::unique_ptr<T, void (*)(T*)>;

std::string bytesOf(hb_blob_t* blob) {
  unsigned length = 0;
  const char* data = hb_blob_get_data(blob, &length);
  std::string bytes(data, length);
  hb_blob_destroy(blob);
  return bytes;
}

void dropTables(hb_subset_input_t* input, bool isCff) {
  hb_set_t* drop = hb_subset_input_set(input, HB_SUBSET_SETS_DROP_TABLE_TAG);
  for (const char* tag : {"GSUB", "GPOS", "GDEF", "BASE", "kern", "name", "post", "OS/2", "gasp", "DSIG",
                          "VDMX", "hdmx", "LTSH", "FFTM", "STAT", "meta", "vhea", "vmtx",
                          // A variable face is embedded as its default instance.
                          "fvar", "gvar", "avar", "HVAR", "VVAR", "MVAR"})
    hb_set_add(drop, hb_tag_from_string(tag, 4));
  if (!isCff) hb_set_add(drop, hb_tag_from_string("cmap", 4));  // glyphs are named by number
}

/// Throws UnusableFont when HarfBuzz cannot cut the face.
CutFace cutFace(const typeset::FontFace& face, const GlyphTexts& used) {
  const auto failure = [&] { return UnusableFont("cannot subset font '" + face.postscriptName() + "'"); };
  const Owner<hb_subset_input_t> input(hb_subset_input_create_or_fail(), hb_subset_input_destroy);
  if (!input) throw std::bad_alloc();
  for (const auto& [glyph, text] : used) hb_set_add(hb_subset_input_glyph_set(input.get()), glyph);
  hb_set_clear(hb_subset_input_set(input.get(), HB_SUBSET_SETS_LAYOUT_FEATURE_TAG));
  dropTables(input.get(), face.isCff());
  hb_subset_input_set_flags(input.get(), HB_SUBSET_FLAGS_NOTDEF_OUTLINE | HB_SUBSET_FLAGS_NO_HINTING);

  const Owner<hb_subset_plan_t> plan(hb_subset_plan_create_or_fail(face.hbFace(), input.get()),
                                     hb_subset_plan_destroy);
  if (!plan) throw failure();
  const Owner<hb_face_t> cut(hb_subset_plan_execute_or_fail(plan.get()), hb_face_destroy);
  if (!cut) throw failure();

  CutFace result;
  result.glyphs = hb_face_get_glyph_count(cut.get());
  result.ids.resize(hb_face_get_glyph_count(face.hbFace()));
  const hb_map_t* renamed = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  for (const auto& [glyph, text] : used) {
    const hb_codepoint_t id = hb_map_get(renamed, glyph);
    if (id == HB_MAP_VALUE_INVALID || id > 0xFFFF) throw failure();
    result.ids[glyph] = static_cast<std::uint16_t>(id);
  }
  result.program = bytesOf(face.isCff() ? hb_face_reference_table(cut.get(), HB_TAG('C', 'F', 'F', ' '))
                                        : hb_face_reference_blob(cut.get()));
  return result;
}

std::string hex(std::uint16_t id) {
  constexpr char digits[] = "0123456789ABCDEF";
  return {'<', digits[id >> 12], digits[id >> 8 & 15], digits[id >> 4 & 15], digits[id & 15], '>'};
}

std::string toUnicode(const CutFace& cut, const GlyphTexts& used) {
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

FontSubset makeSubset(const GlyphSet& set) {
  const FontFace& face = *set.face;
  const GlyphTexts glyphs = glyphsOf(set);
  const CutFace cut = cutFace(face, glyphs);
  FontSubset font;
  font.name = subsetName(face, glyphs);
  font.isCff = face.isCff();
  font.unitsPerEm = face.metrics().unitsPerEm;
  font.ids = cut.ids;
  font.advance.resize(cut.glyphs);
  for (const auto& [glyph, text] : glyphs)
    font.advance.at(cut.ids[glyph]) = perMille(face, hb_font_get_glyph_h_advance(face.hbFont(), glyph));
  if (const auto space = face.glyphOf(U' '); space && glyphs.contains(*space)) font.space = cut.ids[*space];
  for (const std::int32_t advance : font.advance) font.widths += std::to_string(advance) + " ";
  font.descriptor = descriptor(face, font.name);
  font.programSize = cut.program.size();
  font.program = deflated(cut.program, Effort::Thorough);
  font.cidSet = deflated(cidSet(cut.glyphs));
  font.toUnicode = deflated(toUnicode(cut, glyphs), Effort::Thorough);
  return font;
}

struct Subsets {
  base::Cache<std::pair<unsigned, GlyphTexts>, FontSubset> byGlyphs{500};
};

}  // namespace

std::shared_ptr<const FontSubset> fontSubset(const GlyphSet& set) {
  return set.face->kept<Subsets>().byGlyphs.getOrMake({set.groups, set.others},
                                                      [&] { return makeSubset(set); });
}

}  // namespace pdf
