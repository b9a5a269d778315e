// Links: ISO 32000-1:2008, 12.5.6.5; outlines: 12.3.3.
#include "pdf/navigation.h"

#include "base/letters.h"
#include "pdf/objects/notation.h"

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

/// A web address with all that RFC 3986 does not allow as percent signs and digits.
std::string percentEncoded(std::string_view uri) {
  constexpr std::string_view allowed = "-._~:/?#[]@!$&'()*+,;=";  // RFC 3986 (2005), 2.2 and 2.3
  constexpr char digits[] = "0123456789ABCDEF";
  const auto isHex = [&](std::size_t i) {
    return i < uri.size() &&
           std::string_view("0123456789ABCDEFabcdef").find(uri[i]) != std::string_view::npos;
  };
  std::string out;
  for (std::size_t i = 0; i < uri.size(); ++i) {
    const auto c = static_cast<unsigned char>(uri[i]);
    const bool isPlain =
        base::isLetter(uri[i]) || base::isDigit(uri[i]) || allowed.find(uri[i]) != std::string_view::npos;
    const bool isEncoded = c == '%' && isHex(i + 1) && isHex(i + 2);
    if (isPlain || isEncoded) out += uri[i];
    else out += {'%', digits[c >> 4], digits[c & 15]};
  }
  return out;
}

}  // namespace

std::vector<Object> addLinks(File& file, const typeset::Document& document, std::size_t page,
                             Structure& structure) {
  const typeset::Page& from = document.pages[page];
  std::vector<Object> annotations;
  for (const typeset::Item& item : from.items) {
    const auto* link = std::get_if<typeset::Link>(&item.what);
    if (!link) continue;
    const typeset::Rect& box = link->box;
    const Object annotation = file.reserve();
    std::string entries = "/Type /Annot\n/Subtype /Link\n/F 4\n/Border [0 0 0]\n/Rect [" + number(box.at.x) +
                          " " + number(from.size.h - box.at.y - box.size.h) + " " +
                          number(box.at.x + box.size.w) + " " + number(from.size.h - box.at.y) +
                          "]\n/Contents " + words(link->words.empty() ? link->uri : link->words) +
                          "\n/A <</Type /Action /S /URI /URI " + literal(percentEncoded(link->uri)) + ">>\n";
    if (item.tag != typeset::artifact)
      entries += "/StructParent " + std::to_string(structure.addLink(item.tag, page, annotation)) + "\n";
    file.fill(annotation, entries);
    annotations.push_back(annotation);
  }
  return annotations;
}

namespace {

struct Node {
  std::size_t parent = 0;
  std::vector<std::size_t> children;
  std::size_t below = 0;  // nodes
  Object object;
};

/// Node 0 is the outline itself; node i + 1 belongs to bookmark i. A level that is left out counts as one
/// step.
std::vector<Node> makeTree(const std::vector<typeset::Bookmark>& bookmarks) {
  std::vector<Node> nodes(bookmarks.size() + 1);
  std::vector<std::size_t> open = {0};
  const auto level = [&](std::size_t node) { return node == 0 ? 0 : bookmarks[node - 1].level; };
  for (std::size_t node = 1; node < nodes.size(); ++node) {
    while (open.size() > 1 && level(open.back()) >= level(node)) open.pop_back();
    nodes[node].parent = open.back();
    nodes[open.back()].children.push_back(node);
    for (const std::size_t above : open) ++nodes[above].below;
    open.push_back(node);
  }
  return nodes;
}

}  // namespace

std::optional<Object> addOutline(File& file, const typeset::Document& document,
                                 const std::vector<Object>& pages) {
  if (document.bookmarks.empty()) return std::nullopt;
  std::vector<Node> nodes = makeTree(document.bookmarks);
  for (Node& node : nodes) node.object = file.reserve();
  const auto linkTo = [&](const char* key, std::size_t node) {
    return std::string("/") + key + " " + reference(nodes[node].object) + "\n";
  };
  for (std::size_t i = 0; i < nodes.size(); ++i) {
    const std::vector<std::size_t>& children = nodes[i].children;
    std::string entries = i == 0 ? "/Type /Outlines\n" : linkTo("Parent", nodes[i].parent);
    if (!children.empty())
      entries += linkTo("First", children.front()) + linkTo("Last", children.back()) + "/Count " +
                 std::to_string(nodes[i].below) + "\n";
    if (i > 0) {
      const typeset::Bookmark& bookmark = document.bookmarks[i - 1];
      if (bookmark.page >= pages.size())
        throw std::logic_error("internal error: a bookmark to an unknown page");
      const typeset::Dim height = document.pages[bookmark.page].size.h;
      entries += "/Title " + words(bookmark.title) + "\n/Dest [" + reference(pages[bookmark.page]) +
                 " /XYZ null " + number(height - bookmark.y) + " null]\n";
      const std::vector<std::size_t>& row = nodes[nodes[i].parent].children;
      if (row.front() != i) entries += linkTo("Prev", *(std::find(row.begin(), row.end(), i) - 1));
      if (row.back() != i) entries += linkTo("Next", *(std::find(row.begin(), row.end(), i) + 1));
    }
    file.fill(nodes[i].object, entries);
  }
  return nodes.front().object;
}

}  // namespace pdf
