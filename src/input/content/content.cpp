// A content folder: regions/*.yaml and products/*.yaml, one thing a file, named by it; timbers, consumables,
// tasks, tools, hazards and the texts of labels in one file each.
#include "input/content/content_parts.h"
#include "input/read.h"
#include "input/yaml/sorted.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

namespace fs = std::filesystem;

/// The YAML files of a folder by name, so that every machine reads them in the same order.
std::vector<fs::path> yamlFiles(const fs::path& folder, base::Diagnostics& messages) {
  std::vector<fs::path> files;
  std::error_code failed;
  for (const auto& entry : fs::directory_iterator(folder, failed)) {
    if (entry.path().extension() == ".yaml") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  if (failed || files.empty())
    messages.error({folder.string(), 0, 0}, "", "no .yaml files in this folder",
                   "copy those that come with planksheaf");
  return files;
}

/// Reads one file with 'read', which gets its keys.
template <class Read>
void readKeys(const fs::path& file, base::Diagnostics& out, Read read) {
  const std::optional<std::string> text = readFile(file.string());
  if (!text) {
    out.error({file.string(), 0, 0}, "", "the file cannot be read: " + whyUnreadable(file.string()),
              "check that it is there and may be read");
    return;
  }
  base::Diagnostics messages;
  if (const std::optional<Node> root = parseTree(*text, file.string(), messages)) {
    const Source source{file.string(), messages};
    Record r(Field(source, &*root, "", root->mark));
    read(r);
    r.finish();
  }
  forwardSorted(messages, out);
}

}  // namespace

model::Content readContent(const std::string& folder, base::Diagnostics& messages) {
  model::Content c;
  const fs::path at(folder);
  // In the order in which they refer to each other.
  for (const fs::path& file : yamlFiles(at / "regions", messages)) {
    readKeys(file, messages, [&](Record& r) {
      model::Region region = readRegion(r);
      region.id = file.stem().string();
      c.regions[region.id] = std::move(region);
    });
  }
  readKeys(at / "ghs.yaml", messages, [&](Record& r) { c.labels = readLabels(r); });
  for (const fs::path& file : yamlFiles(at / "products", messages)) {
    readKeys(file, messages, [&](Record& r) {
      model::Product product = readProduct(r, c.regions, c.labels);
      product.id = file.stem().string();
      c.products[product.id] = std::move(product);
    });
  }
  readKeys(at / "timbers.yaml", messages, [&](Record& r) { c.timbers = readTimbers(r); });
  readKeys(at / "consumables.yaml", messages,
           [&](Record& r) { c.consumables = readConsumables(r, c.regions, c.labels); });
  readKeys(at / "tasks.yaml", messages, [&](Record& r) { c.tasks = readTasks(r, c.consumables); });
  readKeys(at / "tools.yaml", messages, [&](Record& r) { c.tools = readTools(r, c.tasks); });
  readKeys(at / "hazards.yaml", messages, [&](Record& r) {
    c.hazards = readHazards(r, c.tasks, c.tools);
    c.conditionWords = readConditionWords(r);
  });
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(at / "languages", none)) {
    if (entry.path().extension() == ".yaml") c.languages.push_back(entry.path().stem().string());
  }
  std::sort(c.languages.begin(), c.languages.end());
  return c;
}

}  // namespace input
