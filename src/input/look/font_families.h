// Font files by family, weight and slant, from the fonts installed on this machine.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace input {

/// One installed file of a family.
struct FamilyFace {
  std::string file;
  std::string style;  // 'Bold Italic', as its maker names it
  int weight = 400;   // as in OpenType: 400 regular, 700 bold
  bool isItalic = false;
  bool isNarrow = false;  // narrower or wider than the family's usual width
};

/// What is installed under a name. Only files with one face of fixed weight can be set.
struct Family {
  std::vector<FamilyFace> faces;
  std::string unusable;  // one that cannot be set and why; empty when there is none
};

/// Nothing when no family has this name; capitals do not matter. Nothing is ever put in its place.
std::optional<Family> findFamily(const std::string& name);

/// Every name of a family, in order.
std::vector<std::string> familyNames();

/// The face of this slant nearest in weight, of the usual width if there is one; nothing when no face has the
/// slant.
const FamilyFace* nearestFace(const Family& family, int weight, bool isItalic);

}  // namespace input
