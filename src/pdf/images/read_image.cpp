#include "pdf/images/read_image.h"

#include "pdf/images/jpeg.h"
#include "pdf/images/pixels.h"
#include "pdf/images/shrink.h"
#include "pdf/objects/deflate.h"

#include <png.h>

#include <cstdint>
#include <cstring>
#include <map>
#include <stdexcept>

namespace pdf {
namespace {

constexpr std::string_view pngSignature = "\x89PNG\r\n\x1A\n";

/// The chunks that say how the picture looks: PNG Specification (Third Edition), 5.3. All others can be made
/// to unpack to gigabytes. Empty for a file that does not reach its end, which libpng would not miss.
std::string withoutNotes(std::string_view png) {
  std::string out(png.substr(0, pngSignature.size()));
  for (std::size_t at = pngSignature.size(); at + 12 <= png.size();) {
    std::size_t length = 12;  // with length, type and checksum
    for (std::size_t i = 0, shift = 24; i < 4; ++i, shift -= 8)
      length += std::size_t{static_cast<unsigned char>(png[at + i])} << shift;
    if (length > png.size() - at) return {};
    const std::string_view type = png.substr(at + 4, 4);
    const bool isCritical = type[0] >= 'A' && type[0] <= 'Z';
    if (isCritical || type == "tRNS" || type == "gAMA" || type == "cHRM" || type == "sRGB" || type == "iCCP")
      out += png.substr(at, length);
    if (type == "IEND") return out;
    at += length;
  }
  return {};
}

struct PngReader {
  png_image image{};
  PngReader() { image.version = PNG_IMAGE_VERSION; }
  ~PngReader() { png_image_free(&image); }
  PngReader(const PngReader&) = delete;
  PngReader& operator=(const PngReader&) = delete;
};

/// Deflates the samples. Logos have few colours: with a palette they take half the room.
void pack(typeset::Image& image) {
  constexpr std::size_t most = 256;
  std::map<std::uint32_t, char> places;
  std::string samples(image.rgb.size() / 3, '\0'), palette;
  const char* rgb = image.rgb.data();
  std::uint32_t last = 0xFFFFFFFF;  // no colour
  for (std::size_t i = 0; i < samples.size() && places.size() <= most; ++i, rgb += 3) {
    std::uint32_t colour = 0;
    std::memcpy(&colour, rgb, 3);
    if (colour == last) {  // as most are
      samples[i] = samples[i - 1];
      continue;
    }
    last = colour;
    const auto [place, isNew] = places.emplace(colour, static_cast<char>(places.size()));
    if (isNew) palette.append(rgb, 3);
    samples[i] = place->second;
  }
  if (places.size() <= most) image.palette = palette;
  image.packedRgb = deflated(image.palette.empty() ? image.rgb : samples, Effort::Thorough);
  if (!image.alpha.empty()) image.packedAlpha = deflated(image.alpha, Effort::Thorough);
}

typeset::Image readPng(std::string_view file, std::size_t rows) {
  const auto damaged = [] { return std::runtime_error("the PNG picture is damaged or cut off"); };
  const std::string bytes = withoutNotes(file);
  if (bytes.empty()) throw damaged();
  PngReader reader;
  png_image& png = reader.image;
  if (!png_image_begin_read_from_memory(&png, bytes.data(), bytes.size())) throw damaged();
  checkPixels(png.width, png.height);

  const bool hasAlpha = (png.format & PNG_FORMAT_FLAG_ALPHA) != 0;
  png.format = PNG_FORMAT_RGBA;
  png.flags |= PNG_IMAGE_FLAG_16BIT_sRGB;  // else 16-bit pictures come out too bright
  Pixels pixels{png.width, png.height, std::string(PNG_IMAGE_SIZE(png), '\0')};
  if (!png_image_finish_read(&png, nullptr, pixels.rgba.data(), 0, nullptr)) throw damaged();
  pixels = shrink(std::move(pixels), rows);

  typeset::Image image;
  image.width = static_cast<int>(pixels.width);
  image.height = static_cast<int>(pixels.height);
  const std::size_t count = pixels.width * pixels.height;
  image.rgb.resize(3 * count);
  if (hasAlpha) image.alpha.resize(count);
  const char* from = pixels.rgba.data();
  for (std::size_t i = 0; i < count; ++i, from += 4) {
    std::memcpy(image.rgb.data() + 3 * i, from, 3);
    if (hasAlpha) image.alpha[i] = from[3];
  }
  pack(image);
  return image;
}

}  // namespace

typeset::Image readImage(std::string_view bytes, std::size_t rows) {
  if (bytes.substr(0, pngSignature.size()) == pngSignature) return readPng(bytes, rows);
  if (bytes.substr(0, 3) == "\xFF\xD8\xFF") return readJpeg(bytes, rows);
  throw std::runtime_error("not a PNG or JPEG picture");
}

}  // namespace pdf
