#include "input/yaml/overlay.h"

#include "input/read.h"
#include "input/yaml/cursor.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

void markAll(Node& node) {
  node.mark.isOverlay = true;
  for (Node& item : node.items) markAll(item);
  for (Entry& entry : node.entries) {
    entry.mark.isOverlay = true;
    markAll(entry.value);
  }
}

Entry* find(std::vector<Entry>& entries, const std::string& key) {
  const auto found =
      std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.key == key; });
  return found == entries.end() ? nullptr : &*found;
}

/// Empty where there is none.
std::string idOf(const Node& item) {
  for (const Entry& e : item.entries) {
    if (e.key == "id") return e.value.word;
  }
  return {};
}

bool haveIds(const Node& list) {
  return !list.items.empty() && std::none_of(list.items.begin(), list.items.end(),
                                             [](const Node& item) { return idOf(item).empty(); });
}

void lay(Node& under, Node over);

void layMap(Node& under, Node over) {
  for (std::size_t i = 0; i < over.entries.size(); ++i) {
    Entry& entry = over.entries[i];
    const auto isSame = [&](const Entry& e) { return e.key == entry.key; };
    const auto end = over.entries.begin() + static_cast<std::ptrdiff_t>(i);
    const bool isDouble = std::any_of(over.entries.begin(), end, isSame);  // stays, to be told
    Entry* below = isDouble ? nullptr : find(under.entries, entry.key);
    if (below == nullptr) {
      under.entries.push_back(entry);
    } else {
      below->mark = entry.mark;
      lay(below->value, entry.value);
    }
  }
}

void layListOfIds(Node& under, Node over) {
  auto place = under.items.begin();  // where the next new one stands
  for (Node& item : over.items) {
    const auto below = std::find_if(under.items.begin(), under.items.end(),
                                    [&](const Node& n) { return idOf(n) == idOf(item); });
    if (below == under.items.end()) {
      place = under.items.insert(place, std::move(item)) + 1;
    } else {
      lay(*below, std::move(item));
      place = below + 1;
    }
  }
}

void lay(Node& under, Node over) {
  const bool areMaps = under.kind == Node::Kind::Map && over.kind == Node::Kind::Map;
  const bool areLists = under.kind == Node::Kind::List && over.kind == Node::Kind::List;
  if (areMaps) layMap(under, std::move(over));
  else if (areLists && haveIds(under) && haveIds(over)) layListOfIds(under, std::move(over));
  else under = std::move(over);
}

/// Nothing but notes: a file with all its lines still switched off.
bool isOnlyNotes(const std::string& text) {
  bool isNote = false;
  for (const char c : text) {
    if (c == '\n') isNote = false;
    else if (c == '#') isNote = true;
    else if (!isNote && c != ' ' && c != '\r' && c != '\t') return false;
  }
  return true;
}

std::optional<std::string> bytesOf(const std::string& file, base::Diagnostics& messages) {
  auto bytes = readFile(file);
  if (!bytes)
    messages.error({file, 0, 0}, "", "the file cannot be read: " + whyUnreadable(file),
                   "check that it is there and may be read");
  return bytes;
}

}  // namespace

void layOver(Node& under, Node over) {
  markAll(over);
  lay(under, std::move(over));
}

void layKeys(Node& under, Node over) { lay(under, std::move(over)); }

std::optional<Node> readLayered(const std::string& file, const std::string& overlay,
                                base::Diagnostics& messages) {
  const auto bytes = bytesOf(file, messages);
  auto root = bytes ? parseTree(*bytes, file, messages) : std::nullopt;
  if (!root || overlay.empty()) return root;
  const auto own = bytesOf(overlay, messages);
  if (!own || isOnlyNotes(*own)) return root;
  auto over = parseTree(*own, overlay, messages);
  if (!over) return root;
  const Source source{overlay, messages};
  Record(Field(source, &*over, "", over->mark));  // tells where it is no group of keys
  if (over->kind == Node::Kind::Map) layOver(*root, std::move(*over));
  return root;
}

bool isThere(const std::string& file) {
  std::error_code failed;
  return std::filesystem::exists(std::filesystem::symlink_status(file, failed));
}

}  // namespace input
