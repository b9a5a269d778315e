#include "pdf/fonts/glyph_groups.h"

#include "base/cache.h"
#include "base/letters.h"
#include "typeset/fonts.h"

#include <array>
#include <optional>
#include <unordered_map>

namespace pdf {
namespace {

constexpr const char* alphabets[] = {"abcdefghijklmnopqrstuvwxyz", "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "0123456789",
                                     " .,:;-\u2013()/\u2019"};

/// Twice: figures of one width can be glyphs of their own.
constexpr unsigned groupCount = 2 * std::size(alphabets);

struct Letter {
  unsigned group = 0;
  std::string text;
};
struct GlyphGroups {
  std::unordered_map<std::uint32_t, Letter> letters;  // by glyph
  std::array<int, groupCount> sizes{};                // of the groups
};

GlyphGroups readGroups(const std::shared_ptr<const typeset::FontFace>& face) {
  typeset::Fonts fonts;
  fonts.faces = {face};
  fonts.byRole[model::Face::Text] = 0;
  GlyphGroups known;
  for (unsigned i = 0; i < groupCount; ++i) {
    const bool isTabular = i % 2 == 1;
    typeset::StyledText span;
    span.text = alphabets[i / 2];
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
          known.sizes[i] += known.letters.emplace(run.glyphs[g].id, Letter{i, text}).second;
      }
  }
  return known;
}

struct KeptGroups {
  base::Cache<char, GlyphGroups> only{1};
};

std::shared_ptr<const GlyphGroups> groupsOf(const std::shared_ptr<const typeset::FontFace>& face) {
  return face->kept<KeptGroups>().only.getOrMake(0, [&] { return readGroups(face); });
}

}  // namespace

GlyphSet glyphSet(const std::shared_ptr<const typeset::FontFace>& face, const UsedGlyphs& used) {
  const auto groups = groupsOf(face);
  struct Found {
    std::uint32_t glyph;
    std::optional<unsigned> group;
  };
  std::vector<Found> found;
  found.reserve(used.glyphs.size());
  std::array<int, groupCount> counts{};
  for (const std::uint32_t glyph : used.glyphs) {
    const auto known = groups->letters.find(glyph);
    // A glyph that says something else here (a space that does not break) is none of the group's.
    const bool isKnown = known != groups->letters.end() && known->second.text == used.texts[glyph];
    found.push_back({glyph, isKnown ? std::optional(known->second.group) : std::nullopt});
    if (isKnown) ++counts[known->second.group];
  }
  GlyphSet set{face, 0, {}};
  for (unsigned group = 0; group < groupCount; ++group)
    if (counts[group] > 0 && 3 * counts[group] >= 2 * groups->sizes[group]) set.groups |= 1u << group;
  for (const auto& [glyph, group] : found)
    if (!group || !(set.groups >> *group & 1)) set.others.emplace(glyph, used.texts[glyph]);
  return set;
}

GlyphTexts glyphsOf(const GlyphSet& set) {
  GlyphTexts all = set.others;
  for (const auto& [glyph, letter] : groupsOf(set.face)->letters)
    if (set.groups >> letter.group & 1) all.emplace(glyph, letter.text);
  return all;
}

}  // namespace pdf
