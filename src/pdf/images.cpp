// Image objects: ISO 32000-1:2008, 8.9.
#include "pdf/images.h"

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

Object embed(File& file, const typeset::Image& image) {
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
  if (!isOpaque)
    mask = "/SMask " + reference(file.addStream(entries + "/ColorSpace /DeviceGray\n", image.alpha)) + "\n";
  if (image.jpeg.empty()) return file.addStream(entries + "/ColorSpace /DeviceRGB\n" + mask, image.rgb);
  const char* colours = image.isGrey ? "/ColorSpace /DeviceGray\n" : "/ColorSpace /DeviceRGB\n";
  return file.addStream(entries + colours + mask + "/Filter /DCTDecode\n", image.jpeg, Packing::AsIs);
}

}  // namespace

std::vector<Object> embedImages(File& file, const typeset::Document& document) {
  std::vector<Object> objects(document.images.size());
  for (const typeset::Page& page : document.pages)
    for (const typeset::Item& item : page.items)
      if (const auto* placed = std::get_if<typeset::PlacedImage>(&item.what)) {
        if (placed->image >= objects.size() || !document.images[placed->image])
          throw std::logic_error("internal error: unknown picture on a page");
        if (!objects[placed->image]) objects[placed->image] = embed(file, *document.images[placed->image]);
      }
  return objects;
}

}  // namespace pdf
