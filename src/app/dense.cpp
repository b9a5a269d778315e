#include "app/dense.h"

namespace app {

model::Theme dense(model::Theme theme) {
  const model::TextStyle note = theme.styles.at("note");
  for (const char* name : {"table", "rowHead"}) {
    auto& style = theme.styles.at(name);
    style.size = note.size;
    style.leading = note.leading;
    style.rise = note.rise;
  }
  return theme;
}

model::Theme close(model::Theme theme) {
  theme = dense(std::move(theme));
  const model::TextStyle note = theme.styles.at("note");
  auto& body = theme.styles.at("body");
  body.size = note.size + theme.unit / 7;  // half a point
  body.leading = note.leading;
  body.rise = note.rise + theme.unit / 7;
  auto& hazard = theme.styles.at("hazard");
  const auto& head = theme.styles.at("head");
  hazard.size = head.size;
  hazard.leading = head.leading;
  hazard.rise = head.rise;
  theme.tighten = base::Share::whole(12);
  return theme;
}

}  // namespace app
