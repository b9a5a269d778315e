// Picture files into pixels (PNG) or checked data to embed as it is (JPEG).
#include "pdf/write.h"

#include "pdf/file.h"
#include "pdf/jpeg.h"
#include "pdf/pixels.h"

#include <png.h>

#include <stdexcept>

namespace pdf {
namespace {

constexpr std::string_view pngSignature = "\x89PNG\r\n\x1A\n";

/// The simple libpng reader stops after the pixels, so a file that lacks its end is found here: PNG
/// Specification (Third Edition), 5.3.
bool reachesEnd(std::string_view png) {
  for (std::size_t at = pngSignature.size(); at + 12 <= png.size();) {
    std::size_t length = 0;
    for (std::size_t i = 0; i < 4; ++i) length = length << 8 | static_cast<unsigned char>(png[at + i]);
    if (png.substr(at + 4, 4) == "IEND") return true;
    at += 12 + length;
  }
  return false;
}

struct PngReader {
  png_image image{};
  PngReader() { image.version = PNG_IMAGE_VERSION; }
  ~PngReader() { png_image_free(&image); }
  PngReader(const PngReader&) = delete;
  PngReader& operator=(const PngReader&) = delete;
};

typeset::Image readPng(std::string_view bytes) {
  const auto damaged = [] { return std::runtime_error("the PNG picture is damaged or cut off"); };
  PngReader reader;
  png_image& png = reader.image;
  if (!png_image_begin_read_from_memory(&png, bytes.data(), bytes.size())) throw damaged();
  checkPixels(png.width, png.height);
  if (!reachesEnd(bytes)) throw damaged();

  const bool hasAlpha = (png.format & PNG_FORMAT_FLAG_ALPHA) != 0;
  png.format = hasAlpha ? PNG_FORMAT_RGBA : PNG_FORMAT_RGB;
  png.flags |= PNG_IMAGE_FLAG_16BIT_sRGB;  // else 16-bit pictures come out too bright
  std::string pixels(PNG_IMAGE_SIZE(png), '\0');
  if (!png_image_finish_read(&png, nullptr, pixels.data(), 0, nullptr)) throw damaged();

  typeset::Image image;
  image.width = static_cast<int>(png.width);
  image.height = static_cast<int>(png.height);
  if (!hasAlpha) {
    image.rgb = std::move(pixels);
    image.packedRgb = deflated(image.rgb);
    return image;
  }
  image.rgb.reserve(pixels.size() / 4 * 3);
  image.alpha.reserve(pixels.size() / 4);
  for (std::size_t i = 0; i < pixels.size(); i += 4) {
    image.rgb.append(pixels, i, 3);
    image.alpha += pixels[i + 3];
  }
  image.packedRgb = deflated(image.rgb);
  image.packedAlpha = deflated(image.alpha);
  return image;
}

}  // namespace

typeset::Image readImage(std::string_view bytes) {
  if (bytes.substr(0, pngSignature.size()) == pngSignature) return readPng(bytes);
  if (bytes.substr(0, 3) == "\xFF\xD8\xFF") return readJpeg(bytes);
  throw std::runtime_error("not a PNG or JPEG picture");
}

}  // namespace pdf
