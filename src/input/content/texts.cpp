#include "input/content/texts.h"

namespace input {

model::Content translated(model::Content content, const base::Language& language) {
  forEachText(content, [&](const std::string& path, std::string& text) {
    const auto found = language.content.find(path);
    if (found != language.content.end()) text = found->second;
  });
  return content;
}

}  // namespace input
