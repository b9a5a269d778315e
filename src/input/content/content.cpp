// A content folder: regions/*.yaml and products/*.yaml, one thing a file, named by it; timbers, consumables,
// tasks, tools, hazards and the texts of labels in one file each. A firm's folder holds the same over it.
#include "input/content/content_parts.h"
#include "input/content/customers.h"
#include "input/read.h"
#include "input/yaml/overlay.h"
#include "input/yaml/sorted.h"

#include <algorithm>
#include <filesystem>
#include <set>

namespace input {
namespace {

namespace fs = std::filesystem;

/// The names of the YAML files of a folder, without their ending.
std::set<std::string> namesIn(const fs::path& folder) {
  std::set<std::string> names;
  std::error_code failed;
  for (auto entry = fs::directory_iterator(folder, failed); !failed && entry != fs::directory_iterator();
       entry.increment(failed)) {
    if (entry->path().extension() == ".yaml") names.insert(entry->path().stem().string());
  }
  return names;
}

/// The folder that comes with the program, and the firm's, which may be none.
struct Layers {
  fs::path shipped, firm;

  /// The firm's file of this name; empty where there is none.
  std::string own(const fs::path& name) const {
    if (firm.empty()) return {};
    const std::string file = (firm / name).string();
    return isThere(file) ? file : "";
  }
};

/// Reads one file with 'read', which gets its keys.
template <class Read>
void readKeys(const std::string& file, const std::string& overlay, base::Diagnostics& out, Read read) {
  base::Diagnostics messages;
  if (const std::optional<Node> root = readLayered(file, overlay, messages)) {
    const Source source{file, messages, false, overlay};
    Record r(Field(source, &*root, "", root->mark));
    read(r);
    r.finish();
  }
  forwardSorted(messages, out);
}

template <class Read>
void readOne(const Layers& at, const char* name, base::Diagnostics& out, Read read) {
  readKeys((at.shipped / name).string(), at.own(name), out, read);
}

enum class Overlay {
  ByKey,  // the firm's file holds what differs
  ByFile  // and this one all of it
};

/// Reads each file of a folder by name, so that every machine reads them in the same order.
template <class Read>
void readEach(const Layers& at, const char* folder, Overlay how, base::Diagnostics& out, Read read) {
  const auto shipped = namesIn(at.shipped / folder);
  if (shipped.empty())
    out.error({(at.shipped / folder).string(), 0, 0}, "", "no .yaml files in this folder",
              "copy those that come with planksheaf");
  auto names = shipped;
  if (!at.firm.empty()) names.merge(namesIn(at.firm / folder));
  for (const auto& id : names) {
    const fs::path name = fs::path(folder) / (id + ".yaml");
    const auto own = at.own(name);
    const bool isWhole = !own.empty() && (how == Overlay::ByFile || !shipped.contains(id));
    readKeys(isWhole ? own : (at.shipped / name).string(), isWhole ? "" : own, out,
             [&](Record& r) { read(r, id); });
  }
}

}  // namespace

model::Content readContent(const std::string& folder, base::Diagnostics& messages, const std::string& firm) {
  model::Content c;
  const Layers at{folder, firm};
  // In the order in which they refer to each other.
  readEach(at, "regions", Overlay::ByKey, messages, [&](Record& r, const std::string& id) {
    model::Region region = readRegion(r);
    region.id = id;
    c.regions[id] = std::move(region);
  });
  readOne(at, "ghs.yaml", messages, [&](Record& r) { c.labels = readLabels(r); });
  // A product's figures belong together: those of two data sheets must not mix.
  readEach(at, "products", Overlay::ByFile, messages, [&](Record& r, const std::string& id) {
    model::Product product = readProduct(r, c.regions, c.labels);
    product.id = id;
    c.products[id] = std::move(product);
  });
  readOne(at, "timbers.yaml", messages, [&](Record& r) { c.timbers = readTimbers(r); });
  readOne(at, "consumables.yaml", messages,
          [&](Record& r) { c.consumables = readConsumables(r, c.regions, c.labels); });
  readOne(at, "tasks.yaml", messages, [&](Record& r) { c.tasks = readTasks(r, c.consumables); });
  readOne(at, "tools.yaml", messages, [&](Record& r) { c.tools = readTools(r, c.tasks); });
  readOne(at, "hazards.yaml", messages, [&](Record& r) {
    c.hazards = readHazards(r, c.tasks, c.tools);
    c.conditionWords = readConditionWords(r);
  });
  if (!firm.empty()) c.customers = readCustomers(firm, messages);
  for (const auto& id : namesIn(at.shipped / "languages")) {
    const bool isRegional = id.find('-') != std::string::npos;  // 'en-US': what differs from 'en'
    if (!isRegional) c.languages.push_back(id);
  }
  return c;
}

}  // namespace input
