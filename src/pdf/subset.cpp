// Cuts a face down to the used glyphs. The tables that only typesetting needs are left out.
#include "pdf/subset.h"

#include "pdf/write.h"

#include <hb-subset.h>
#include <hb.h>

#include <memory>
#include <stdexcept>

namespace pdf {
namespace {

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

}  // namespace

Subset subset(const typeset::FontFace& face, const GlyphTexts& used) {
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

  Subset result;
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

}  // namespace pdf
