// Whatever key is missing in a file that comes with the program, the line in the hint mends it.
#include "input/content/content_parts.h"
#include "input/read.h"

#include <catch2/catch.hpp>
#include <filesystem>
#include <functional>
#include <set>

using input::Node;

namespace {

const std::string root = SOURCE_DIR;

using Read = std::function<base::Diagnostics(const Node&)>;

/// A reader of keys, given a tree.
template <class Keys>
Read reader(Keys readKeys) {
  return [=](const Node& tree) {
    base::Diagnostics messages;
    const input::Source source{"file", messages};
    input::Record r(input::Field(source, &tree, "", tree.mark));
    readKeys(r, messages);
    r.finish();
    return messages;
  };
}

const model::Content& shipped() {
  static const model::Content content = [] {
    base::Diagnostics messages;
    return input::readContent(root + "/content", messages);
  }();
  return content;
}

/// Checks each key that is missing when it is taken out, once for all entries alike.
class Mender {
 public:
  explicit Mender(Read read) : read_(std::move(read)) {}
  void checkAll(Node tree) {
    tree_ = std::move(tree);
    walk(tree_, "");
  }
  int checked() const { return checked_; }

 private:
  void walk(Node& node, const std::string& path) {
    for (std::size_t i = 0; i < node.entries.size(); ++i) {
      const std::string key = node.entries[i].key;
      const bool isWord =
          std::all_of(key.begin(), key.end(), [](char c) { return std::islower(c) || c == '_'; });
      if (seen_.insert(path + "." + key).second) check(node, i);
      walk(node.entries[i].value, path + "." + (isWord ? key : "*"));
    }
    for (Node& item : node.items) walk(item, path + "[]");
  }

  void check(Node& map, std::size_t i) {
    const input::Entry entry = map.entries[i];
    if (entry.key == "per") return;  // what else a task needs depends on it
    const auto place = map.entries.begin() + static_cast<std::ptrdiff_t>(i);
    map.entries.erase(place);
    const std::string missing = "'" + entry.key + "' is missing";
    std::string hint;
    const base::Diagnostics said = read_(tree_);
    for (const auto& d : said.all())
      if (d.message == missing) hint = d.hint;
    if (!hint.empty()) {
      ++checked_;
      const std::string start = "write it like ";
      INFO(missing << ": " << hint);
      const std::size_t at = hint.find(start);
      REQUIRE(at != std::string::npos);
      base::Diagnostics messages;
      const auto line = input::parseTree(hint.substr(at + start.size()), "", messages);
      REQUIRE(messages.ok());
      REQUIRE(line->entries.size() == 1);
      CHECK(line->entries[0].key == entry.key);
      map.entries.insert(map.entries.begin() + static_cast<std::ptrdiff_t>(i), line->entries[0]);
      const base::Diagnostics left = read_(tree_);
      for (const auto& d : left.all()) {
        INFO(base::format(d));
        const bool isOfExample = d.message.ends_with("' is missing") && d.path.ends_with(entry.key);
        CHECK((d.severity != base::Severity::Error || isOfExample));  // a short example asks for more keys
      }
      map.entries[i] = entry;
    } else {
      map.entries.insert(map.entries.begin() + static_cast<std::ptrdiff_t>(i), entry);
    }
  }

  Read read_;
  Node tree_;
  std::set<std::string> seen_;
  int checked_ = 0;
};

int keysMended(const std::string& file, const Read& read) {
  base::Diagnostics messages;
  const auto tree = input::parseTree(input::readFile(root + file).value(), file, messages);
  REQUIRE(messages.ok());
  INFO(file);
  REQUIRE(read(*tree).ok());
  Mender mender(read);
  mender.checkAll(*tree);
  return mender.checked();
}

}  // namespace

TEST_CASE("a missing key of a content file shows a line that mends it") {
  const auto& c = shipped();
  const auto regions = reader([](auto& r, auto&) { input::readRegion(r); });
  CHECK(keysMended("/content/regions/nz.yaml", regions) > 40);
  CHECK(keysMended("/content/regions/us.yaml", regions) > 40);
  const auto products = reader([&](auto& r, auto&) { input::readProduct(r, c.regions, c.labels); });
  CHECK(keysMended("/content/products/tern-oil.yaml", products) > 40);
  CHECK(keysMended("/content/ghs.yaml", reader([](auto& r, auto&) { input::readLabels(r); })) == 4);
  CHECK(keysMended("/content/timbers.yaml", reader([](auto& r, auto&) { input::readTimbers(r); })) > 5);
  CHECK(keysMended("/content/consumables.yaml",
                   reader([&](auto& r, auto&) { input::readConsumables(r, c.regions, c.labels); })) > 3);
  CHECK(keysMended("/content/tasks.yaml",
                   reader([&](auto& r, auto&) { input::readTasks(r, c.consumables); })) > 3);
  CHECK(keysMended("/content/tools.yaml", reader([&](auto& r, auto&) { input::readTools(r, c.tasks); })) > 3);
}

TEST_CASE("a missing key of the hazards shows a line that mends it") {
  const auto& c = shipped();
  const auto read = reader([&](auto& r, auto&) {
    input::readHazards(r, c.tasks, c.tools);
    input::readConditionWords(r);
  });
  CHECK(keysMended("/content/hazards.yaml", read) > 20);
}
