#include "app/pack/telling.h"

#include "base/joined.h"
#include "input/content/texts.h"
#include "input/read.h"
#include "safety/hazards.h"

#include <algorithm>

namespace app {

std::string rulingLanguage(const Computation& x) {
  return x.c.region->language.substr(0, x.c.region->language.find('-'));
}

std::vector<std::string> languagesOf(const std::string& document, const Computation& x,
                                     const Choices& choices) {
  if (!choices.languages.empty()) {
    std::vector<std::string> languages;
    for (const auto& id : choices.languages) {
      if (std::find(languages.begin(), languages.end(), id) == languages.end()) languages.push_back(id);
    }
    return languages;
  }
  const auto found = x.c.job.languages.find(document);
  return found == x.c.job.languages.end() ? std::vector{rulingLanguage(x)} : found->second;
}

namespace {

/// Reads a language and translates the content into it; nothing (and messages) when its file has mistakes.
std::shared_ptr<const Translation> readTranslation(const std::string& language, const Shipped& shipped,
                                                   base::Diagnostics& messages) {
  Translation t;
  t.language = input::readLanguage(shipped.contentFolder + "/languages/" + language + ".yaml", language,
                                   &shipped.english, shipped.content, messages);
  if (!messages.ok()) return {};
  t.content = input::translated(shipped.content, t.language);
  return std::make_shared<const Translation>(std::move(t));
}

}  // namespace

std::optional<Telling> tell(const Computation& x, const Shipped& shipped, const std::string& language,
                            base::Diagnostics& messages) {
  if (language == shipped.english.id)
    return Telling{x, &shipped.english, &shipped.content, &shipped.templates.at(language), x.c};
  const auto& known = shipped.content.languages;
  if (std::find(known.begin(), known.end(), language) == known.end()) {
    messages.error({"--language"}, "", "'" + language + "' is not a known language",
                   "known: " + base::joined(known));
    return {};
  }
  const auto t = readOnce(shipped.shelves->translations, language, messages,
                          [&](auto& told) { return readTranslation(language, shipped, told); });
  if (!t) return {};
  Telling telling{x, &t->language, &t->content, &shipped.templates.at(language), x.c, t};
  telling.c.product = &t->content.products.at(x.c.job.product);
  telling.c.region = &t->content.regions.at(x.c.job.site.region);
  telling.hazards = safety::hazardsOf(telling.c, t->content, x.estimate, x.exposure);
  return telling;
}

}  // namespace app
