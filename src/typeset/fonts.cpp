// A theme's font files become faces; a span of text becomes runs of glyphs.
#include "typeset/fonts.h"

#include "base/fixed.h"
#include "base/letters.h"

#include <hb.h>

#include <algorithm>
#include <limits>
#include <memory>
#include <stdexcept>

namespace typeset {
namespace {

constexpr char32_t missingSign = U'\u25A1';

/// A letter as it is asked of the faces.
struct Letter {
  char32_t letter;
  std::uint32_t at;  // byte in the run's text
};

/// What stays together in one face: a letter with the marks that hang on it.
struct Cluster {
  std::size_t begin, end;  // bytes in the span's text
  std::size_t face;
};

/// Break and joining hints that draw nothing. Taken out of the text as well, so that nobody copies them out;
/// whoever breaks a word at U+00AD sets the hyphen.
bool isHint(char32_t c) { return c == 0xAD || c == 0x200B || c == 0x2060 || c == 0xFEFF; }

bool isJoiner(char32_t c) { return c == 0x200C || c == 0x200D; }

/// Draws nothing itself, but shapes its neighbours.
bool isInvisible(char32_t c) {
  return isHint(c) || isJoiner(c) || (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xE0100 && c <= 0xE01EF);
}

bool continuesCluster(char32_t c) {
  if (isInvisible(c) || (c >= 0x1F3FB && c <= 0x1F3FF)) return true;  // the last: skin tones
  const auto category = hb_unicode_general_category(hb_unicode_funcs_get_default(), c);
  return category == HB_UNICODE_GENERAL_CATEGORY_NON_SPACING_MARK ||
         category == HB_UNICODE_GENERAL_CATEGORY_ENCLOSING_MARK ||
         category == HB_UNICODE_GENERAL_CATEGORY_SPACING_MARK;
}

/// The letter a face draws for this one. Text faces often lack the spaces and the hyphen that do not break.
char32_t drawnAs(const FontFace& face, char32_t c) {
  if (c < 0x20) return U' ';
  if (c < 0x7F || face.has(c)) return c;
  if (c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F) return U' ';
  if (c == 0x2010 || c == 0x2011) return U'-';
  return c;
}

bool draws(const FontFace& face, char32_t c) { return isInvisible(c) || face.has(drawnAs(face, c)); }

/// The widest a space may be, in font units: faces draw the narrow ones as wide as the space between words,
/// or not at all.
std::int32_t widestSpace(const FontFace& face, char32_t c) {
  const int percent = c == 0x202F || c == 0x2009 ? 60 : c == 0x200A ? 30 : 0;
  hb_codepoint_t space = 0;
  if (percent == 0 || !hb_font_get_nominal_glyph(face.hbFont(), U' ', &space))
    return std::numeric_limits<std::int32_t>::max();
  return hb_font_get_glyph_h_advance(face.hbFont(), space) * percent / 100;
}

class Shaper {
 public:
  Shaper(const Fonts& fonts, const StyledText& span) : fonts_(fonts), span_(span), text_(span.text) {}

  ShapedWords run() {
    const auto role = fonts_.byRole.find(span_.face);
    if (role == fonts_.byRole.end()) throw std::logic_error("internal error: the theme has no such face");
    order_.push_back(role->second);
    order_.insert(order_.end(), fonts_.fallbacks.begin(), fonts_.fallbacks.end());

    std::size_t begin = 0, end = 0, face = order_.front();
    for (std::size_t at = 0; at < text_.size();) {
      const Cluster cluster = clusterAt(at);
      if (cluster.face != face) {
        addRun(begin, end, face);
        begin = cluster.begin;
        face = cluster.face;
      }
      end = at = cluster.end;
    }
    addRun(begin, end, face);
    return std::move(words_);
  }

