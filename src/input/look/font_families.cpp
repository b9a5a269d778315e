#include "input/look/font_families.h"

#include <fontconfig/fontconfig.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <set>

namespace input {
namespace {

/// The fonts of this machine, listed once a process.
FcConfig* config() {
  static const std::unique_ptr<FcConfig, void (*)(FcConfig*)> installed(FcInitLoadConfigAndFonts(),
                                                                        FcConfigDestroy);
  return installed.get();
}

/// All fonts that match a pattern (taken over), with these properties.
std::vector<FcPattern*> patternsOf(FcFontSet* set) {
  return set ? std::vector<FcPattern*>(set->fonts, set->fonts + set->nfont) : std::vector<FcPattern*>{};
}

using FontSet = std::unique_ptr<FcFontSet, void (*)(FcFontSet*)>;

FontSet list(FcPattern* pattern, FcObjectSet* properties) {
  FontSet set(FcFontList(config(), pattern, properties), FcFontSetDestroy);
  FcObjectSetDestroy(properties);
  FcPatternDestroy(pattern);
  return set;
}

std::string textOf(FcPattern* font, const char* property) {
  FcChar8* value = nullptr;
  if (FcPatternGetString(font, property, 0, &value) != FcResultMatch) return {};
  return reinterpret_cast<const char*>(value);
}

int numberOf(FcPattern* font, const char* property, int otherwise) {
  int value = otherwise;
  FcPatternGetInteger(font, property, 0, &value);
  return value;
}

/// Why a file cannot be set; null when it can.
const char* faultOf(FcPattern* font) {
  FcBool isVariable = FcFalse;
  FcPatternGetBool(font, FC_VARIABLE, 0, &isVariable);
  const int index = numberOf(font, FC_INDEX, 0);  // above 16 bits: a named place in a variable font
  if (isVariable || (index >> 16) != 0) return "a variable font";
  const std::string format = textOf(font, FC_FONTFORMAT);
  if (format != "TrueType" && format != "CFF") return "neither TrueType nor OpenType";
  const std::string file = textOf(font, FC_FILE);
  const bool isCollection = file.ends_with(".ttc") || file.ends_with(".otc");
  return index != 0 || isCollection ? "a font collection" : nullptr;
}

}  // namespace

std::optional<Family> findFamily(const std::string& name) {
  FcPattern* wanted = FcPatternCreate();
  FcPatternAddString(wanted, FC_FAMILY, reinterpret_cast<const FcChar8*>(name.c_str()));
  const FontSet set = list(wanted, FcObjectSetBuild(FC_FILE, FC_INDEX, FC_STYLE, FC_WEIGHT, FC_SLANT,
                                                    FC_WIDTH, FC_VARIABLE, FC_FONTFORMAT, nullptr));
  const auto fonts = patternsOf(set.get());
  if (fonts.empty()) return {};
  Family family;
  std::set<std::string> refused;
  for (FcPattern* font : fonts) {
    const std::string file = textOf(font, FC_FILE);
    if (const char* fault = faultOf(font)) {
      refused.insert(file);
      // The same one on every run, wherever it stands in the list.
      const std::string told = "'" + file + "' is " + fault;
      if (family.unusable.empty() || told < family.unusable) family.unusable = told;
      continue;
    }
    const int weight = FcWeightToOpenType(numberOf(font, FC_WEIGHT, FC_WEIGHT_REGULAR));
    family.faces.push_back({file, textOf(font, FC_STYLE), weight,
                            numberOf(font, FC_SLANT, FC_SLANT_ROMAN) != FC_SLANT_ROMAN,
                            numberOf(font, FC_WIDTH, FC_WIDTH_NORMAL) != FC_WIDTH_NORMAL});
  }
  // A variable font is listed once more as the plain one that it begins as; its other weights would be lost.
  std::erase_if(family.faces, [&](const FamilyFace& face) { return refused.contains(face.file); });
  std::sort(family.faces.begin(), family.faces.end(),
            [](const FamilyFace& a, const FamilyFace& b) { return a.file < b.file; });
  return family;
}

std::vector<std::string> familyNames() {
  const FontSet set = list(FcPatternCreate(), FcObjectSetBuild(FC_FAMILY, nullptr));
  std::vector<std::string> names;
  for (FcPattern* font : patternsOf(set.get())) names.push_back(textOf(font, FC_FAMILY));
  std::sort(names.begin(), names.end());
  names.erase(std::unique(names.begin(), names.end()), names.end());
  return names;
}

const FamilyFace* nearestFace(const Family& family, int weight, bool isItalic) {
  const FamilyFace* best = nullptr;
  const auto farness = [&](const FamilyFace& f) {
    return std::pair(f.isNarrow, std::abs(f.weight - weight));
  };
  for (const FamilyFace& face : family.faces)
    if (face.isItalic == isItalic && (!best || farness(face) < farness(*best))) best = &face;
  return best;
}

}  // namespace input
