// Firms that would do harm: colours nobody can read, pictures and fonts that are broken. Through the whole
// program, as a firm would meet them: a clear message, the exit code of a refused job, no file.
#include "firm_sample.h"
#include "pdf_sample.h"
#include "picture_sample.h"

using namespace sample;

namespace {

std::string refusalOfLogo(const std::string& bytes) {
  Firm firm;
  firm.logo(bytes);
  return refusal(firm);
}

std::string refusalOfFont(const std::string& bytes) {
  Firm firm;
  firm.font(bytes);
  return refusal(firm);
}

/// Whether a firm's quote is made and is a sound file.
void accept(Firm& firm) {
  const int status = firm.pack();
  INFO(firm.said());
  CHECK(status == 0);
  CHECK(firm.wroteFiles());
}

const std::string carlito = "/usr/share/fonts/truetype/crosextra/Carlito-Regular.ttf";

/// Where a table's entry in the directory of a font begins.
std::size_t entryOf(const std::string& font, const std::string& table) {
  for (std::size_t at = 12; at < 500; at += 16)
    if (font.substr(at, 4) == table) return at;
  FAIL("no table " << table);
  return 0;
}

std::size_t numberAt(const std::string& font, std::size_t at) {
  std::size_t n = 0;
  for (std::size_t i = at; i < at + 4; ++i) n = n << 8 | static_cast<unsigned char>(font[i]);
  return n;
}

std::size_t placeOf(const std::string& font, const std::string& table) {
  return numberAt(font, entryOf(font, table) + 8);
}

const std::string damagedPng =
    "logo.png: error: the PNG picture is damaged or cut off\n"
    "  hint: save it again as a plain PNG or JPEG\n";
const std::string damagedJpeg =
    "logo.png: error: the JPEG picture is damaged or cut off\n"
    "  hint: save it again as a plain PNG or JPEG\n";

}  // namespace

TEST_CASE("on the compact look a usual font that is missing or broken is told by the line that names it") {
  // What the crew reads standing up is set in the usual look.
  const auto compact = replaced(bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/firm.yaml"),
                                "logo: cricketboard.png", "theme: compact");
  const std::string at = "themes/generous.yaml:16:9: error: faces.text: ";
  Firm firm;
  firm.file(compact);
  firm.usualFont("gone.ttf");
  CHECK(refusal(firm, "safety") == at + "the font file 'gone.ttf' is not found\n"
                                        "  hint: install the package that brings it, or write its path\n");
  firm.font("none");
  CHECK(refusal(firm, "safety") == at + "cannot use font 'themes/broken.ttf': not a font\n"
                                        "  hint: name another file or family\n");
}

TEST_CASE("white text on white is refused with the nearest colour that can be read") {
  Firm firm;
  firm.accent("accent: '#ffffff'");
  CHECK(holds(refusal(firm),
              "error: colours.accent: text in this colour has a contrast of 1.00:1 on white\n"
              "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#767676'\n"));
}

TEST_CASE("on white the grey of 4.48:1 is refused and the next darker one of 4.54:1 is taken") {
  Firm firm;
  firm.accent("accent: '#777777', tint: '#ffffff'");
  CHECK(holds(refusal(firm), "the nearest that passes is '#767676'\n"));
  firm.accent("accent: '#767676', tint: '#ffffff'");
  accept(firm);
}

TEST_CASE("a colour that fails on the theme's tint only is told with its line") {
  Firm firm;
  firm.accent("accent: '#767676'");
  const std::string said = refusal(firm);
  CHECK(holds(said,
              "error: colours.accent: text in this colour has a contrast of 3.97:1 on tint\n"
              "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#6d6d6d'\n"));
  CHECK_FALSE(holds(said, "firm.yaml: error"));
  firm.accent("accent: '#6d6d6d'");
  accept(firm);
}

TEST_CASE("a tint on which the theme's words cannot be read is refused under its own name") {
  Firm firm;
  firm.accent("tint: '#807060'");
  CHECK(holds(refusal(firm),
              "error: colours.tint: 'ink' cannot be read on it: text in this colour has a contrast of"));
}

TEST_CASE("a logo of 40 megapixels is refused by its size") {
  const std::string line = std::string(1001, '\0');
  std::string lines;
  for (int y = 0; y < 5000; ++y) lines += line;
  CHECK(refusalOfLogo(craftedPng(8000, 5000, {"\1\0\0", 3}, "", lines)) ==
        "logo.png: error: the picture has 8000 x 5000 pixels; at most 16 million are allowed\n"
        "  hint: save it again as a plain PNG or JPEG\n");
}

