#include "typeset/roles.h"

#include <stdexcept>

namespace typeset {

const char* roleName(Role role) {
  switch (role) {
    case Role::Document:
      return "Document";
    case Role::H1:
      return "H1";
    case Role::H2:
      return "H2";
    case Role::H3:
      return "H3";
    case Role::P:
      return "P";
    case Role::L:
      return "L";
    case Role::LI:
      return "LI";
    case Role::Lbl:
      return "Lbl";
    case Role::LBody:
      return "LBody";
    case Role::Table:
      return "Table";
    case Role::THead:
      return "THead";
    case Role::TBody:
      return "TBody";
    case Role::TR:
      return "TR";
    case Role::TH:
      return "TH";
    case Role::TD:
      return "TD";
    case Role::Figure:
      return "Figure";
    case Role::Link:
      return "Link";
    case Role::Note:
      return "Note";
    case Role::Sect:
      return "Sect";
    case Role::Span:
      return "StyledText";
  }
  throw std::logic_error("internal error: unknown role of a tag");
}

}  // namespace typeset
