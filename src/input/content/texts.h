// Every text of the content that a document may print, with its path: what a language has to translate. Names
// of people and firms, codes and law texts are not among them.
#pragma once

#include "base/language.h"
#include "model/content.h"

#include <utility>

namespace input {

/// Calls visit(path, text) for each text that is not empty: 'tasks.sand.name', 'products.tern-oil.sds.skin'.
template <class AnyContent, class Visit>
void forEachText(AnyContent& content, Visit visit) {
  const auto at = [&](const std::string& path, auto& text) {
    if (!text.empty()) visit(path, text);
  };
  const auto safetyData = [&](const std::string& path, auto& sds) {
    at(path + "mix", sds.mix);
    at(path + "skin", sds.skin);
    at(path + "eyes", sds.eyes);
    at(path + "inhaled", sds.inhaled);
    at(path + "swallowed", sds.swallowed);
    at(path + "spill", sds.spill);
  };
  for (auto& [id, product] : content.products) {
    const std::string path = "products." + id + ".";
    at(path + "name", product.name);
    if (!product.sds) continue;
    safetyData(path, *product.sds);
    auto& vapours = product.sds->vapours;
    for (std::size_t i = 0; i < vapours.size(); ++i)
      at(path + (vapours.size() == 1 ? "substance" : "substances." + std::to_string(i + 1)),
         vapours[i].substance);
  }
  for (auto& [id, timber] : content.timbers) at("timbers." + id, timber.name);
  for (auto& task : content.tasks) {
    const std::string path = "tasks." + task.id + ".";
    at(path + "name", task.name);
    at(path + "offer", task.offer);
  }
  for (auto& [id, item] : content.consumables) {
    at("consumables." + id + ".name", item.name);
    at("consumables." + id + ".unit", item.unit);
    if (item.sds) safetyData("consumables." + id + ".", *item.sds);
  }
  for (auto& hazard : content.hazards) {
    const std::string path = "hazards." + hazard.id + ".";
    at(path + "title", hazard.title);
    at(path + "who", hazard.who);
    at(path + "harm", hazard.harm);
    for (std::size_t i = 0; i < hazard.controls.size(); ++i)
      at(path + "controls." + std::to_string(i + 1), hazard.controls[i].text);
    at(path + "left", hazard.left);
  }
  for (auto& [condition, words] : content.conditionWords) {
    at("conditions." + words.id + ".holds", words.holds);
    at("conditions." + words.id + ".unknown", words.unknown);
  }
  for (auto& [code, words] : content.labels.statements) at("ghs." + code, words);
  for (auto& [code, words] : content.labels.precautions) at("ghs." + code, words);
  for (auto& tool : content.tools) at("tools." + tool.id, tool.name);
  for (auto& [id, region] : content.regions) {
    const std::string path = "regions." + id + ".";
    at(path + "currency", region.currencyName);
    at(path + "cutout", region.powerCutout);
    // Grades are mostly codes, the same in every language.
    for (auto& [sign, grade] : region.equipment) {
      const bool hasWords = grade.find_first_of("abcdefghijklmnopqrstuvwxyz") != std::string::npos;
      if (hasWords) at(path + "equipment." + sign, grade);
    }
    for (auto& authority : region.authorities) at(path + "authorities." + authority.about, authority.name);
  }
}

/// The content with its texts in a language that translates them all; readLanguage sees to that.
model::Content translated(model::Content content, const base::Language& language);

}  // namespace input
