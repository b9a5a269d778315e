#include "pdf/repertoire.h"

#include "base/shelf.h"
#include "base/utf8.h"
#include "typeset/fonts.h"

#include <optional>

namespace pdf {
namespace {

constexpr const char* groups[] = {"abcdefghijklmnopqrstuvwxyz", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "0123456789",
                                  " .,:;-\u2013()/\u2019"};

struct Letter {
  unsigned group = 0;
  std::string text;
};
struct Repertoire {
  std::map<std::uint32_t, Letter> letters;  // by glyph
  std::map<unsigned, int> sizes;            // of the groups
};

Repertoire readRepertoire(const std::shared_ptr<const typeset::FontFace>& face) {
  typeset::Fonts fonts;
  fonts.faces = {face};
  fonts.byRole[model::Face::Text] = 0;
  Repertoire repertoire;
  for (unsigned i = 0; i < 2 * std::size(groups); ++i) {
    const bool isTabular = i % 2 == 1;  // figures of one width, where they are glyphs of their own
    typeset::Span span;
    span.text = groups[i / 2];
    span.size = typeset::Dim::pt(10);
    span.tabular = isTabular;
    for (const typeset::TextRun& run : typeset::shape(fonts, span).runs)
      for (std::size_t g = 0; g < run.glyphs.size(); ++g) {
        const std::size_t from = run.glyphs[g].cluster;
        const std::size_t to = g + 1 < run.glyphs.size() ? run.glyphs[g + 1].cluster : run.text.size();
        if (from >= to) continue;
        const std::string text = run.text.substr(from, to - from);
        std::size_t at = 0;
        if (face->has(base::nextLetter(text, at)))  // else a box stands for it
          repertoire.sizes[i] += repertoire.letters.emplace(run.glyphs[g].id, Letter{i, text}).second;
      }
  }
  return repertoire;
}

std::shared_ptr<const Repertoire> repertoireOf(const std::shared_ptr<const typeset::FontFace>& face) {
  static base::Shelf<std::shared_ptr<const typeset::FontFace>, Repertoire> shelf(100);
  return shelf.take(face, [&] { return readRepertoire(face); });
}

}  // namespace

GlyphSet glyphSet(const std::shared_ptr<const typeset::FontFace>& face, const UsedGlyphs& used) {
  const auto repertoire = repertoireOf(face);
  const auto groupOf = [&](std::uint32_t glyph) -> std::optional<unsigned> {
    const auto known = repertoire->letters.find(glyph);
    // A glyph that says something else here (a space that does not break) is none of the group's.
    if (known == repertoire->letters.end() || known->second.text != used.texts[glyph]) return {};
    return known->second.group;
  };
  std::map<unsigned, int> counts;
  for (const std::uint32_t glyph : used.glyphs)
    if (const auto group = groupOf(glyph)) ++counts[*group];
  GlyphSet set{face, 0, {}};
  for (const auto& [group, count] : counts)
    if (3 * count >= 2 * repertoire->sizes.at(group)) set.groups |= 1u << group;
  for (const std::uint32_t glyph : used.glyphs)
    if (const auto group = groupOf(glyph); !group || !(set.groups >> *group & 1))
      set.others.emplace(glyph, used.texts[glyph]);
  return set;
}

GlyphTexts glyphsOf(const GlyphSet& set) {
  GlyphTexts all = set.others;
  for (const auto& [glyph, letter] : repertoireOf(set.face)->letters)
    if (set.groups >> letter.group & 1) all.emplace(glyph, letter.text);
  return all;
}

}  // namespace pdf
