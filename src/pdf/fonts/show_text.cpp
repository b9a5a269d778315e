// Text-showing operators: ISO 32000-1:2008, 9.4.3. Places are counted in thousandths of an em from the run's
// beginning.
#include "pdf/fonts/show_text.h"

#include "base/fixed.h"
#include "pdf/objects/notation.h"

#include <cstdlib>

namespace pdf {

void addText(std::string& out, const typeset::TextRun& run, const FontSubset& font) {
  const auto perMille = [&](std::int64_t units) {
    return base::mulDiv(units, 1000, font.unitsPerEm, base::Round::HalfUp);
  };
  std::int64_t units = 0;  // where the next glyph should stand, tracking apart
  std::int64_t pen = 0;    // where the reader's pen is
  std::int32_t rise = 0;
  std::int64_t count = 0;
  const bool isTracked = run.tracking != typeset::Dim{};
  out += "[(";
  const auto addGlyph = [&](std::uint16_t id) {
    addEscaped(out, static_cast<unsigned char>(id >> 8));
    addEscaped(out, static_cast<unsigned char>(id & 0xFF));
  };
  for (const typeset::Glyph& glyph : run.glyphs) {
    if (glyph.dy != rise) {
      rise = glyph.dy;
      const typeset::Dim up = {base::mulDiv(rise, run.size.raw, font.unitsPerEm, base::Round::HalfUp)};
      out += ")] TJ " + number(up) + " Ts [(";
    }
    // One thousandth cannot be seen and would cost a number at every other glyph. Where the pen stands that
    // close, no exact place is needed: divisions are slow.
    const std::int64_t off = pen * font.unitsPerEm - (units + glyph.dx) * 1000;
    if (isTracked || 2 * std::llabs(off) >= 3 * std::int64_t{font.unitsPerEm}) {
      const std::int64_t tracked =
          base::mulDiv(run.tracking.raw * count, 1000, run.size.raw, base::Round::HalfUp);
      const std::int64_t wanted = perMille(units + glyph.dx) + tracked;
      if (const std::int64_t back = pen - wanted; std::llabs(back) >= 2) {
        out += ')';
        out += std::to_string(back) + '(';
        pen = wanted;
      }
    }
    const std::uint16_t id = font.ids[glyph.id];
    // To whoever searches or reads aloud an added hyphen is a soft one: ISO 32000-1:2008, 14.9.4.
    if (run.isDivided && &glyph == &run.glyphs.back()) out += ")] TJ /Span<</ActualText<FEFF00AD>>>BDC [(";
    addGlyph(id);
    pen += font.advance[id];
    units += glyph.advance;
    ++count;
  }
  if (run.endsWord && font.space != 0) addGlyph(font.space);
  out += run.isDivided ? ")] TJ EMC " : ")] TJ ";
  if (rise != 0) out += "0 Ts ";
}

}  // namespace pdf
