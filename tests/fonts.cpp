// Shaping: the faces a theme names set real words.
#include "typeset/fonts.h"

#include <hb.h>
#include <catch2/catch.hpp>

#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

using namespace typeset;

namespace {

const std::string vollkorn = "/usr/share/fonts/truetype/vollkorn/";
const std::string carlito = "/usr/share/fonts/truetype/crosextra/";

model::Theme theme() {
  model::Theme t;
  t.faces = {{model::Face::Text, vollkorn + "Vollkorn-Regular.ttf"},
             {model::Face::TextBold, vollkorn + "Vollkorn-SemiBold.ttf"},
             {model::Face::Sans, carlito + "Carlito-Regular.ttf"}};
  t.fallbackFaces = {"/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
                     "/usr/share/fonts/truetype/ancient-scripts/Symbola_hint.ttf"};
  t.colours["ink"] = {1, 2, 3};
  t.styles["table"] = {model::Face::Sans, {}, {}, 10'500, 14'000, 10'500, 1'200, "ink", true};
  return t;
}

const Fonts& fonts() {
  static const Fonts read = readFonts(theme());
  return read;
}

StyledText span(const std::string& text, model::Face face = model::Face::Text, bool tabular = false) {
  return {text, face, Dim::pt(10), {}, {}, tabular};
}

std::vector<char32_t> missingIn(const std::string& text) {
  std::vector<char32_t> missing;
  shape(fonts(), span(text), [&](char32_t c) { missing.push_back(c); });
  return missing;
}

std::string faultOf(const std::string& bytes) {
  const std::string file =
      std::filesystem::temp_directory_path() / ("face" + std::to_string(getpid()) + ".ttf");
  std::ofstream(file, std::ios::binary) << bytes;
  std::string fault;
  try {
    FontFace::read(file);
  } catch (const std::runtime_error& e) {
    fault = e.what();
    REQUIRE(fault.find(file) != std::string::npos);
    fault.erase(fault.find(file), file.size());
  }
  std::remove(file.c_str());
  return fault;
}

std::string bytesOf(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

TEST_CASE("kerned pairs are narrower than their letters alone") {
  for (const auto face : {model::Face::Text, model::Face::TextBold, model::Face::Sans})
    for (const std::string pair : {"AV", "To", "Wa"}) {
      INFO(pair);
      const Dim together = width(fonts(), span(pair, face));
      CHECK(together <
            width(fonts(), span(pair.substr(0, 1), face)) + width(fonts(), span(pair.substr(1), face)));
    }
}

TEST_CASE("tabular digits have one width, also side by side") {
  for (const auto face : {model::Face::Text, model::Face::TextBold, model::Face::Sans}) {
    const Dim zero = width(fonts(), span("0000", face, true));
    for (char d = '1'; d <= '9'; ++d) CHECK(width(fonts(), span(std::string(4, d), face, true)) == zero);
    CHECK(width(fonts(), span("1741", face, true)) == zero);
  }
}

TEST_CASE("a run is as wide as HarfBuzz says, rounded once") {
  const Shaped s = shape(fonts(), span("Wash the boards to 42.50 m²"));
  REQUIRE(s.runs.size() == 1);
  std::int64_t units = 0;
  for (const Glyph& g : s.runs[0].glyphs) units += g.advance;
  const FontFace& face = *fonts().faces[s.runs[0].face];
  // 10 pt is 127 000 in the unit of paper
  CHECK(s.width.raw == (units * 127'000 + face.metrics().unitsPerEm / 2) / face.metrics().unitsPerEm);
  CHECK(s.runs[0].glyphs.size() == 27);
}

TEST_CASE("tracking is added after each glyph") {
  StyledText wide = span("CAUTION");
  wide.tracking = Dim::pt(1);
  CHECK(width(fonts(), wide) == width(fonts(), span("CAUTION")) + Dim::pt(7));
}

TEST_CASE("a letter is drawn as the language of the document draws it") {
  Fonts romanian = fonts();  // Carlito: a comma below, where others have a cedilla
  romanian.language = "ro";
  const auto glyph = [](const Fonts& f) {
    return shape(f, span("\u015F", model::Face::Sans)).runs[0].glyphs[0].id;
  };
  CHECK(glyph(romanian) != glyph(fonts()));
  CHECK(glyph(fonts()) == glyph(fonts()));
}

TEST_CASE("letters join where the face joins them, but not when they are spaced") {
  CHECK(shape(fonts(), span("fi")).runs[0].glyphs.size() == 1);
  StyledText wide = span("fi");
  wide.tracking = Dim::pt(1);
  CHECK(shape(fonts(), wide).runs[0].glyphs.size() == 2);
  CHECK(shape(fonts(), span("->")).runs[0].glyphs.size() == 2);
}

TEST_CASE("an emoji comes from a fallback face and the words around it do not") {
  const Shaped s = shape(fonts(), span("dry 🍂 leaves"));
  REQUIRE(s.runs.size() == 3);
  CHECK(s.runs[0].text == "dry ");
  CHECK(s.runs[1].text == "🍂");
  CHECK(s.runs[2].text == " leaves");
  CHECK(s.runs[1].face != s.runs[0].face);
  CHECK(s.runs[1].glyphs[0].id != 0);
  CHECK(s.runs[2].baseline.x == s.runs[0].width + s.runs[1].width);
  CHECK(s.width == s.runs[2].baseline.x + s.runs[2].width);
  CHECK(missingIn("dry 🍂 leaves ⚠️ ☐ ✓ ≤ ⅓").empty());
}

TEST_CASE("marks and variation selectors stay with their letter") {
  CHECK(shape(fonts(), span("⚠️")).runs.size() == 1);
  const Shaped s = shape(fonts(), span("cafe\u0301 e\u0323"));
  CHECK(s.runs.size() == 1);
  for (const Glyph& g : s.runs[0].glyphs) CHECK(g.id != 0);
  CHECK(shape(fonts(), span("👩\u200D🌾")).runs[0].text == "👩\u200D🌾");
}

TEST_CASE("spaces and hyphens that do not break are drawn by a face that lacks them") {
  const auto sans = model::Face::Sans;
  const Shaped s = shape(fonts(), span("42\u00A0m\u2011x\u202Fy", sans));
  REQUIRE(s.runs.size() == 1);
  CHECK(s.runs[0].text == "42\u00A0m\u2011x\u202Fy");
  CHECK(width(fonts(), span("a\u00A0b", sans)) == width(fonts(), span("a b", sans)));
  CHECK(width(fonts(), span("a\u2011b", sans)) == width(fonts(), span("a-b", sans)));
  CHECK(width(fonts(), span("a\u202Fb", sans)) < width(fonts(), span("a b", sans)));
}

TEST_CASE("break hints are neither drawn nor copied out") {
  const Shaped s = shape(fonts(), span("AV\u00AD\u200Bdeck\u2060ing\uFEFF"));
  REQUIRE(s.runs.size() == 1);
  CHECK(s.runs[0].text == "AVdecking");
  CHECK(s.width == width(fonts(), span("AVdecking")));
  CHECK(shape(fonts(), span("\u00AD")).runs.empty());
}

TEST_CASE("letters no face has are reported and set as a box") {
  CHECK(missingIn("ok") == std::vector<char32_t>{});
  CHECK(missingIn("a\U000F0000b") == std::vector<char32_t>{U'\U000F0000'});
  CHECK(width(fonts(), span("\U000F0000")) > Dim{});
}

TEST_CASE("text that is not UTF-8 is set without harm") {
  CHECK(missingIn("caf\xE9 \xF0\x9F").empty());  // U+FFFD comes from a fallback face
}

TEST_CASE("a face is read once for all roles that share its file") {
  model::Theme t = theme();
  t.faces[model::Face::Display] = t.faces[model::Face::Text];
  const Fonts read = readFonts(t);
  CHECK(read.faces.size() == 5);
  CHECK(read.byRole.at(model::Face::Display) == read.byRole.at(model::Face::Text));
}

TEST_CASE("a style's span carries its face, size, tracking and digits") {
  const StyledText s = spanIn(theme(), "table", "x");
  CHECK(s.face == model::Face::Sans);
  CHECK(s.size.raw == 133'350);  // 10.5 pt
  CHECK(s.tracking.raw == 15'240);
  CHECK(s.colour == Colour{1, 2, 3});
  CHECK(s.tabular);
  CHECK_THROWS_AS(spanIn(theme(), "nosuch", "x"), std::logic_error);
}

TEST_CASE("font files that cannot be used are refused with a reason") {
  const std::string whole = bytesOf(carlito + "Carlito-Regular.ttf");
  CHECK(faultOf(whole) == "");
  CHECK(faultOf("") == "cannot use font '': not a font");
  CHECK(faultOf("just a few words of text, no font at all") ==
        "cannot use font '': not a TrueType or OpenType font");
  CHECK(faultOf(whole.substr(0, 100)) == "cannot use font '': damaged: cut off");
  CHECK(faultOf(whole.substr(0, whole.size() / 2)) == "cannot use font '': damaged: cut off");
  std::string noMap = whole;
  noMap.replace(noMap.find("cmap"), 4, "xmap");
  CHECK(faultOf(noMap) == "cannot use font '': damaged: a table is missing");
  std::string zeros = whole;
  std::fill(zeros.begin() + 1000, zeros.end(), '\0');
  CHECK(faultOf(zeros) == "cannot use font '': damaged or without the letter A");
  CHECK(faultOf("ttcf" + whole.substr(4)) ==
        "cannot use font '': a font collection; name a file with one font");
  CHECK_THROWS_WITH(FontFace::read("/nowhere/x.ttf"), "cannot read font '/nowhere/x.ttf'");
}
