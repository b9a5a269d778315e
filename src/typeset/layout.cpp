// Sets a document: measures its blocks, pours them into pages, adds what stands around them.
#include "typeset/layout.h"

#include "typeset/furniture.h"
#include "typeset/pour.h"
#include "typeset/sections.h"

namespace typeset {

Document layOut(const LayoutInput& in, base::Diagnostics& messages) {
  Document document;
  document.title = in.title;
  document.subject = in.subject;
  document.author = in.author;
  document.language = in.language;
  document.date = in.date;
  document.faces = in.fonts.faces;
  Tag root;
  root.role = Role::Document;
  document.tags.push_back(std::move(root));
  Setter setter(in, document, messages);
  pour(setter, setDocument(setter));
  addFurniture(setter);
  return document;
}

}  // namespace typeset
