#include "typeset/dump.h"

#include "typeset/extent.h"
#include "typeset/face.h"
#include "typeset/roles.h"

namespace typeset {
namespace {

/// Points with two decimals.
std::string points(Dim d) {
  const std::int64_t raw = d.raw < 0 ? -d.raw : d.raw;
  const std::int64_t hundredths = (raw * 100 + 6'350) / 12'700;
  const std::string rest = std::to_string(hundredths % 100);
  return (d.raw < 0 && hundredths > 0 ? "-" : "") + std::to_string(hundredths / 100) + "." +
         std::string(2 - rest.size(), '0') + rest;
}

std::string hex(Colour c) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string s = "#";
  for (const int v : {int{c.r}, int{c.g}, int{c.b}}) {
    s += digits[v / 16];
    s += digits[v % 16];
  }
  return s;
}

std::string box(Rect r) {
  return points(r.at.x) + " " + points(r.at.y) + " " + points(r.size.w) + " " + points(r.size.h);
}

struct Writer {
  const Document& document;

  std::string operator()(const TextRun& run) const {
    return "text " + points(run.baseline.x) + " " + points(run.baseline.y) + " w " + points(run.width) + " " +
           document.faces.at(run.face)->postscriptName() + " " + points(run.size) + " " + hex(run.colour) +
           (run.isUpright ? "" : " turned") + " '" + run.text + "'";
  }
  std::string operator()(const Path& path) const {
    std::string s = "path " + box(extentOf(path));
    if (path.fill) s += " fill " + hex(*path.fill);
    if (path.stroke) s += " line " + points(path.stroke->width) + " " + hex(path.stroke->colour);
    return s;
  }
  std::string operator()(const PlacedImage& image) const { return "image " + box(image.box); }
  std::string operator()(const Link& link) const { return "link " + box(link.box) + " " + link.uri; }
};

}  // namespace

std::string dump(const Document& document) {
  std::string out;
  for (std::size_t p = 0; p < document.pages.size(); ++p)
    for (const Item& item : document.pages[p].items) {
      const std::string role =
          item.tag == artifact ? "-" : roleName(document.tags.at(static_cast<std::size_t>(item.tag)).role);
      out += std::to_string(p + 1) + " " + role + " " + std::visit(Writer{document}, item.what) + "\n";
    }
  return out;
}

}  // namespace typeset
