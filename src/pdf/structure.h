// The tag tree: which marked sequences and links of which pages belong to which element.
#pragma once

#include "pdf/objects/file.h"

#include <vector>

namespace pdf {

/// Collects what pages mark while they are drawn, in drawing order; then writes the tree.
class Structure {
 public:
  /// Throws std::logic_error when a tag does not stand after its parent.
  explicit Structure(const typeset::Document& document);

  typeset::Role role(int tag) const;
  /// A new marked sequence of an element: its number on the page.
  int addSequence(int tag, std::size_t page);
  /// A link annotation of an element: its key in the parent tree.
  int addLink(int tag, std::size_t page, Object annotation);

  /// The tree's root. Elements without content are left out, except the cells of rows.
  Object write(File& file, const std::vector<Object>& pages);

 private:
  struct Part {
    std::size_t page;
    int sequence;       // on the page; -1 for a link
    Object annotation;  // of a link
    int order;          // of drawing, through the document
  };
  struct Element {
    typeset::Tag tag;
    std::vector<Part> parts;
    std::vector<int> children;
    int firstDrawn = never;  // of its own parts and those below
    bool isKept = false;
    Object object, attributes;
  };
  static constexpr int never = 0x7FFFFFFF;

  std::size_t indexOf(int tag) const;
  Element& at(int tag) { return elements_[indexOf(tag)]; }
  const Element& at(int tag) const { return elements_[indexOf(tag)]; }
  void keep(int tag, int order);
  void addPart(int tag, Part part);
  std::string kids(const Element& element, const std::vector<Object>& pages) const;
  std::string entries(const Element& element, int index, Object root, const std::vector<Object>& pages) const;
  std::string parentTree() const;

  const typeset::Document& document_;
  std::vector<Element> elements_;
  std::vector<std::vector<int>> owners_;  // by page and sequence: the element
  std::vector<int> linkOwners_;
  int drawn_ = 0;
};

}  // namespace pdf
