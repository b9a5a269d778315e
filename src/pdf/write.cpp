// Pages in, the bytes of a PDF file out.
#include "pdf/write.h"

#include "pdf/content.h"
#include "pdf/images/embed_images.h"
#include "pdf/metadata.h"
#include "pdf/navigation.h"

#include <stdexcept>

namespace pdf {
namespace {

std::string resources(const std::vector<EmbeddedFont>& fonts, const std::vector<EmbeddedImage>& images) {
  std::string out = "/Font <<";
  for (std::size_t i = 0; i < fonts.size(); ++i)
    if (fonts[i].object) out += "/F" + std::to_string(i) + " " + reference(fonts[i].object) + " ";
  out += ">>\n/XObject <<";
  for (const auto& [image, object] : images)
    out += "/" + nameOf(image, images) + " " + reference(object) + " ";
  return out + ">>\n";
}

void checkSize(typeset::Size size) {
  for (const typeset::Dim side : {size.w, size.h})  // ISO 32000-1:2008, Annex C
    if (side < typeset::Dim::pt(3) || side > typeset::Dim::pt(14'400))
      throw std::logic_error("internal error: a page has no usable size");
}

}  // namespace

std::string write(const typeset::Document& document, Variant variant) {
  if (document.pages.empty()) throw std::logic_error("internal error: a document without pages");
  File file;
  const std::vector<EmbeddedFont> fonts = embedFonts(file, document, variant);
  const std::vector<EmbeddedImage> images = embedImages(file, document, variant);
  const Object shared = file.addDictionary(resources(fonts, images));

  Structure structure(document);
  std::vector<Object> pages;
  for (std::size_t page = 0; page < document.pages.size(); ++page) {
    checkSize(document.pages[page].size);
    File::PageParts parts;
    parts.size = document.pages[page].size;
    parts.content = drawPage(document, page, fonts, images, structure);
    parts.resources = shared;
    parts.annotations = addLinks(file, document, page, structure);
    parts.structParents = static_cast<int>(page);
    pages.push_back(file.addPage(parts));
  }

  std::string catalogue =
      "/MarkInfo <</Marked true>>\n/StructTreeRoot " + reference(structure.write(file, pages)) + "\n";
  if (const auto outline = addOutline(file, document, pages))
    catalogue += "/Outlines " + reference(*outline) + "\n";
  catalogue += addMetadata(file, document, variant);
  file.setCatalogue(std::move(catalogue));
  return file.save(variant == Variant::A1b ? Objects::Plain : Objects::Packed);
}

}  // namespace pdf
