#include "pdf/repertoire.h"

#include "base/cache.h"
#include "base/utf8.h"
#include "typeset/fonts.h"

#include <array>
#include <optional>
#include <unordered_map>

namespace pdf {
namespace {

constexpr const char* groups[] = {"abcdefghijklmnopqrstuvwxyz", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "0123456789",
                                  " .,:;-\u2013()/\u2019"};

/// Twice: figures of one width can be glyphs of their own.
constexpr unsigned groupCount = 2 * std::size(groups);

struct Letter {
  unsigned group = 0;
  std::string text;
};
struct Repertoire {
  std::unordered_map<std::uint32_t, Letter> letters;  // by glyph
  std::array<int, groupCount> sizes{};                // of the groups
};

Repertoire readRepertoire(const std::shared_ptr<const typeset::FontFace>& face) {
  typeset::Fonts fonts;
  fonts.faces = {face};
  fonts.byRole[model::Face::Text] = 0;
  Repertoire repertoire;
  for (unsigned i = 0; i < groupCount; ++i) {
    const bool isTabular = i % 2 == 1;
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
  static base::Cache<std::shared_ptr<const typeset::FontFace>, Repertoire> shelf(100);
  return shelf.getOrMake(face, [&] { return readRepertoire(face); });
}

}  // namespace

GlyphSet glyphSet(const std::shared_ptr<const typeset::FontFace>& face, const UsedGlyphs& used) {
  const auto repertoire = repertoireOf(face);
  struct Found {
    std::uint32_t glyph;
    std::optional<unsigned> group;
  };
  std::vector<Found> found;
  found.reserve(used.glyphs.size());
  std::array<int, groupCount> counts{};
  for (const std::uint32_t glyph : used.glyphs) {
    const auto known = repertoire->letters.find(glyph);
    // A glyph that says something else here (a space that does not break) is none of the group's.
    const bool isKnown = known != repertoire->letters.end() && known->second.text == used.texts[glyph];
    found.push_back({glyph, isKnown ? std::optional(known->second.group) : std::nullopt});
    if (isKnown) ++counts[known->second.group];
  }
  GlyphSet set{face, 0, {}};
  for (unsigned group = 0; group < groupCount; ++group)
    if (counts[group] > 0 && 3 * counts[group] >= 2 * repertoire->sizes[group]) set.groups |= 1u << group;
  for (const auto& [glyph, group] : found)
    if (!group || !(set.groups >> *group & 1)) set.others.emplace(glyph, used.texts[glyph]);
  return set;
}

GlyphTexts glyphsOf(const GlyphSet& set) {
  GlyphTexts all = set.others;
  for (const auto& [glyph, letter] : repertoireOf(set.face)->letters)
    if (set.groups >> letter.group & 1) all.emplace(glyph, letter.text);
  return all;
}

}  // namespace pdf
