// A font file in, a checked and immutable HarfBuzz face out.
#include "typeset/face.h"

#include "base/letters.h"

#include <hb-ot.h>
#include <hb.h>

#include <algorithm>
#include <stdexcept>

namespace typeset {
namespace {

using Bytes = std::basic_string_view<unsigned char>;

unsigned number(Bytes bytes, std::size_t at, std::size_t length) {
  unsigned value = 0;
  for (std::size_t i = at; i < at + length; ++i) value = value << 8 | bytes[i];
  return value;
}

int signedNumber(Bytes bytes, std::size_t at) { return static_cast<std::int16_t>(number(bytes, at, 2)); }

/// HarfBuzz reads what it can of a damaged font and stays silent, so the table directory is checked here:
/// OpenType 1.9, "Organization of an OpenType Font".
const char* faultOf(Bytes bytes) {
  if (bytes.size() < 12) return "not a font";
  const unsigned version = number(bytes, 0, 4);
  if (version == HB_TAG('t', 't', 'c', 'f')) return "a font collection; name a file with one font";
  if (version != 0x00010000 && version != HB_TAG('O', 'T', 'T', 'O') && version != HB_TAG('t', 'r', 'u', 'e'))
    return "not a TrueType or OpenType font";
  const std::size_t tables = number(bytes, 4, 2);
  if (bytes.size() < 12 + 16 * tables) return "damaged: cut off";
  std::vector<unsigned> found;
  for (std::size_t at = 12; at < 12 + 16 * tables; at += 16) {
    const std::size_t offset = number(bytes, at + 8, 4), length = number(bytes, at + 12, 4);
    if (offset + length > bytes.size()) return "damaged: cut off";
    found.push_back(number(bytes, at, 4));
  }
  const auto has = [&](unsigned tag) { return std::find(found.begin(), found.end(), tag) != found.end(); };
  for (const unsigned tag :
       {HB_TAG('h', 'e', 'a', 'd'), HB_TAG('h', 'h', 'e', 'a'), HB_TAG('h', 'm', 't', 'x'),
        HB_TAG('m', 'a', 'x', 'p'), HB_TAG('c', 'm', 'a', 'p')})
    if (!has(tag)) return "damaged: a table is missing";
  const bool hasOutlines =
      (has(HB_TAG('g', 'l', 'y', 'f')) && has(HB_TAG('l', 'o', 'c', 'a'))) || has(HB_TAG('C', 'F', 'F', ' '));
  return hasOutlines ? nullptr : "without outlines";
}

Bytes bytesOf(hb_blob_t* blob) {
  unsigned length = 0;
  const char* data = hb_blob_get_data(blob, &length);
  return {reinterpret_cast<const unsigned char*>(data), length};
}

FaceMetrics measure(hb_face_t* face, hb_font_t* font) {
  FaceMetrics m;
  m.unitsPerEm = static_cast<int>(hb_face_get_upem(face));
  hb_font_extents_t lines{};
  hb_font_get_h_extents(font, &lines);
  m.ascent = lines.ascender;
  m.descent = lines.descender;
  const auto metric = [&](hb_ot_metrics_tag_t tag) {
    hb_position_t value = 0;
    hb_ot_metrics_get_position_with_fallback(font, tag, &value);
    return value;
  };
  m.capHeight = metric(HB_OT_METRICS_TAG_CAP_HEIGHT);
  m.xHeight = metric(HB_OT_METRICS_TAG_X_HEIGHT);
  const auto table = [&](hb_tag_t tag, std::size_t least, auto read) {
    hb_blob_t* blob = hb_face_reference_table(face, tag);
    if (const Bytes bytes = bytesOf(blob); bytes.size() >= least) read(bytes);
    hb_blob_destroy(blob);
  };
  table(HB_TAG('h', 'e', 'a', 'd'), 54, [&](Bytes head) {
    for (std::size_t i = 0; i < 4; ++i) m.box[i] = signedNumber(head, 36 + 2 * i);
  });
  table(HB_TAG('p', 'o', 's', 't'), 8, [&](Bytes post) { m.italicAngle = signedNumber(post, 4); });
  table(HB_TAG('O', 'S', '/', '2'), 6, [&](Bytes os2) { m.weight = signedNumber(os2, 4); });
  return m;
}

/// A PDF name may hold only these without escapes; PostScript names are made of them anyway.
std::string postscriptNameOf(hb_face_t* face) {
  char text[64];
  unsigned length = sizeof text;
  hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &length, text);
  std::string name;
  for (const char c : std::string_view(text, length))
    if (base::isLetter(c) || base::isDigit(c) || c == '-') name += c;
  return name.empty() ? "Font" : name;
}

}  // namespace

std::shared_ptr<const FontFace> FontFace::read(const std::string& file) {
  const auto refuse = [&](const char* fault) {
    return std::runtime_error("cannot use font '" + file + "': " + fault);
  };
  hb_blob_t* blob = hb_blob_create_from_file_or_fail(file.c_str());
  if (!blob) throw std::runtime_error("cannot read font '" + file + "'");
  const char* fault = faultOf(bytesOf(blob));
  const std::shared_ptr<FontFace> made(new FontFace);
  if (!fault) {
    made->face_ = hb_face_create(blob, 0);
    made->font_ = hb_font_create(made->face_);
  }
  hb_blob_destroy(blob);
  if (fault) throw refuse(fault);

  const int unitsPerEm = static_cast<int>(hb_face_get_upem(made->face_));
  hb_font_set_scale(made->font_, unitsPerEm, unitsPerEm);
  hb_face_make_immutable(made->face_);
  hb_font_make_immutable(made->font_);
  if (!made->has(U'A')) throw refuse("damaged or without the letter A");
  made->metrics_ = measure(made->face_, made->font_);
  made->name_ = postscriptNameOf(made->face_);
  hb_blob_t* cff = hb_face_reference_table(made->face_, HB_TAG('C', 'F', 'F', ' '));
  made->isCff_ = hb_blob_get_length(cff) > 0;
  hb_blob_destroy(cff);
  return made;
}

FontFace::~FontFace() {
  hb_font_destroy(font_);
  hb_face_destroy(face_);
}

bool FontFace::has(char32_t letter) const { return glyphOf(letter).has_value(); }

std::optional<std::uint32_t> FontFace::glyphOf(char32_t letter) const {
  hb_codepoint_t glyph = 0;
  // A damaged character map can point beyond the last glyph.
  if (!hb_font_get_nominal_glyph(font_, letter, &glyph) || glyph == 0 ||
      glyph >= hb_face_get_glyph_count(face_))
    return {};
  return glyph;
}

}  // namespace typeset
