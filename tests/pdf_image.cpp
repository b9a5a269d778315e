// Picture files of all sorts, whole and damaged.
#include "pdf_sample.h"

#include <png.h>
#include <zlib.h>
#include <catch2/catch.hpp>

#include <jpeglib.h>

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

std::string makePng(std::uint32_t width, std::uint32_t height, std::uint32_t format,
                    const std::string& pixels) {
  png_image png{};
  png.version = PNG_IMAGE_VERSION;
  png.width = width;
  png.height = height;
  png.format = format;
  png_alloc_size_t length = 0;
  png_image_write_to_memory(&png, nullptr, &length, 0, pixels.data(), 0, nullptr);
  std::string bytes(length, '\0');
  png_image_write_to_memory(&png, bytes.data(), &length, 0, pixels.data(), 0, nullptr);
  return bytes;
}

std::string word(unsigned long n) {
  return {static_cast<char>(n >> 24), static_cast<char>(n >> 16), static_cast<char>(n >> 8),
          static_cast<char>(n)};
}

std::string chunk(const std::string& typeAndData) {
  const auto* data = reinterpret_cast<const Bytef*>(typeAndData.data());
  return word(typeAndData.size() - 4) + typeAndData +
         word(crc32(0, data, static_cast<uInt>(typeAndData.size())));
}

std::string makeJpeg(int width, int height, int parts, J_COLOR_SPACE colours) {
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_compress(&jpeg);
  unsigned char* data = nullptr;
  unsigned long length = 0;
  jpeg_mem_dest(&jpeg, &data, &length);
  jpeg.image_width = static_cast<JDIMENSION>(width);
  jpeg.image_height = static_cast<JDIMENSION>(height);
  jpeg.input_components = parts;
  jpeg.in_color_space = colours;
  jpeg_set_defaults(&jpeg);
  jpeg_start_compress(&jpeg, TRUE);
  const std::string gps = "Exif the gate code is 4711";
  jpeg_write_marker(&jpeg, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(gps.data()),
                    static_cast<unsigned>(gps.size()));
  for (int y = 0; y < height; ++y) {
    std::string line(static_cast<std::size_t>(width * parts), '\0');
    for (std::size_t i = 0; i < line.size(); ++i)
      line[i] = static_cast<char>(i * 37 + static_cast<std::size_t>(y) * 11);
    auto* row = reinterpret_cast<JSAMPROW>(line.data());
    jpeg_write_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_compress(&jpeg);
  std::string bytes(reinterpret_cast<char*>(data), length);
  jpeg_destroy_compress(&jpeg);
  free(data);
  return bytes;
}

const std::string damagedPng = "the PNG picture is damaged or cut off";
const std::string damagedJpeg = "the JPEG picture is damaged or cut off";

std::string somePng() {
  std::string pixels;
  for (int i = 0; i < 64 * 64 * 4; ++i) pixels += static_cast<char>(i * i >> 3);
  return makePng(64, 64, PNG_FORMAT_RGBA, pixels);
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
  d.images.push_back(std::make_shared<Image>(colour));
  d.pages.back().items.push_back({PlacedImage{{{}, {Dim::mm(20), Dim::mm(10)}}, 0}, artifact});
  const std::string said = run("pdfimages -list %", pdf::write(d)).text;
  CHECK(holds(said, "image      20    10  rgb     3   8  jpeg"));
}

TEST_CASE("JPEGs in CMYK colours are refused") {
  CHECK(faultOf(makeJpeg(16, 16, 4, JCS_CMYK)) == "the JPEG picture is in CMYK colours; save it as RGB");
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