TEST_CASE("a logo that claims far more pixels than it has is refused by its size") {
  CHECK(refusalOfLogo(craftedPng(100'000, 100'000, {"\x08\2\0", 3}, "", "x")) ==
        "logo.png: error: the picture has 100000 x 100000 pixels; at most 16 million are allowed\n"
        "  hint: save it again as a plain PNG or JPEG\n");
  CHECK(refusalOfLogo(craftedPng(0, 0, {"\x08\2\0", 3}, "", "x")) == damagedPng);
}

TEST_CASE("a damaged PNG as logo is refused") {
  const std::string whole = bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/cricketboard.png");
  CHECK(refusalOfLogo(whole.substr(0, whole.size() / 2)) == damagedPng);
  CHECK(refusalOfLogo(whole.substr(0, whole.size() - 12)) == damagedPng);
  CHECK(refusalOfLogo(whole.substr(0, 20)) == damagedPng);
  std::string wrongSum = whole;
  wrongSum[whole.find("IDAT") + 400] ^= 1;
  CHECK(refusalOfLogo(wrongSum) == damagedPng);
  CHECK(refusalOfLogo(craftedPng(4, 1, {"\4\3\0", 3}, "", {"\0\x01\x23", 3})) == damagedPng);  // no palette
  CHECK(refusalOfLogo(craftedPng(4, 4, {"\x08\2\0", 3}, "", {"\0\0\0\0", 4})) ==
        damagedPng);  // too few lines
  for (const std::string bytes : {"our logo", "GIF89a", "%PDF-1.7", "<svg/>"})
    CHECK(refusalOfLogo(bytes) ==
          "logo.png: error: not a PNG or JPEG picture\n"
          "  hint: save it again as a plain PNG or JPEG\n");
}

TEST_CASE("a PNG of a rare but sound kind is taken as logo") {
  const std::string palette = chunk("PLTE" + std::string("\x7a\x45\x22\xff\xff\xff\0\0\0", 9));
  const std::pair<const char*, std::string> kinds[] = {
      {"palette with clear colours",
       craftedPng(4, 1, {"\x08\3\0", 3}, palette + chunk(std::string("tRNS\0\x80", 6)), {"\0\0\1\2\0", 5})},
      {"palette of 4 bits with clear colours",
       craftedPng(4, 1, {"\4\3\0", 3}, palette + chunk(std::string("tRNS\0", 5)), {"\0\x01\x20", 3})},
      {"one clear colour",
       craftedPng(1, 1, {"\x08\2\0", 3}, chunk(std::string("tRNS\0\1\0\2\0\3", 10)), {"\0\1\2\3", 4})},
      {"one clear grey", craftedPng(2, 1, {"\x08\0\0", 3}, chunk(std::string("tRNS\0\1", 6)), {"\0\1\2", 3})},
      {"16 bits", craftedPng(1, 1, {"\x10\6\0", 3}, "", std::string(9, '\0'))},
      {"interlaced", craftedPng(1, 1, {"\x08\2\1", 3}, "", {"\0\1\2\3", 4})}};
  for (const auto& [kind, bytes] : kinds) {
    INFO(kind);
    Firm firm;
    firm.logo(bytes);
    accept(firm);
  }
}

TEST_CASE("a damaged JPEG as logo is refused") {
  const std::string whole = makeJpeg(64, 64, 3, JCS_RGB);
  CHECK(refusalOfLogo(whole.substr(0, 3)) == damagedJpeg);
  CHECK(refusalOfLogo(whole.substr(0, 3) + std::string(500, '\0')) == damagedJpeg);
  CHECK(refusalOfLogo(whole.substr(0, whole.size() / 2)) == damagedJpeg);
  CHECK(refusalOfLogo(whole.substr(0, whole.size() - 2)) == damagedJpeg);
  CHECK(refusalOfLogo(makeJpeg(16, 16, 4, JCS_CMYK)) ==
        "logo.png: error: the JPEG picture is in CMYK colours; save it as RGB\n"
        "  hint: save it again as a plain PNG or JPEG\n");
  Firm firm;
  firm.logo(whole);
  accept(firm);
}

