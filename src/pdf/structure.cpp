// Logical structure: ISO 32000-1:2008, 14.7 and 14.8.
#include "pdf/structure.h"

#include "pdf/objects/notation.h"
#include "typeset/extent.h"
#include "typeset/roles.h"

#include <algorithm>
#include <map>
#include <stdexcept>

namespace pdf {

using typeset::Role;

namespace {

/// Of lists and cells; those of figures are their own.
std::string attributes(const typeset::Tag& tag) {
  if (tag.role == Role::L)
    return std::string("/O /List /ListNumbering ") + (tag.isOrdered ? "/Decimal" : "/Disc") + "\n";
  if (tag.role != Role::TH && tag.role != Role::TD) return "";
  std::string table;
  if (tag.role == Role::TH && tag.scope == typeset::Scope::Column) table += "/Scope /Column\n";
  if (tag.role == Role::TH && tag.scope == typeset::Scope::Row) table += "/Scope /Row\n";
  if (tag.rows > 1) table += "/RowSpan " + std::to_string(tag.rows) + "\n";
  if (tag.columns > 1) table += "/ColSpan " + std::to_string(tag.columns) + "\n";
  return table.empty() ? "" : "/O /Table\n" + table;
}

/// PDF/UA-1 (ISO 14289-1:2014), 7.9: every note carries an identifier. Of one length, so that they sort.
std::string noteId(int index) { return "note-" + std::to_string(100'000 + index); }

/// The layout attributes of a figure, with the box around all it draws on its page.
std::string layoutOf(const typeset::Document& document, int tag, std::size_t page) {
  std::optional<typeset::Rect> box;
  for (const typeset::Item& item : document.pages.at(page).items)
    if (item.tag == tag) box = box ? joined(*box, extentOf(item)) : extentOf(item);
  std::string out = "<</O /Layout /Placement /Block";
  if (box) {
    const typeset::Dim bottom = document.pages[page].size.h - box->at.y;
    out += " /BBox [" + number(box->at.x) + " " + number(bottom - box->size.h) + " " +
           number(box->at.x + box->size.w) + " " + number(bottom) + "]";
  }
  return out + ">>";
}

}  // namespace

Structure::Structure(const typeset::Document& document)
    : document_(document), owners_(document.pages.size()) {
  if (document.tags.empty()) {
    elements_.emplace_back();
    elements_.back().tag.role = Role::Document;
    keep(0, never);
  }
  for (const typeset::Tag& tag : document.tags) {
    const int index = static_cast<int>(elements_.size());
    const bool isInPlace = index == 0 ? tag.parent == -1 : tag.parent >= 0 && tag.parent < index;
    if (!isInPlace) throw std::logic_error("internal error: a tag stands before its parent");
    elements_.emplace_back();
    elements_.back().tag = tag;
    if (index > 0) at(tag.parent).children.push_back(index);
    // An empty cell holds its place in the row.
    if (index == 0 || tag.role == Role::TD || tag.role == Role::TH) keep(index, never);
  }
}

std::size_t Structure::indexOf(int tag) const {
  const auto index = static_cast<std::size_t>(tag);
  if (tag < 0 || index >= elements_.size())
    throw std::logic_error("internal error: an item has an unknown tag");
  return index;
}

Role Structure::role(int tag) const { return at(tag).tag.role; }

void Structure::keep(int tag, int order) {
  for (int up = tag; up >= 0; up = at(up).tag.parent) {
    at(up).isKept = true;
    at(up).firstDrawn = std::min(at(up).firstDrawn, order);
  }
}

void Structure::addPart(int tag, Part part) {
  at(tag).parts.push_back(part);
  keep(tag, part.order);
}

int Structure::addSequence(int tag, std::size_t page) {
  std::vector<int>& onPage = owners_.at(page);
  const int sequence = static_cast<int>(onPage.size());
  addPart(tag, {page, sequence, {}, drawn_++});
  onPage.push_back(tag);
  return sequence;
}

int Structure::addLink(int tag, std::size_t page, Object annotation) {
  addPart(tag, {page, -1, annotation, drawn_++});
  linkOwners_.push_back(tag);
  return static_cast<int>(owners_.size() + linkOwners_.size()) - 1;
}

/// Children stand in the order of tags; the element's own parts go before the first child drawn after them.
std::string Structure::kids(const Element& element, const std::vector<Object>& pages) const {
  std::string out;
  out.reserve(20 * element.children.size() + 40);
  int count = 0;
  auto part = element.parts.begin();
  const auto addPartsBefore = [&](int order) {
    for (; part != element.parts.end() && part->order < order; ++part, ++count) {
      if (part->annotation)
        out += "<</Type /OBJR /Pg " + reference(pages.at(part->page)) + " /Obj " +
               reference(part->annotation) + ">> ";
      else if (part->page == element.parts.front().page) out += std::to_string(part->sequence) + " ";
      else
        out += "<</Type /MCR /Pg " + reference(pages.at(part->page)) + " /MCID " +
               std::to_string(part->sequence) + ">> ";
    }
  };
  for (const int index : element.children) {
    const Element& child = at(index);
    if (!child.isKept) continue;
    if (child.firstDrawn != never) addPartsBefore(child.firstDrawn);
    out += reference(child.object) + " ";
    ++count;
  }
  addPartsBefore(never);
  if (count == 0) return "";
  out.back() = '\n';
  return count == 1 ? "/K " + out : "/K [" + out + "]";
}

/// As short as may be, because there is one for every line of a table: their type goes without saying (ISO
/// 32000-1:2008, table 323).
std::string Structure::entries(const Element& element, int index, Object root,
                               const std::vector<Object>& pages) const {
  const typeset::Tag& tag = element.tag;
  const Object parent = tag.parent < 0 ? root : at(tag.parent).object;
  std::string out;
  out.reserve(100);
  out = "/S /";
  out += typeset::roleName(tag.role);
  out += "/P " + reference(parent);
  if (!element.parts.empty()) out += "/Pg " + reference(pages.at(element.parts.front().page));
  out += kids(element, pages);
  if (!tag.alt.empty()) out += "/Alt " + words(tag.alt);
  if (tag.role == Role::Note) out += "/ID " + literal(noteId(index));
  if (element.attributes) out += "/A " + reference(element.attributes);
  if (tag.role == Role::Figure && !element.parts.empty())
    out += "/A " + layoutOf(document_, index, element.parts.front().page);
  return out;
}

std::string Structure::parentTree() const {
  const auto owner = [&](int tag) { return reference(at(tag).object) + " "; };
  std::string out = "/Nums [";
  std::size_t key = 0;
  for (const std::vector<int>& onPage : owners_) {
    out += std::to_string(key++) + " [";
    for (const int tag : onPage) out += owner(tag);
    out += "]\n";
  }
  for (const int tag : linkOwners_) out += std::to_string(key++) + " " + owner(tag);
  return out + "]\n";
}

Object Structure::write(File& file, const std::vector<Object>& pages) {
  const Object root = file.reserve();
  std::map<std::string, Object> known;  // attributes: elements share those that are alike
  for (Element& element : elements_) {
    if (!element.isKept) continue;
    element.object = file.reserve();
    const std::string list = attributes(element.tag);
    if (list.empty()) continue;
    const auto [entry, isNew] = known.try_emplace(list);
    if (isNew) entry->second = file.addDictionary(list);
    element.attributes = entry->second;
  }
  std::string notes;
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    const Element& element = elements_[i];
    if (!element.isKept) continue;
    const int index = static_cast<int>(i);
    file.fill(element.object, entries(element, index, root, pages));
    if (element.tag.role == Role::Note)
      notes += literal(noteId(index)) + " " + reference(element.object) + " ";
  }
  const Object parents = file.addDictionary(parentTree());
  std::string entries = "/Type /StructTreeRoot\n/K [" + reference(elements_.front().object) +
                        "]\n/ParentTree " + reference(parents) + "\n/ParentTreeNextKey " +
                        std::to_string(owners_.size() + linkOwners_.size()) + "\n";
  if (!notes.empty()) entries += "/IDTree <</Names [" + notes + "]>>\n";
  file.fill(root, entries);
  return root;
}

}  // namespace pdf