 private:
  Cluster clusterAt(std::size_t begin) const {
    std::size_t end = begin;
    char32_t last = base::nextLetter(text_, end);
    while (end < text_.size()) {
      std::size_t next = end;
      const char32_t c = base::nextLetter(text_, next);
      if (!continuesCluster(c) && last != 0x200D) break;
      last = c;
      end = next;
    }
    return {begin, end, faceFor(begin, end)};
  }

  std::size_t faceFor(std::size_t begin, std::size_t end) const {
    const auto drawsAll = [&](const FontFace& face) {
      for (std::size_t at = begin; at < end;)
        if (!draws(face, base::nextLetter(text_, at))) return false;
      return true;
    };
    for (const std::size_t face : order_)
      if (drawsAll(*fonts_.faces[face])) return face;
    std::size_t at = begin;
    const char32_t base = base::nextLetter(text_, at);
    for (const char32_t wanted : {base, missingSign})
      for (const std::size_t face : order_)
        if (draws(*fonts_.faces[face], wanted)) return face;
    return order_.front();
  }

  void addRun(std::size_t begin, std::size_t end, std::size_t face) {
    ShapedWords::Run run;
    run.face = face;
    std::vector<Letter> letters;
    for (std::size_t at = begin; at < end;) {
      const std::size_t from = at;
      const char32_t letter = base::nextLetter(text_, at);
      if (isHint(letter)) continue;
      letters.push_back({letter, static_cast<std::uint32_t>(run.text.size())});
      run.text += text_.substr(from, at - from);
    }
    if (letters.empty()) return;
    shapeGlyphs(run, letters);
    words_.runs.push_back(std::move(run));
  }