TEST_CASE("a damaged font is refused with its name") {
  const std::string start =
      "themes/generous.yaml:16:9: error: faces.text: cannot use font 'themes/broken.ttf': ";
  const std::string remedy = "  hint: name another file or family\n";
  const std::string whole = bytesOf(carlito);
  CHECK(refusalOfFont("") == start + "not a font\n" + remedy);
  CHECK(refusalOfFont("The quick brown fox, but no font at all") ==
        start + "not a TrueType or OpenType font\n" + remedy);
  CHECK(refusalOfFont(std::string(5000, '\0')) == start + "not a TrueType or OpenType font\n" + remedy);
  CHECK(refusalOfFont(whole.substr(0, 100)) == start + "damaged: cut off\n" + remedy);
  CHECK(refusalOfFont(whole.substr(0, whole.size() / 2)) == start + "damaged: cut off\n" + remedy);
  for (const std::string table : {"cmap", "head", "hhea", "hmtx", "maxp"}) {
    std::string without = whole;
    without.replace(entryOf(whole, table), 4, "xxxx");
    CHECK(refusalOfFont(without) == start + "damaged: a table is missing\n" + remedy);
  }
  std::string noOutlines = whole;
  noOutlines.replace(entryOf(whole, "glyf"), 4, "xxxx");
  CHECK(refusalOfFont(noOutlines) == start + "without outlines\n" + remedy);
  std::string noLetters = whole;
  noLetters.replace(placeOf(whole, "maxp") + 4, 2, std::string("\0\1", 2));
  CHECK(refusalOfFont(noLetters) == start + "damaged or without the letter A\n" + remedy);
  std::string zeros = whole;
  std::fill(zeros.begin() + 1000, zeros.end(), '\0');
  CHECK(refusalOfFont(zeros) == start + "damaged or without the letter A\n" + remedy);
}

TEST_CASE("a font that cannot be cut down to the letters in use is refused with its name") {
  std::string bad = bytesOf(carlito);
  const std::size_t head = placeOf(bad, "head");
  std::fill_n(bad.begin() + static_cast<std::ptrdiff_t>(head), 54, '\xFF');
  Firm firm;
  firm.font(bad);
  CHECK(refusal(firm, "orders") ==  // its letters are far too wide to keep a quote to its pages
        "themes/generous.yaml:16:9: error: faces.text: cannot subset font 'Carlito'\n"
        "  hint: name another file or family\n");
}

TEST_CASE("an empty logo is refused with these words") {
  CHECK(refusalOfLogo("") ==
        "logo.png: error: the logo is empty\n"
        "  hint: save it again as a PNG or JPEG, or leave 'logo' out of the firm's file\n");
}

TEST_CASE("a theme that does not exist is told with the nearest that does") {
  app::PackOrder order;
  order.jobs = {SOURCE_DIR "/out_examples/porch/job.yaml"};
  order.choices.theme = "compcat";
  const Listener listener;
  CHECK(app::pack(order) == 1);
  CHECK(listener.said() ==
        "--theme: error: theme: 'compcat' is not a theme; did you mean 'compact'?\n"
        "  hint: themes: compact, generous\n");
}

TEST_CASE("a font file that is not there is told with the theme's line") {
  Firm firm;
  firm.font("x");
  fs::remove(fs::temp_directory_path() / ("firm" + std::to_string(getpid())) / "themes/broken.ttf");
  CHECK(holds(refusal(firm),
              "generous.yaml:16:9: error: faces.text: the font file 'broken.ttf' is not found\n"));
}

TEST_CASE("a font broken inside its tables does no harm, whatever becomes of the quote") {
  const std::string whole = bytesOf(carlito);
  for (const std::string table :
       {"maxp", "glyf", "loca", "hmtx", "hhea", "head", "cmap", "GSUB", "GPOS", "OS/2", "name"}) {
    const std::size_t at = placeOf(whole, table);
    const std::size_t length = numberAt(whole, entryOf(whole, table) + 12);
    for (const int way : {0, 1, 2}) {
      INFO(table << " " << way);
      std::string bad = whole;
      if (way == 0) std::fill_n(bad.begin() + static_cast<std::ptrdiff_t>(at), length, '\xFF');
      if (way == 1)
        std::fill_n(bad.begin() + static_cast<std::ptrdiff_t>(at + length / 2), length - length / 2, '\0');
      if (way == 2)
        for (std::size_t i = 0; i < length; i += 7) bad[at + i] = static_cast<char>(bad[at + i] ^ 0x55);
      Firm firm;
      firm.font(bad);
      const int status = firm.pack();
      INFO(firm.said());
      CHECK((status == 0 || status == 1));
      CHECK(firm.wroteFiles() == (status == 0));
    }
  }
}

TEST_CASE("a font whose maxp counts too few glyphs does no harm") {
  const std::string whole = bytesOf(carlito);
  for (const int count : {0, 2, 50, 100, 300, 2000}) {
    std::string bad = whole;
    const std::size_t at = placeOf(whole, "maxp") + 4;
    bad[at] = static_cast<char>(count >> 8);
    bad[at + 1] = static_cast<char>(count & 255);
    Firm firm;
    firm.font(bad);
    const int status = firm.pack();
    INFO(count << ": " << firm.said());
    CHECK((status == 0 || status == 1));
    CHECK(firm.wroteFiles() == (status == 0));
  }
}
