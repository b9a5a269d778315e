// Themes: what extends what, colours that can be read, and what is told of mistakes.
#include "content_folder.h"
#include "input/look/colour.h"

using fixture::Bad;
using fixture::checkEach;
using fixture::Folder;
namespace fs = std::filesystem;

TEST_CASE("mistakes in a theme's file are told with the whole message") {
  const Bad table[] = {
      {"theme.yaml", "faces: {text: face.ttf", "faces: {text: nowhere.ttf",
       "theme.yaml:3:15: error: faces.text: the font file 'nowhere.ttf' is not found\n"
       "  hint: install the package that brings it, or write its path\n"},
      {"theme.yaml", "ink: '#211b17'", "ink: '#8a8a8a'",
       "theme.yaml:5:8: error: colours.ink: text in this colour has a contrast of 3.45:1 on white\n"
       "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#6d6d6d'\n"
       "theme.yaml:5:8: error: colours.ink: text in this colour has a contrast of 3.02:1 on tint\n"
       "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#6d6d6d'\n"},
      {"theme.yaml", "  wood: '#95826d'\n", "",
       "theme.yaml:5:3: error: colours: 'wood' is missing\n"
       "  hint: write it like wood: '#7a4522'\n"},
      {"theme.yaml", "  lede:", "  leed:",
       "theme.yaml:18:3: error: styles: 'lede' is missing\n"
       "  hint: write it like lede: {face: text, size: 10.5 pt, leading: 14 pt, baseline: 10 pt}\n"
       "theme.yaml:20:3: error: styles: 'leed' is not a known key here; did you mean 'lede'?\n"
       "  hint: known: title, kind, lede, figure, total, hazard, signal, head, rowHead, body, table, note, "
       "label, firm, runFirm or drawing\n"},
      {"theme.yaml", "size: 23 pt, leading: 28 pt", "size: 23 pt, leading: 27 pt",
       "theme.yaml:18:48: error: styles.title.leading: the leading is not a multiple of the grid's unit\n"
       "  hint: the lines of all styles stand on one grid\n"},
      {"theme.yaml", "leading: 28 pt, baseline: 21 pt", "leading: 28 pt, baseline: 29 pt",
       "theme.yaml:18:65: error: styles.title.baseline: the baseline lies below the line\n"
       "  hint: baseline is at most leading\n"},
      {"theme.yaml", "leading: 28 pt, baseline: 21 pt}", "leading: 28 pt, rise: 21 pt}",
       "theme.yaml:18:61: error: styles.title.rise: 'rise' is now called 'baseline'\n"
       "  hint: write 'baseline:'\n"},
      {"theme.yaml", "baseline: 21 pt, colour: accent", "baseline: 21 pt, colour: acent",
       "theme.yaml:19:79: error: styles.kind.colour: 'acent' is not a known colour of this theme; did you "
       "mean 'accent'?\n"
       "  hint: known: accent, caution, danger, ink, notice, rule, soft, tint, wall, warning, white or "
       "wood\n"},
      {"theme.yaml", "face: display", "face: dysplay",
       "theme.yaml:18:17: error: styles.title.face: 'dysplay' is not a known face; did you mean 'display'?\n"
       "  hint: known: text, text-italic, text-bold, display, sans, sans-italic or sans-bold\n"},
      {"theme.yaml", "text: 118 mm", "text: 180 mm",
       "theme.yaml:2:7: error: grid: the columns are wider than the paper\n"
       "  hint: left, side, gutter and text are at most 210 mm together\n"},
      {"theme.yaml", "side: 42 mm", "side: 42 m",
       "theme.yaml:2:27: error: grid.side: '42 m' is not a length on paper\n"
       "  hint: lengths on paper are given in pt or mm, like '10.5 pt'\n"},
      {"theme.yaml", "side: 42 mm", "side: 42",
       "theme.yaml:2:27: error: grid.side: '42' needs a unit\n"
       "  hint: write '42 pt' or '42 mm'\n"},
  };
  checkEach(table, [](Folder& f) { f.theme(); });
}

