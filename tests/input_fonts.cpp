// Faces named by their family: Vollkorn, Carlito and Open Sans of the packages that come with the themes.
#include "input/look/font_families.h"
#include "input/read.h"

#include <catch2/catch.hpp>

#include <unistd.h>
#include <filesystem>
#include <fstream>

namespace fs = std::filesystem;
using model::Face;

namespace {

/// Reads a theme that takes 'faces' over the shipped one; what was said, without the folder.
class OwnTheme {
 public:
  explicit OwnTheme(const std::string& faces)
      : folder_(fs::temp_directory_path() / ("own-theme-" + std::to_string(getpid()))) {
    fs::create_directories(folder_);
    std::ofstream(folder_ / "own.yaml") << "name: own\nextends: generous\nfaces: {" << faces << "}\n";
    theme = input::readTheme((folder_ / "own.yaml").string(), messages_, {SOURCE_DIR "/templates/themes"});
  }
  ~OwnTheme() { fs::remove_all(folder_); }
  std::string file(Face face) const { return fs::path(theme.faces.at(face)).filename().string(); }
  std::string said() const {
    std::string all;
    for (base::Diagnostic d : messages_.all()) {
      d.pos.file = fs::path(d.pos.file).filename().string();
      all += base::format(d);
    }
    return all;
  }

  model::Theme theme;

 private:
  fs::path folder_;
  base::Diagnostics messages_;
};

}  // namespace

TEST_CASE("a family brings its italic and its bold along") {
  const OwnTheme own("text: {family: Carlito}, sans: {family: open sans}");
  CHECK(own.said().empty());
  CHECK(own.file(Face::Text) == "Carlito-Regular.ttf");
  CHECK(own.file(Face::TextItalic) == "Carlito-Italic.ttf");
  CHECK(own.file(Face::TextBold) == "Carlito-Bold.ttf");
  CHECK(own.file(Face::Display) == "Carlito-Regular.ttf");  // nearest to a medium
  CHECK(own.file(Face::Sans) == "OpenSans-Regular.ttf");    // not one of the condensed
  CHECK(own.file(Face::SansBold) == "OpenSans-Bold.ttf");
}

TEST_CASE("a face of a family is chosen by weight and style, and others are left as they are") {
  const OwnTheme own(
      "text-bold: {family: Vollkorn, weight: black}, text-italic: {family: Carlito, style: italic}");
  CHECK(own.said().empty());
  CHECK(own.file(Face::TextBold) == "Vollkorn-Black.ttf");
  CHECK(own.file(Face::TextItalic) == "Carlito-Italic.ttf");
  CHECK(own.file(Face::Text) == "Vollkorn-Regular.ttf");
  CHECK(OwnTheme("text: {family: Carlito}, text-bold: Vollkorn-Bold.ttf").file(Face::TextBold) ==
        "Vollkorn-Bold.ttf");
}

TEST_CASE("a family that is not installed is told with the nearest one, never replaced in silence") {
  CHECK(OwnTheme("text: {family: Volkorn}").said() ==
        "own.yaml:3:24: error: faces.text.family: no font family 'Volkorn' is installed; did you mean "
        "'Vollkorn'?\n"
        "  hint: install the package that brings it, or put the font file beside this one and name that\n");
  CHECK(OwnTheme("text: {family: Quillfeather Brush}").said() ==
        "own.yaml:3:24: error: faces.text.family: no font family 'Quillfeather Brush' is installed\n"
        "  hint: install the package that brings it, or put the font file beside this one and name that\n");
}

TEST_CASE("a face that the family lacks is told with those it has") {
  CHECK(OwnTheme("text-bold: {family: Carlito, weight: thin}").said() ==
        "own.yaml:3:20: error: faces.text-bold: the font family has no such face\n"
        "  hint: it has: Bold, Bold Italic, Italic, Regular\n");
  CHECK(OwnTheme("text: {family: Carlito, weight: hevy}").said().find("'hevy' is not a known weight") !=
        std::string::npos);
  CHECK(OwnTheme("text: {famly: Carlito}")
            .said()
            .find("'famly' is not a known key here; did you mean 'family'?") != std::string::npos);
}

TEST_CASE("of a family the face nearest in weight and of the usual width is taken") {
  input::Family family;
  family.faces = {{"a", "Condensed Bold", 700, false, true},
                  {"b", "Light", 300, false, false},
                  {"c", "Semibold", 600, false, false},
                  {"d", "Italic", 400, true, false}};
  CHECK(input::nearestFace(family, 700, false)->file == "c");
  CHECK(input::nearestFace(family, 400, false)->file == "b");
  CHECK(input::nearestFace(family, 700, true)->file == "d");
  family.faces.pop_back();
  CHECK(input::nearestFace(family, 400, true) == nullptr);
}

TEST_CASE("the faces of a firm take the place of the theme's") {
  base::Diagnostics messages;
  model::Theme theme = input::readTheme(SOURCE_DIR "/templates/themes/generous.yaml", messages, {});
  model::Firm firm;
  firm.fonts[Face::Text] = {"/somewhere/own.ttf", {"firm.yaml", 3, 9}, "fonts.text"};
  input::applyFirm(theme, firm, "firm.yaml", messages);
  CHECK(theme.faces.at(Face::Text) == "/somewhere/own.ttf");
  CHECK(theme.named.at("/somewhere/own.ttf").key == "fonts.text");
  CHECK(fs::path(theme.faces.at(Face::TextBold)).filename() == "Vollkorn-SemiBold.ttf");
  CHECK(messages.all().empty());
}
