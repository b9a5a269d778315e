#include "figures_pen.h"

#include <unistd.h>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

using namespace figures_test;
using typeset::Dim;
using typeset::Path;
using typeset::Step;

namespace {

const std::string signs = std::string(SOURCE_DIR) + "/content/signs";

/// A folder with one sign in it, gone after the test.
struct SignFile {
  std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("signs" + std::to_string(getpid()));
  explicit SignFile(const std::string& text) {
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "x.svg") << text;
  }
  ~SignFile() { std::filesystem::remove_all(folder); }

  typeset::Drawing read(Dim height = Dim::mm(10)) const {
    return *drawings::sign(folder.string(), "x", height);
  }
  std::string message() const {
    try {
      read();
    } catch (const std::runtime_error& e) {
      const std::string what = e.what(), file = (folder / "x.svg").string();
      return what.rfind(file, 0) == 0 ? what.substr(file.size()) : what;
    }
    return "";
  }
};

std::string svg(const std::string& inner) {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 100\">\n" + inner + "\n</svg>\n";
}

const Path& onlyPath(const typeset::Drawing& d) {
  REQUIRE(d.items.size() == 1);
  return std::get<Path>(d.items[0].what);
}

}  // namespace

TEST_CASE("every sign we keep can be drawn and says what it is") {
  std::size_t n = 0;
  for (const auto& entry : std::filesystem::directory_iterator(signs)) {
    ++n;
    INFO(entry.path());
    REQUIRE(entry.path().extension() == ".svg");
    const auto d = drawings::sign(signs, entry.path().stem().string(), Dim::mm(10));
    REQUIRE(d);
    CHECK(!d->items.empty());
    CHECK(!d->alt.empty());
    CHECK(d->size.h == Dim::mm(10));
  }
  CHECK(n >= 30);
}

TEST_CASE("the signs the crew's and the customer's sheets need are there") {
  for (const auto* name :
       {"must-boots", "must-gloves", "must-eyes", "must-ears",     "must-mask", "must-sleeves", "no-flame",
        "no-smoking", "warn",        "warn-fire", "warn-hot",      "warn-bolt", "warn-slip",    "warn-edge",
        "safe-aid",   "safe-phone",  "safe-meet", "safe-hospital", "fire-ext",  "sds",          "alert",
        "ghs02",      "ghs05",       "ghs07",     "ghs08",         "ghs09",     "care-coat",    "care-walk",
        "care-chair", "care-pot",    "care-wash", "care-brush"}) {
    INFO(name);
    CHECK(drawings::sign(signs, name, Dim::mm(10)));
  }
}

TEST_CASE("an unknown sign is nothing") {
  CHECK_FALSE(drawings::sign(signs, "must-fly", Dim::mm(10)));
  CHECK_FALSE(drawings::sign(signs, "../signs/warn", Dim::mm(10)));
  CHECK_FALSE(drawings::sign(signs, "", Dim::mm(10)));
}