TEST_CASE("a theme that extends another holds only what it changes") {
  Folder folder;
  folder.write("own.yaml",
               "name: own\nextends: theme\ngrid: {side: 34 mm, text: 126 mm}\ncolours: {accent: '#005387'}\n"
               "styles: {table: {size: 9 pt}, head: {face: sans-bold}}\n");
  const auto base = folder.theme(), own = folder.theme("own.yaml");
  CHECK(folder.said() == "");
  CHECK(own.name == "own");
  CHECK(own.sideWidth == 96'378);  // 34 mm at 72 pt to 25.4 mm
  CHECK(own.marginLeft == base.marginLeft);
  CHECK(own.colours.at("accent") == model::Colour{0x00, 0x53, 0x87});
  CHECK(own.colours.at("ink") == base.colours.at("ink"));
  CHECK(own.styles.at("table").size == 9'000);
  CHECK(own.styles.at("table").leading == base.styles.at("table").leading);
  CHECK(own.styles.at("table").strong == model::Face::Sans);  // as the theme below says
  CHECK(own.styles.at("head").face == model::Face::SansBold);
  CHECK(own.styles.at("head").strong == model::Face::SansBold);  // a new face brings its own
  CHECK(own.faces == base.faces);
  CHECK(own.styles.size() == base.styles.size());
}

TEST_CASE("themes extend each other over several files, the shipped ones from beside them") {
  Folder folder;
  fs::create_directories(folder.path() / "shipped");
  fs::copy(folder.path() / "theme.yaml", folder.path() / "shipped/plain.yaml");
  fs::copy(folder.path() / "face.ttf", folder.path() / "shipped/face.ttf");
  folder.write("plain.yaml", "name: plain\nextends: plain\ngrid: {gutter: 5 mm}\n");  // its namesake
  folder.write("own.yaml", "name: own\nextends: plain\ngrid: {side: 40 mm}\n");
  const auto own = folder.theme("own.yaml");
  CHECK(folder.said() == "");
  CHECK(own.gutter == 14'173);      // 5 mm
  CHECK(own.sideWidth == 113'386);  // 40 mm
  CHECK(own.unit == 3'500);
}

TEST_CASE("mistakes in themes that extend others are told in their own file and line") {
  struct JobInputs {
    const char* text;
    const char* expected;
  };
  const JobInputs table[] = {
      {"name: own\nextends: teme\n",
       "own.yaml:2:10: error: extends: 'teme' is not a known theme; did you mean 'theme'?\n"},
      {"name: own\nextends: own\n",
       "own.yaml:2:10: error: extends: the theme extends itself\n"
       "  hint: name another theme, or leave 'extends' out\n"},
      {"name: own\nextends: ring\n",
       "ring.yaml:2:10: error: extends: the themes extend each other in a circle\n"
       "  hint: one of them must stand on its own\n"},
      {"name: own\nextends: broken\n",
       "broken.yaml:3:8: error: grid: 'sied' is not a known key here; did you mean 'side'?\n"},
      {"name: own\nextends: theme\nstyles: {hed: {size: 9 pt}}\n",
       "own.yaml:3:10: error: styles: 'hed' is not a known key here; did you mean 'head'?\n"},
      {"name: own\nextends: theme\ncolours: {accent: '#c08040'}\n",
       "own.yaml:3:19: error: colours.accent: text in this colour has a contrast of 3.27:1 on white\n"},
      {"name: own\nextends: theme\ngrid: {unit: 3 pt}\nstyles: {title: {leading: 30 pt}}\n",
       "own.yaml:3:14: error: grid.unit: the leading of 'body' is not a multiple of it\n"},
      {"name: own\nextends: theme\nfaces: {text: Vollkorn SemiBold}\n",
       "own.yaml:3:15: error: faces.text: the font file 'Vollkorn SemiBold' is not found\n"
       "  hint: a file is named like Carlito-Regular.ttf, a family like {family: Carlito}\n"},
  };
  for (const auto& c : table) {
    Folder folder;
    folder.write("ring.yaml", "name: ring\nextends: own\n");
    folder.write("broken.yaml", "name: broken\nextends: theme\ngrid: {sied: 34 mm}\n");
    fs::remove(folder.path() / "firm.yaml");
    folder.write("own.yaml", c.text);
    folder.theme("own.yaml");
    CAPTURE(c.text);
    CHECK(folder.said().substr(0, std::string(c.expected).size()) == c.expected);
  }
}

TEST_CASE("a firm's colours replace the theme's and must be readable on its tint") {
  model::Theme theme;
  theme.colours = {{"accent", {0x7a, 0x45, 0x22}}, {"tint", {0xf5, 0xef, 0xe7}}, {"white", {255, 255, 255}}};
  model::Firm firm;
  firm.colours["accent"] = {0x70, 0x70, 0x74};
  base::Diagnostics messages;
  input::applyFirm(theme, firm, "firm.yaml", messages);
  CHECK(theme.colours["accent"] == firm.colours["accent"]);
  REQUIRE(messages.all().size() == 1);
  CHECK(base::format(messages.all()[0]) ==
        "firm.yaml: error: colours.accent: text in this colour has a contrast of 4.31:1 on tint\n"
        "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#6d6d71'\n");
}

TEST_CASE("contrast is counted as the accessibility guidelines say") {
  // WCAG 2.1, definitions of 'contrast ratio' and 'relative luminance': black on white is 21:1, a colour on
  // itself 1:1. #767676 on white, 4.54, is the lightest grey that passes (common practice, from memory).
  CHECK(input::contrastHundredths({0, 0, 0}, {255, 255, 255}) == 2100);
  CHECK(input::contrastHundredths({255, 255, 255}, {0, 0, 0}) == 2100);
  CHECK(input::contrastHundredths({1, 2, 3}, {1, 2, 3}) == 100);
  CHECK(input::contrastHundredths({0x76, 0x76, 0x76}, {255, 255, 255}) == 454);
  CHECK(input::contrastHundredths({0x77, 0x77, 0x77}, {255, 255, 255}) == 447);
}
