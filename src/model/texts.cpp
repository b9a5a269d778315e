#include "model/texts.h"

namespace model {

Content translated(Content content, const Language& language) {
  forEachText(content, [&](const std::string& path, std::string& text) {
    const auto found = language.content.find(path);
    if (found != language.content.end()) text = found->second;
  });
  return content;
}

}  // namespace model
