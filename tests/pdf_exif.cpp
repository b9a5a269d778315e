// Photographs that the camera held on their side.
#include "pdf/images/exif.h"
#include "pdf/images/read_image.h"
#include "picture_sample.h"

#include <catch2/catch.hpp>

namespace {

/// A picture with a note of how it was held, in either order of bytes.
std::string heldAs(int orientation, bool isLittle = false) {
  const char o = static_cast<char>(orientation);
  using namespace std::string_literals;
  const std::string tiff = isLittle
                               ? "II\x2a\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0"s + o + "\0\0\0\0\0\0\0"s
                               : "MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0"s + o + "\0\0\0\0\0\0"s;
  const std::string body = "Exif\0\0"s + tiff;
  const std::size_t length = body.size() + 2;
  const std::string whole = sample::makeJpeg(6, 4, 3, JCS_RGB);
  return whole.substr(0, 2) + "\xFF\xE1"s + static_cast<char>(length >> 8) +
         static_cast<char>(length & 0xFF) + body + whole.substr(2);
}

/// Letters for pixels, three alike for each.
typeset::Image picture(int width, int height, const std::string& letters) {
  typeset::Image image;
  image.width = width;
  image.height = height;
  for (const char c : letters) image.rgb += std::string(3, c);
  return image;
}

std::string seen(int orientation) {
  typeset::Image image = picture(3, 2,
                                 "abc"
                                 "def");
  pdf::makeUpright(image, orientation);
  std::string rows;
  for (int y = 0; y < image.height; ++y) {
    if (y > 0) rows += '/';
    for (int x = 0; x < image.width; ++x)
      rows += image.rgb[static_cast<std::size_t>(y * image.width + x) * 3];
  }
  return rows;
}

}  // namespace

TEST_CASE("a picture is turned and mirrored to be seen upright") {
  // Exif 2.3 (CIPA DC-008, 2012), 4.6.4, Orientation: what the first row and the first column are. From
  // memory.
  CHECK(seen(1) == "abc/def");
  CHECK(seen(2) == "cba/fed");   // the first column is the right side
  CHECK(seen(3) == "fed/cba");   // bottom, right
  CHECK(seen(4) == "def/abc");   // bottom, left
  CHECK(seen(5) == "ad/be/cf");  // the first row is the left side
  CHECK(seen(6) == "da/eb/fc");  // the first row is the right side, the first column the top
  CHECK(seen(7) == "fc/eb/da");
  CHECK(seen(8) == "cf/be/ad");  // the first row is the left side, the first column the bottom
}

TEST_CASE("the note of a camera is read in both orders of bytes and doubted when it is damaged") {
  for (int orientation = 1; orientation <= 8; ++orientation) {
    CHECK(pdf::orientationOf(heldAs(orientation)) == orientation);
    CHECK(pdf::orientationOf(heldAs(orientation, true)) == orientation);
  }
  CHECK(pdf::orientationOf(heldAs(9)) == 1);
  CHECK(pdf::orientationOf(sample::makeJpeg(6, 4, 3, JCS_RGB)) == 1);
  const std::string whole = heldAs(6);
  for (std::size_t length = 0; length < 60; ++length) {
    const int read = pdf::orientationOf(whole.substr(0, length));
    CHECK((read == 1 || read == 6));
  }
}

TEST_CASE("a photograph on its side comes out upright, an upright one as the file it was") {
  const typeset::Image turned = pdf::readImage(heldAs(6));
  CHECK(turned.width == 4);
  CHECK(turned.height == 6);
  CHECK(turned.rgb.empty());
  // Within what coding anew takes off: 6 x 4 pixels as they came, seen from their right side.
  const std::string before = sample::pixelsOf(heldAs(6)), after = sample::pixelsOf(turned.jpeg);
  REQUIRE(after.size() == before.size());
  int most = 0;
  for (std::size_t y = 0; y < 6; ++y)
    for (std::size_t i = 0; i < 4 * 3; ++i) {
      const std::size_t x = i / 3, from = ((3 - x) * 6 + y) * 3 + i % 3;
      most = std::max(most, std::abs(static_cast<unsigned char>(after[y * 12 + i]) -
                                     static_cast<unsigned char>(before[from])));
    }
  CHECK(most < 40);
  const typeset::Image upright = pdf::readImage(heldAs(1));
  CHECK(upright.width == 6);
  CHECK_FALSE(upright.jpeg.empty());
  CHECK(upright.rgb.empty());
}

TEST_CASE("a photograph on its side takes no more room in a document than an upright one") {
  std::string photo = sample::makeJpeg(1600, 1200, 3, JCS_RGB);
  const std::string note = heldAs(6).substr(2, heldAs(6).find("\xFF\xE0", 4, 2) - 2);
  photo.insert(2, note);
  const typeset::Image image = pdf::readImage(photo, 250);
  CHECK(image.width == 200);
  CHECK(image.height == 267);  // a sixth of the 1600 that are its height when turned
  CHECK(image.jpeg.size() < 150'000);
}