TEST_CASE("a sign is as wide as its viewBox asks for") {
  const SignFile file(
      "<svg viewBox=\"10 0 20 40\"><path d=\"M10 0 L30 40\" fill=\"none\" stroke=\"#102030\"/></svg>");
  const auto d = file.read(Dim::mm(16));
  CHECK(d.size.w == Dim::mm(8));
  const auto& p = onlyPath(d);
  CHECK(p.steps[0].to.x == Dim{});
  CHECK(p.steps[1].to.x == Dim::mm(8));
  CHECK(p.steps[1].to.y == Dim::mm(16));
  CHECK(!p.fill);
  REQUIRE(p.stroke);
  CHECK(p.stroke->colour == model::Colour{0x10, 0x20, 0x30});
  CHECK(p.stroke->width == Dim{14'400});  // 1 of 40 units of 16 mm
}

TEST_CASE("small letters in path data count from where the pen is") {
  const auto a = SignFile(svg("<path d=\"M10 20 l10,0v10-5h-10 z m5 5 l1 1\"/>")).read(Dim::mm(100));
  const auto& s = onlyPath(a).steps;
  const auto at = [](int x, int y) { return typeset::Point{Dim::mm(x), Dim::mm(y)}; };
  const typeset::Point want[] = {at(10, 20), at(20, 20), at(20, 30), at(20, 25),
                                 at(10, 25), {},         at(15, 25), at(16, 26)};
  REQUIRE(s.size() == 8);
  for (std::size_t i = 0; i < 8; ++i) {
    CHECK(s[i].to.x == want[i].x);
    CHECK(s[i].to.y == want[i].y);
  }
  CHECK(s[5].kind == Step::Kind::Close);
}

TEST_CASE("an arc of a quarter turn lies on its circle") {
  const auto d = SignFile(svg("<path d=\"M90 50 A40 40 0 0 1 50 90\"/>")).read(Dim::mm(100));
  const auto& s = onlyPath(d).steps;
  REQUIRE(s.size() == 2);
  REQUIRE(s[1].kind == Step::Kind::Curve);
  // Controls of a quarter circle lie 4/3 (root 2 - 1) = 0.5523 of the radius from its ends.
  CHECK(std::abs(s[1].a.y.raw - Dim::mm(50).raw - Dim::mm(40).raw * 5523 / 10'000) < 200);
  CHECK(std::abs(s[1].a.x.raw - Dim::mm(90).raw) < 200);
  CHECK(std::abs(s[1].b.x.raw - Dim::mm(50).raw - Dim::mm(40).raw * 5523 / 10'000) < 200);
  CHECK(s[1].to.y == Dim::mm(90));
}

TEST_CASE("arcs take the long way and the other way round when told") {
  const auto curves = [](const std::string& flags) {
    const auto d = SignFile(svg("<path d=\"M90 50 A40 40 0 " + flags + " 50 90\"/>")).read(Dim::mm(100));
    return onlyPath(d).steps;
  };
  CHECK(curves("01").size() == 2);
  CHECK(curves("11").size() == 4);  // three quarter turns round (90, 90)
  CHECK(curves("00").size() == 2);
  const auto far = curves("1 0");  // round (50, 50), through (50, 10) and (10, 50)
  REQUIRE(far.size() == 4);
  CHECK(std::abs(far[1].to.y.raw - Dim::mm(10).raw) < 200);
  CHECK(std::abs(far[2].to.x.raw - Dim::mm(10).raw) < 200);
}

TEST_CASE("elements take over fill and stroke from the group around them") {
  const auto d = SignFile(svg("<g fill=\"#ff0000\"><!-- red --><circle cx=\"5\" cy=\"5\" r=\"2\"/>"
                              "<rect x=\"1\" y=\"1\" width=\"4\" height=\"4\" fill=\"none\"/></g>"))
                     .read();
  CHECK(onlyPath(d).fill == model::Colour{255, 0, 0});  // the rectangle is neither filled nor stroked
}

TEST_CASE("what a sign may not use is refused with its line") {
  const auto message = [](const std::string& inner) { return SignFile(svg(inner)).message(); };
  CHECK(message("<text>hello</text>") == ":2: 'text' is not an element a sign may use");
  CHECK(message("<path d=\"M0 0 L9 9\" transform=\"rotate(3)\"/>") ==
        ":2: 'path' has the attribute 'transform', which a sign may not use");
  CHECK(message("<path d=\"M0 0 T9 9\"/>") == ":2: a path has the command 'T'");
  CHECK(message("<path d=\"L9 9\"/>") == ":2: a path does not begin with M");
  CHECK(message("<path d=\"M0 0 L9\"/>") == ":2: a number is missing in 'M0 0 L9'");
  CHECK(message("<path d=\"M0 0 L9 1e3\"/>") == ":2: '1e' is not a number a sign may use");
  CHECK(message("<path d=\"M0 0 A9 4 30 0 1 5 5\"/>") == ":2: an arc is tilted");
  CHECK(message("<circle cx=\"1\" cy=\"2\"/>") == ":2: 'circle' lacks 'r'");
  CHECK(message("<rect width=\"5\" height=\"5\" fill=\"red\"/>") ==
        ":2: 'red' is not a colour; write '#rrggbb' in small letters, or 'none'");
  CHECK(message("<line x1=\"0\" y1=\"0\" x2=\"9\" y2=\"9\" stroke=\"#000000\" stroke-linecap=\"round\"/>") ==
        ":2: caps and joins are not both round or both plain");
  CHECK(message("<g>\n<path d='M0 0'>") == ":4: 'svg' closes 'path'");
  CHECK(message("<path d=\"M0 0\" d=\"M1 1\"/>") == ":2: 'd' stands twice");
  CHECK(message("&amp;") == ":2: '&' is not allowed here");
}

TEST_CASE("numbers that no drawing needs are refused before they overflow") {
  const auto message = [](const std::string& inner) { return SignFile(svg(inner)).message(); };
  CHECK(message("<path d=\"M99999999999999999999 0\"/>") == ":2: '99999999' is not a number a sign may use");
  CHECK(message("<path d=\"M0 0 L1000000 0\"/>") == ":2: '1000000 ' is not a number a sign may use");
  CHECK(SignFile("<svg viewBox=\"0 0 9 99999\">\n<path d=\"M0 0 l999999 0 h999999 h999999\"/></svg>")
            .message() == ":2: a path runs too far away");
  CHECK(message("<path d=\"M0 0 A0.000001 9 0 0 1 9 9\"/>") ==
        ":2: an arc's radius is too small for its ends");
  CHECK(message("<path d=\"M0 999999 v999999\"/>") == ": its numbers are too large for its viewBox");
  CHECK(SignFile("<svg viewBox=\"0 0 999999 0.000001\"><path d=\"M0 0\"/></svg>").message() ==
        ": its numbers are too large for its viewBox");
}

TEST_CASE("an arc that is next to nothing of its circle is a line") {
  const auto d = SignFile(svg("<path d=\"M0 0 A9000 9000 0 0 1 0.000001 0\"/>")).read(Dim::mm(100));
  const auto& s = onlyPath(d).steps;
  REQUIRE(s.size() == 2);
  CHECK(s[1].kind == Step::Kind::Line);
}

TEST_CASE("a file that is no drawing is refused") {
  CHECK(SignFile("").message() == ":1: there is no drawing in it");
  CHECK(SignFile("<html></html>").message() == ":1: 'html' is not a drawing");
  CHECK(SignFile("<svg viewBox=\"0 0 1 1\">").message() == ":1: the file breaks off");
  CHECK(SignFile("<svg></svg>").message() == ":1: 'svg' lacks 'viewBox'");
  CHECK(SignFile("<svg viewBox=\"0 0 0 1\"></svg>").message() == ":1: '0 0 0 1' is not a viewBox");
  CHECK(SignFile("<svg viewBox=\"0 0 1 1\"/><svg/>").message() == ":1: something follows the drawing");
  CHECK(SignFile("\x89PNG\r\n").message() == ":1: '<' is missing");
}

TEST_CASE("the diamonds of a data sheet stand in a row above their words") {
  const auto d = drawings::hazardDiamonds({"GHS02", "GHS08"}, figures_test::metric().pen(), Dim::mm(40));
  CHECK(d.alt == "Hazard diamonds of the data sheet: flammable, serious danger to health.");
  CHECK(d.size.w == Dim::mm(40));
  CHECK(d.size.h > Dim::mm(12) + Dim::pt(10));
  CHECK(drawings::hazardDiamonds({}, figures_test::metric().pen(), Dim::mm(40)).items.empty());
}

TEST_CASE("a diamond nobody drew is an empty one with its code, and four make two rows") {
  const auto d = drawings::hazardDiamonds({"GHS06", "GHS07", "GHS08", "GHS09"}, figures_test::metric().pen(),
                                          Dim::mm(32));
  CHECK(d.alt.find("GHS06, harmful") != std::string::npos);
  Dim lowest;  // (32 - 2 * 2) / 3 = 9.33 mm each: two rows are 9.33 * 2 + 2 = 20.67 mm
  for (const auto& item : d.items)
    if (const auto* p = std::get_if<Path>(&item.what))
      for (const auto& step : p->steps) lowest = std::max(lowest, step.to.y);
  CHECK(lowest > Dim::mm(19));
  CHECK(lowest < Dim::mm(21));
}