  void shapeGlyphs(ShapedWords::Run& run, const std::vector<Letter>& letters) {
    const FontFace& face = *fonts_.faces[run.face];
    const std::unique_ptr<hb_buffer_t, void (*)(hb_buffer_t*)> owner(hb_buffer_create(), hb_buffer_destroy);
    hb_buffer_t* buffer = owner.get();
    hb_script_t script = HB_SCRIPT_LATIN;
    for (const Letter& l : letters) {
      char32_t drawn = drawnAs(face, l.letter);
      if (!draws(face, l.letter)) {
        words_.missing.push_back(l.letter);
        drawn = face.has(missingSign) ? missingSign : l.letter;
      }
      const hb_script_t own = hb_unicode_script(hb_unicode_funcs_get_default(), drawn);
      if (script == HB_SCRIPT_LATIN && own != HB_SCRIPT_COMMON && own != HB_SCRIPT_INHERITED) script = own;
      hb_buffer_add(buffer, drawn, l.at);
    }
    hb_buffer_set_content_type(buffer, HB_BUFFER_CONTENT_TYPE_UNICODE);
    // HarfBuzz would take these from the letters and the surroundings of the process.
    hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer, script);
    hb_buffer_set_language(buffer, hb_language_from_string(fonts_.language.c_str(), -1));
    hb_buffer_set_cluster_level(buffer, HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
    hb_buffer_set_flags(buffer, HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
    const auto feature = [](hb_tag_t tag, bool isOn) {
      return hb_feature_t{tag, isOn ? 1u : 0u, HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END};
    };
    // Joined letters (fi) read well and are copied out whole; spaced letters must not join. Contextual forms
    // stay off: what is typed '->' is not an arrow.
    const hb_feature_t features[] = {feature(HB_TAG('k', 'e', 'r', 'n'), true),
                                     feature(HB_TAG('l', 'n', 'u', 'm'), true),
                                     feature(HB_TAG('t', 'n', 'u', 'm'), span_.tabular),
                                     feature(HB_TAG('l', 'i', 'g', 'a'), span_.tracking == Dim{}),
                                     feature(HB_TAG('c', 'l', 'i', 'g'), false),
                                     feature(HB_TAG('c', 'a', 'l', 't'), false)};
    hb_shape(face.hbFont(), buffer, features, std::size(features));

    unsigned count = 0;
    const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
    const hb_glyph_position_t* places = hb_buffer_get_glyph_positions(buffer, &count);
    const unsigned glyphsInFace = hb_face_get_glyph_count(face.hbFace());
    run.glyphs.reserve(count);
    for (unsigned i = 0; i < count; ++i) {
      // A damaged font's substitutions can name glyphs that it lacks.
      const std::uint32_t id = infos[i].codepoint < glyphsInFace ? infos[i].codepoint : 0;
      std::size_t at = infos[i].cluster;
      const std::int32_t advance =
          std::min(places[i].x_advance, widestSpace(face, base::nextLetter(run.text, at)));
      run.glyphs.push_back({id, advance, places[i].x_offset, places[i].y_offset, infos[i].cluster});
      run.units += advance;
    }
  }

  const Fonts& fonts_;
  const StyledText& span_;
  const std::string_view text_;
  std::vector<std::size_t> order_;  // faces to try
  ShapedWords words_;
};

std::shared_ptr<const ShapedWords> shapedWordsOf(const Fonts& fonts, const StyledText& span) {
  std::string key = {static_cast<char>('a' + static_cast<int>(span.face)), span.tabular ? 't' : 'p',
                     span.tracking == Dim{} ? 'j' : 's'};  // spaced letters do not join
  key += fonts.language + "\n" + span.text;
  return fonts.shapedWords->getOrMake(key, [&] { return Shaper(fonts, span).run(); });
}

Dim widthOf(const ShapedWords::Run& run, const Fonts& fonts, const StyledText& span) {
  const int em = fonts.faces[run.face]->metrics().unitsPerEm;
  return Dim{base::mulDiv(run.units, span.size.raw, em, base::Round::HalfUp)} +
         span.tracking * static_cast<std::int64_t>(run.glyphs.size());
}

}  // namespace

Fonts readFonts(const model::Theme& theme) {
  Fonts fonts;
  std::map<std::string, std::size_t> known;
  const auto add = [&](const std::string& file) {
    const auto [entry, isNew] = known.emplace(file, fonts.faces.size());
    if (isNew) fonts.faces.push_back(FontFace::read(file));
    return entry->second;
  };
  for (const auto& [role, file] : theme.faces) fonts.byRole[role] = add(file);
  for (const std::string& file : theme.fallbackFaces) fonts.fallbacks.push_back(add(file));
  return fonts;
}

Shaped shape(const Fonts& fonts, const StyledText& span, const std::function<void(char32_t)>& missing) {
  const auto words = shapedWordsOf(fonts, span);
  if (missing) std::for_each(words->missing.begin(), words->missing.end(), missing);
  Shaped shaped;
  shaped.runs.reserve(words->runs.size());
  for (const ShapedWords::Run& set : words->runs) {
    TextRun run;
    run.baseline.x = shaped.width;
    run.face = set.face;
    run.size = span.size;
    run.colour = span.colour;
    run.text = set.text;
    run.glyphs = set.glyphs;
    run.width = widthOf(set, fonts, span);
    run.tracking = span.tracking;
    shaped.width += run.width;
    shaped.runs.push_back(std::move(run));
  }
  return shaped;
}

Dim width(const Fonts& fonts, const StyledText& span) {
  Dim sum;
  const auto words = shapedWordsOf(fonts, span);
  for (const ShapedWords::Run& run : words->runs) sum += widthOf(run, fonts, span);
  return sum;
}

StyledText spanIn(const model::Theme& theme, const std::string& style, std::string text) {
  const auto found = theme.styles.find(style);
  if (found == theme.styles.end()) throw std::logic_error("internal error: no style '" + style + "'");
  const model::TextStyle& s = found->second;
  const auto colour = theme.colours.find(s.colour);
  if (colour == theme.colours.end()) throw std::logic_error("internal error: no colour '" + s.colour + "'");
  return {std::move(text), s.face, Dim::milli(s.size), Dim::milli(s.tracking), colour->second, s.tabular};
}

}  // namespace typeset
