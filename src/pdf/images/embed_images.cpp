// Image objects: ISO 32000-1:2008, 8.9.
#include "pdf/images/embed_images.h"

#include "pdf/objects/notation.h"

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

/// The picture laid on white, rounded to the nearest shade.
std::string onWhite(const typeset::Image& image) {
  std::string out = image.rgb;
  for (std::size_t i = 0; i < out.size(); ++i) {
    const int alpha = static_cast<unsigned char>(image.alpha[i / 3]);
    const int shade = static_cast<unsigned char>(out[i]);
    out[i] = static_cast<char>((shade * alpha + 255 * (255 - alpha) + 127) / 255);
  }
  return out;
}

/// Samples as a stream; 'packed' is the same deflated beforehand, or empty.
Object addSamples(File& file, const std::string& entries, const std::string& samples,
                  const std::string& packed) {
  if (packed.empty()) return file.addStream(entries, samples);
  return file.addStream(entries, packed, Packing::Deflated);
}

std::string colourSpace(const typeset::Image& image) {
  if (image.palette.empty()) return "/DeviceRGB";
  return "[/Indexed /DeviceRGB " + std::to_string(image.palette.size() / 3 - 1) + " " +
         literal(image.palette) + "]";
}

Object embed(File& file, const typeset::Image& image, Variant variant) {
  if (image.width <= 0 || image.height <= 0) throw std::logic_error("internal error: an empty picture");
  const auto pixels = static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height);
  const bool hasRightSize = (!image.jpeg.empty() || image.rgb.size() == 3 * pixels) &&
                            (image.alpha.empty() || image.alpha.size() == pixels);
  if (!hasRightSize) throw std::logic_error("internal error: a picture's pixels do not fill it");

  const std::string entries = "/Type /XObject\n/Subtype /Image\n/Width " + std::to_string(image.width) +
                              "\n/Height " + std::to_string(image.height) + "\n/BitsPerComponent 8\n";
  std::string mask;
  const bool isOpaque =
      std::all_of(image.alpha.begin(), image.alpha.end(), [](char a) { return a == '\xFF'; });
  if (!isOpaque && variant == Variant::A1b) {  // ISO 19005-1:2005, 6.4: no soft masks
    if (!image.jpeg.empty()) throw std::logic_error("internal error: a JPEG picture with clear places");
    return file.addStream(entries + "/ColorSpace /DeviceRGB\n", onWhite(image));
  }
  if (!isOpaque)
    mask =
        "/SMask " +
        reference(addSamples(file, entries + "/ColorSpace /DeviceGray\n", image.alpha, image.packedAlpha)) +
        "\n";
  if (image.jpeg.empty())
    return addSamples(file, entries + "/ColorSpace " + colourSpace(image) + "\n" + mask, image.rgb,
                      image.packedRgb);
  const char* colours = image.isGrey ? "/ColorSpace /DeviceGray\n" : "/ColorSpace /DeviceRGB\n";
  return file.addStream(entries + colours + mask + "/Filter /DCTDecode\n", image.jpeg, Packing::AsIs);
}

auto find(const typeset::Image* image, const std::vector<EmbeddedImage>& images) {
  return std::find_if(images.begin(), images.end(), [&](const auto& e) { return e.image == image; });
}

}  // namespace

std::vector<EmbeddedImage> embedImages(File& file, const typeset::Document& document, Variant variant) {
  std::vector<EmbeddedImage> images;
  for (const typeset::Page& page : document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* placed = std::get_if<typeset::PlacedImage>(&item.what)) {
        if (!placed->image) throw std::logic_error("internal error: no picture in its place on a page");
        if (find(placed->image.get(), images) == images.end())
          images.push_back({placed->image.get(), embed(file, *placed->image, variant)});
      }
  return images;
}

std::string nameOf(const typeset::Image* image, const std::vector<EmbeddedImage>& images) {
  const auto found = find(image, images);
  if (found == images.end()) throw std::logic_error("internal error: unknown picture on a page");
  return "I" + std::to_string(found - images.begin());
}

}  // namespace pdf
