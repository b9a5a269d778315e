// Picture files of all sorts, whole and damaged.
#include "pdf/images/read_image.h"
#include "pdf_sample.h"
#include "picture_sample.h"

#include <sys/resource.h>
#include <catch2/catch.hpp>

using namespace sample;

namespace {

std::string faultOf(std::string_view bytes) {
  try {
    pdf::readImage(bytes);
    return "";
  } catch (const std::runtime_error& e) {
    return e.what();
  }
}

const std::string damagedPng = "the PNG picture is damaged or cut off";
const std::string damagedJpeg = "the JPEG picture is damaged or cut off";

std::string somePng() {
  std::string pixels;
  for (int i = 0; i < 64 * 64 * 4; ++i) pixels += static_cast<char>(i * i >> 3);
  return makePng(64, 64, PNG_FORMAT_RGBA, pixels);
}

/// In kilobytes, since the program began.
long mostMemory() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return used.ru_maxrss;
}

}  // namespace

TEST_CASE("a PNG with clear places is read into colour and alpha") {
  const Image image =
      pdf::readImage(makePng(2, 1, PNG_FORMAT_RGBA, std::string("\x01\x02\x03\xFF\x04\x05\x06\x80", 8)));
  CHECK(image.width == 2);
  CHECK(image.height == 1);
  CHECK(image.rgb == "\x01\x02\x03\x04\x05\x06");
  CHECK(image.alpha == "\xFF\x80");
}

TEST_CASE("a picture of few colours gets a palette, one of many does not") {
  const Image few = pdf::readImage(makePng(3, 1, PNG_FORMAT_RGB, "abcdefabc"));
  CHECK(few.palette == "abcdef");
  CHECK(few.rgb == "abcdefabc");
  std::string pixels;
  for (int i = 0; i < 257; ++i) pixels += {static_cast<char>(i), static_cast<char>(i >> 8), 'x'};
  CHECK(pdf::readImage(makePng(257, 1, PNG_FORMAT_RGB, pixels)).palette.empty());
  CHECK(pdf::readImage(makePng(256, 1, PNG_FORMAT_RGB, pixels.substr(3))).palette.size() == 768);
}

TEST_CASE("a picture with more rows than asked for is averaged down, and no further") {
  const std::string rows = std::string("\x10\x20\x30\x20\x20\x30", 6) + "\x30\x20\x40\x40\x20\x40";
  const std::string png = makePng(2, 2, PNG_FORMAT_RGB, rows);
  const Image small = pdf::readImage(png, 1);
  CHECK(small.width == 1);
  CHECK(small.height == 1);
  CHECK(small.rgb == "\x28\x20\x38");
  CHECK(pdf::readImage(png, 2).rgb == rows);
  CHECK(pdf::readImage(makePng(3, 3, PNG_FORMAT_GRAY, std::string(9, 'x')), 2).height == 3);
  const Image cut =
      pdf::readImage(makePng(5, 5, PNG_FORMAT_GRAY, std::string(25, 'x')), 2);  // squares of 2 x 2
  CHECK(cut.width == 3);
  CHECK(cut.rgb == std::string(27, 'x'));
}

TEST_CASE("clear pixels lend their neighbours no colour when a picture is averaged down") {
  // Over white: 255 - 0.5 * (255 - 100) = 177.5, as red at half strength.
  const std::string pixels =
      std::string("\x64\0\0\xFF\xFF\xFF\xFF\0", 8) + std::string("\x64\0\0\xFF\0\xFF\0\0", 8);
  const Image small = pdf::readImage(makePng(2, 2, PNG_FORMAT_RGBA, pixels), 1);
  CHECK(small.rgb == std::string("\x64\0\0", 3));
  CHECK(small.alpha == "\x80");
}

TEST_CASE("a grey PNG is read as colours without alpha") {
  const Image image = pdf::readImage(makePng(2, 1, PNG_FORMAT_GRAY, "\x10\x20"));
  CHECK(image.rgb == "\x10\x10\x10\x20\x20\x20");
  CHECK(image.alpha.empty());
}

TEST_CASE("files that are no pictures are refused") {
  for (const std::string bytes : {"", "x", "\x89", "deck.png", "GIF89a", "%PDF-1.7", "\xFF\xD8"})
    CHECK(faultOf(bytes) == "not a PNG or JPEG picture");
}

TEST_CASE("a PNG cut off anywhere is refused") {
  const std::string whole = somePng();
  CHECK(faultOf(whole).empty());
  CHECK(faultOf(whole + "left over").empty());
  for (std::size_t length = 8; length < whole.size(); ++length)
    CHECK(faultOf(whole.substr(0, length)) == damagedPng);
}

TEST_CASE("a PNG with a changed byte never crashes, and never passes when its pixels changed") {
  const std::string whole = somePng();
  const std::size_t pixels = whole.find("IDAT") + 4;
  for (std::size_t i = 8; i < whole.size(); ++i) {
    std::string bad = whole;
    bad[i] = static_cast<char>(bad[i] ^ 0x55);
    const std::string fault = faultOf(bad);
    if (i >= pixels && i + 16 < whole.size()) CHECK(fault == damagedPng);
  }
}

