#include "app/pack/dense.h"

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

model::Theme close(model::Theme theme, int tighten) {
  theme = dense(std::move(theme));
  const model::TextStyle note = theme.styles.at("note");
  auto& body = theme.styles.at("body");
  body.size = note.size;
  body.leading = note.leading;
  body.rise = note.rise;
  auto& hazard = theme.styles.at("hazard");
  const auto& head = theme.styles.at("head");
  hazard.size = head.size;
  hazard.leading = head.leading;
  hazard.rise = head.rise;
  theme.tighten = base::Share::whole(tighten);
  return theme;
}

}  // namespace app
