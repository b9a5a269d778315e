#include "input/look/font_finder.h"

#include "base/nearest.h"
#include "input/look/font_families.h"
#include "input/yaml/words.h"

#include <algorithm>
#include <cstdlib>

namespace input {

namespace fs = std::filesystem;

std::string FontFinder::find(const std::string& name, const fs::path& beside) {
  std::error_code failed;
  const fs::path near = fs::absolute(beside / name, failed).lexically_normal();
  if (!failed && fs::is_regular_file(near, failed)) return near.string();
  if (!isListed_) list();
  const auto found = system_.find(name);
  return found == system_.end() ? "" : found->second;
}

void FontFinder::list() {
  isListed_ = true;
  for (const char* folder : {"/usr/local/share/fonts", "/usr/share/fonts"}) {
    std::error_code failed;
    std::vector<std::string> files;
    auto it = fs::recursive_directory_iterator(folder, fs::directory_options::skip_permission_denied, failed);
    for (; !failed && it != fs::recursive_directory_iterator(); it.increment(failed)) {
      std::error_code ignored;
      if (it->is_regular_file(ignored)) files.push_back(it->path().string());
    }
    std::sort(files.begin(), files.end());  // the same choice on every run
    for (const std::string& f : files) system_.emplace(fs::path(f).filename().string(), f);
  }
}

std::string fontFile(const Field& f, FontFinder& finder) {
  const fs::path beside = fs::path(f.source().file).parent_path();
  const std::string name = text(f);
  if (name.empty()) return {};
  std::string file = finder.find(name, beside);
  if (file.empty())
    f.error("the font file '" + name + "' is not found",
            fs::path(name).has_extension()
                ? "install the package that brings it, or write its path"
                : "a file is named like Carlito-Regular.ttf, a family like {family: Carlito}");
  return file;
}

namespace {

using model::Face;

// OpenType 1.9, OS/2 table, usWeightClass.
constexpr Word<int> weights[] = {{"thin", 100},    {"extralight", 200}, {"light", 300},
                                 {"regular", 400}, {"medium", 500},     {"semibold", 600},
                                 {"bold", 700},    {"extrabold", 800},  {"black", 900}};

/// The other faces of a kind: upright text goes with the italic and the bold of its family.
struct Companion {
  Face of, face;
  int weight;
  bool isItalic;
};
constexpr Companion companions[] = {{Face::Text, Face::TextItalic, 400, true},
                                    {Face::Text, Face::TextBold, 700, false},
                                    {Face::Text, Face::Display, 500, false},
                                    {Face::Sans, Face::SansItalic, 400, true},
                                    {Face::Sans, Face::SansBold, 700, false}};

/// A family as it is written, with what of it is meant.
struct Wish {
  Family family;
  int weight = 400;
  bool isItalic = false;
  bool isWhole = false;  // neither weight nor style is written
};

std::string stylesOf(const Family& family) {
  std::string s;
  for (const FamilyFace& face : family.faces) s += (s.empty() ? "" : ", ") + face.style;
  return s;
}

std::optional<Wish> readWish(const Field& f) {
  Record r(f);
  const Field family = r.must("family", "Vollkorn"), weight = r.may("weight"), style = r.may("style");
  Wish wish;
  wish.isWhole = !weight.isGiven() && !style.isGiven();
  wish.weight = choice(weight, weights, "weight", 400);
  constexpr Word<bool> slants[] = {{"normal", false}, {"italic", true}};
  wish.isItalic = choice(style, slants, "style", false);
  r.finish();
  const std::string name = text(family);
  if (name.empty()) return {};
  auto found = findFamily(name);
  if (!found) {
    const std::string near = base::nearest(name, familyNames());
    family.error("no font family '" + name + "' is installed" + base::didYouMean(near),
                 "install the package that brings it, or put the font file beside this one and name that");
    return {};
  }
  if (found->faces.empty()) {
    family.error("the font family '" + name + "' cannot be set: " + found->unusable,
                 "take a family whose weights are files of their own");
    return {};
  }
  wish.family = std::move(*found);
  return wish;
}

/// The face of a weight and slant that was asked for by name; empty (and an error) when there is none near.
std::string chosenFile(const Field& f, const Wish& wish) {
  constexpr int near = 100;  // 'bold' is met by a semibold, not by a regular
  const FamilyFace* face = nearestFace(wish.family, wish.weight, wish.isItalic);
  if (face && std::abs(face->weight - wish.weight) <= near) return face->file;
  f.error("the font family has no such face", "it has: " + stylesOf(wish.family));
  return {};
}

}  // namespace

model::FaceFiles readFaceFiles(Record& r, FontFinder& finder) {
  model::FaceFiles files;
  std::map<Face, std::pair<Wish, Field>> families;
  for (const auto& word : faceWords) {
    const Field face = r.may(word.name);
    if (!face.isGiven()) continue;
    std::string file;
    if (!face.is(Node::Kind::Map)) {
      file = fontFile(face, finder);
    } else if (const auto wish = readWish(face)) {
      file = chosenFile(face, *wish);
      if (wish->isWhole) families.emplace(word.value, std::pair(*wish, face));
    }
    files[word.value] = {file, face.pos(), face.path()};
  }
  for (const Companion& c : companions) {
    const auto family = families.find(c.of);
    if (family == families.end() || files.contains(c.face)) continue;
    const auto& [wish, field] = family->second;
    const FamilyFace* face = nearestFace(wish.family, c.weight, c.isItalic);
    if (!face) face = nearestFace(wish.family, c.weight, false);  // a family without italics
    if (face) files[c.face] = {face->file, field.pos(), field.path()};
  }
  return files;
}

}  // namespace input