TEST_CASE("a small file that claims a huge picture is refused before it is decoded") {
  const std::string head = "\x89PNG\r\n\x1A\n";
  const std::string huge = head +
                           chunk("IHDR" + word(100'000) + word(100'000) + std::string("\x08\x02\0\0\0", 5)) +
                           chunk("IDAT" + std::string(20, 'x')) + chunk("IEND");
  CHECK(faultOf(huge) == "the picture has 100000 x 100000 pixels; at most 16 million are allowed");
  std::string jpeg = makeJpeg(16, 16, 3, JCS_RGB);
  const std::size_t frame = jpeg.find("\xFF\xC0");
  jpeg.replace(frame + 5, 4, "\xFF\x00\xFF\x00", 4);
  CHECK(faultOf(jpeg) == "the picture has 65280 x 65280 pixels; at most 16 million are allowed");
  CHECK(faultOf(head + chunk("IHDR" + word(0) + word(0) + std::string("\x08\x02\0\0\0", 5)) +
                chunk("IEND")) == damagedPng);
}

TEST_CASE("JPEGs are embedded as they are, without what a camera notes") {
  const Image colour = pdf::readImage(makeJpeg(20, 10, 3, JCS_RGB));
  CHECK(colour.width == 20);
  CHECK(colour.height == 10);
  CHECK_FALSE(colour.isGrey);
  CHECK(colour.rgb.empty());
  CHECK_FALSE(holds(colour.jpeg, "gate code"));
  CHECK(faultOf(colour.jpeg).empty());
  CHECK(pdf::readImage(makeJpeg(20, 10, 1, JCS_GRAYSCALE)).isGrey);

  Document d = document();
  d.pages.back().items.push_back(
      {PlacedImage{{{}, {Dim::mm(20), Dim::mm(10)}}, std::make_shared<Image>(colour)}, artifact});
  const std::string said = run("pdfimages -list %", pdf::write(d)).text;
  CHECK(holds(said, "image      20    10  rgb     3   8  jpeg"));
}

TEST_CASE("JPEGs in CMYK colours are refused") {
  CHECK(faultOf(makeJpeg(16, 16, 4, JCS_CMYK)) == "the JPEG picture is in CMYK colours; save it as RGB");
}

TEST_CASE("a JPEG in more scans than any encoder makes is refused") {
  CHECK(faultOf(makeJpegOfScans(10)).empty());
  CHECK(faultOf(makeJpegOfScans(50)).empty());
  CHECK(faultOf(makeJpegOfScans(51)) ==
        "the JPEG picture comes in more than 50 scans; save it as a baseline JPEG");
}

TEST_CASE("a photograph with far more pixels than paper shows is averaged down, an upright small one kept") {
  const std::string photo = makeJpeg(900, 1200, 3, JCS_RGB);
  const Image small = pdf::readImage(photo, 250);
  CHECK(small.width == 225);
  CHECK(small.height == 300);  // a fourth: a fifth would be 240, fewer than the 250 asked for
  CHECK(small.rgb.empty());
  CHECK(small.jpeg.size() < 100'000);
  CHECK(pixelsOf(small.jpeg).size() == 225 * 300 * 3);
  CHECK(pdf::readImage(photo, 601).height == 1200);
  CHECK(pdf::readImage(photo, 0).height == 1200);
  const Image grey = pdf::readImage(makeJpeg(900, 1200, 1, JCS_GRAYSCALE), 250);
  CHECK(grey.isGrey);
  CHECK(grey.height == 300);
}

TEST_CASE("notes in a PNG take no memory and do not show") {
  const std::string bomb = chunk("zTXtnote" + std::string(2, '\0') + deflated(std::string(7'000'000, 'x')));
  std::string notes;
  for (int i = 0; i < 100; ++i) notes += bomb;
  const auto line = std::string("\0\1\2\3", 4);
  const long before = mostMemory();
  const Image image = pdf::readImage(craftedPng(1, 1, {"\x08\2\0", 3}, notes, line));
  CHECK(image.rgb == "\1\2\3");
  // A note that claims two gigabytes, of which the file holds one byte.
  const std::string head = craftedPng(1, 1, {"\x08\2\0", 3}, "", line).substr(0, 33);
  CHECK(faultOf(head + word(0x7FFFFFFF) + "tEXta") == damagedPng);
  CHECK(mostMemory() - before < 200'000);
}

TEST_CASE("a JPEG cut off anywhere is refused") {
  const std::string whole = makeJpeg(64, 64, 3, JCS_RGB);
  CHECK(faultOf(whole).empty());
  for (std::size_t length = 3; length < whole.size(); ++length)
    CHECK(faultOf(whole.substr(0, length)) == damagedJpeg);
}

TEST_CASE("a JPEG with a changed byte never crashes") {
  const std::string whole = makeJpeg(32, 32, 3, JCS_RGB);
  for (std::size_t i = 3; i < whole.size(); ++i) {
    std::string bad = whole;
    bad[i] = static_cast<char>(bad[i] ^ 0x55);
    faultOf(bad);
  }
  CHECK(faultOf("\xFF\xD8\xFF" + std::string(500, '\0')) == damagedJpeg);
}
