#include "app/pack/languages.h"

#include "base/joined.h"
#include "safety/hazards.h"

#include <algorithm>

namespace app {

std::string rulingLanguage(const model::JobResult& x) {
  return x.c.region->language.substr(0, x.c.region->language.find('-'));
}

std::vector<std::string> languagesOf(const std::string& document, const model::JobResult& x,
                                     const Choices& choices) {
  if (!choices.languages.empty()) {
    std::vector<std::string> languages;
    for (const auto& id : choices.languages) {
      base::addOnce(languages, id);
    }
    return languages;
  }
  const auto found = x.c.job.languages.find(document);
  return found == x.c.job.languages.end() ? std::vector{rulingLanguage(x)} : found->second;
}

std::shared_ptr<const model::JobResult> localized(const model::JobResult& x, const Shipped& shipped,
                                                  const std::string& language, base::Diagnostics& messages) {
  if (language == x.language.id) return {std::shared_ptr<const model::JobResult>{}, &x};
  const auto& known = shipped.content.languages;
  if (std::find(known.begin(), known.end(), language) == known.end()) {
    messages.error({"--language"}, "", "'" + language + "' is not a known language",
                   "known: " + base::joined(known));
    return {};
  }
  const auto t = translationInto(language, shipped, messages);
  if (!t) return {};
  auto c = x.c;
  c.product = &t->content.products.at(c.job.product);
  c.region = &t->content.regions.at(c.job.site.region);
  auto hazards = safety::hazardsOf(c, t->content, x.estimate, x.resources, x.exposure);  // their reasons
  return std::make_shared<const model::JobResult>(
      model::JobResult{std::move(c), t->content, t->language, x.estimate, x.plan, x.resources, x.enough,
                       x.laid, x.price, x.exposure, std::move(hazards), x.offer});
}

}  // namespace app
