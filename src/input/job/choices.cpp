#include "input/job/choices.h"

#include "input/job/job_parts.h"
#include "input/read.h"
#include "input/yaml/edit.h"
#include "input/yaml/overlay.h"
#include "input/yaml/sorted.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace input {
namespace {

constexpr std::size_t fewest = 2, most = 3;
/// Of the one way in which a job was done.
constexpr const char* recorded[] = {"done", "left", "invoices"};

void remove(Node& map, const std::string& key) {
  std::erase_if(map.entries, [&](const Entry& e) { return e.key == key; });
}

/// In place of what stands there.
void put(Node& map, const Entry& entry) {
  for (Entry& e : map.entries) {
    if (e.key != entry.key) continue;
    e = entry;
    return;
  }
  map.entries.push_back(entry);
}

std::string nameOf(const Node& area) {
  const Entry* name = Editor::find(area, "name");
  return name == nullptr ? std::string{} : name->value.word;
}

/// Of the job's areas; empty where they are told to be wrong with the job.
std::vector<std::string> namesOf(const Node& root) {
  std::vector<std::string> names;
  const Entry* areas = Editor::find(root, "areas");
  if (areas == nullptr || areas->value.kind != Node::Kind::List) return names;
  for (const Node& area : areas->value.items) names.push_back(nameOf(area));
  return names;
}

std::vector<std::string> readLeftOut(const Field& f, const std::vector<std::string>& names) {
  std::vector<std::string> all;
  for (const Field& item : f.items()) {
    const auto word = item.word();
    if (!word) continue;
    if (std::find(names.begin(), names.end(), *word) == names.end())
      reportUnknown(item, *word, "area", names, "a choice leaves out areas of the job");
    else if (std::find(all.begin(), all.end(), *word) == all.end()) all.push_back(*word);
  }
  if (!all.empty() && all.size() == names.size())
    f.error("no area is left", "leave at least one of them in the choice");
  return all;
}

void checkAreas(const Field& areas, const std::vector<std::string>& names,
                const std::vector<std::string>& leftOut) {
  std::vector<std::string> seen;
  for (const Field& item : areas.items()) {
    Record r(item);
    const Field name = r.must("name", "Deck");
    const std::string word = name.isGiven() ? text(name) : std::string{};
    if (word.empty()) continue;
    if (std::find(names.begin(), names.end(), word) == names.end())
      reportUnknown(name, word, "area", names, "a choice changes the job's own areas");
    else if (std::find(seen.begin(), seen.end(), word) != seen.end())
      name.error(inQuotes(word) + " is given twice", "write all its keys in one place");
    else if (std::find(leftOut.begin(), leftOut.end(), word) != leftOut.end())
      name.error(inQuotes(word) + " is left out by this choice", "take it out here or out of 'leave_out'");
    seen.push_back(word);
  }
}

std::vector<model::Choice> readNames(const std::vector<Field>& items, const std::vector<std::string>& areas) {
  std::vector<model::Choice> all;
  for (const Field& item : items) {
    Record r(item);
    const Field name = r.must("name", "Wash and one coat"), looks = r.may("looks");
    model::Choice choice;
    if (name.isGiven()) choice.name = text(name);
    if (looks.isGiven()) choice.looks = text(looks);
    const auto isSame = [&](const model::Choice& c) { return c.name == choice.name; };
    if (!choice.name.empty() && std::any_of(all.begin(), all.end(), isSame))
      name.error(inQuotes(choice.name) + " is given twice", "give each choice a name of its own");
    for (const char* key : choiceKeys) r.may(key);
    r.may("coats");
    const Field changed = r.may("areas"), leftOut = r.may("leave_out");
    if (!areas.empty()) {
      choice.leftOut = readLeftOut(leftOut, areas);
      checkAreas(changed, areas, choice.leftOut);
    }
    r.finish();
    all.push_back(std::move(choice));
  }
  return all;
}

/// By its number, from 1, or its name.
std::optional<std::size_t> readChosen(const Field& f, const std::vector<model::Choice>& choices) {
  const auto word = f.word();
  if (!word) return {};
  std::vector<std::string> names;
  for (std::size_t i = 0; i < choices.size(); ++i) {
    if (*word == std::to_string(i + 1) || *word == choices[i].name) return i;
    names.push_back(choices[i].name);
  }
  reportUnknown(f, *word, "choice", names, "or its number, from 1");
  return {};
}

bool isBefore(Mark a, Mark b) { return std::tie(a.line, a.column) < std::tie(b.line, b.column); }

/// The items of a list, and where each ends.
struct Span {
  Mark from, until;
  bool holds(Mark m) const { return !isBefore(m, from) && isBefore(m, until); }
};

Span spanOf(const Node& root, const Node& list, std::size_t i) {
  Mark until{1 << 30, 0};
  for (const Entry& e : root.entries) {
    if (isBefore(list.mark, e.mark) && isBefore(e.mark, until)) until = e.mark;
  }
  return {list.items[i].mark, i + 1 < list.items.size() ? list.items[i + 1].mark : until};
}

/// With the number that its area has in another list.
std::string renumbered(const std::string& path, const Node& areas, const Node& others) {
  constexpr std::string_view key = "areas[";
  if (!path.starts_with(key)) return path;
  const auto area = static_cast<std::size_t>(std::stoi(path.substr(key.size()))) - 1;
  const auto other = areaNamed(others, nameOf(areas.items.at(area)));
  return std::string(key) + std::to_string(other + 1) + path.substr(path.find(']'));
}

/// 'choices[2].areas[1].state' for what is wrong in the second choice, whose first area is the job's third.
std::string pathIn(const Node& choice, const std::string& prefix, const std::string& path, Mark at,
                   const Node& tree) {
  const Entry* coats = Editor::find(choice, "coats");
  if (coats != nullptr && !isBefore(at, coats->value.mark) && !isBefore(coats->value.mark, at))
    return prefix + "coats";
  const Entry *own = Editor::find(choice, "areas"), *all = Editor::find(tree, "areas");
  return prefix + (own == nullptr || all == nullptr ? path : renumbered(path, all->value, own->value));
}

/// With the number an area has in the job, where its choice leaves out some before it.
std::string pathAmongAll(const std::string& path, const Node& tree, const Node& root) {
  const Entry *own = Editor::find(tree, "areas"), *all = Editor::find(root, "areas");
  const bool areSame = own == nullptr || own->value.items.size() == all->value.items.size();
  return areSame ? path : renumbered(path, own->value, all->value);
}

void add(const base::Diagnostic& d, base::Diagnostics& to) {
  if (d.severity == base::Severity::Error) to.error(d.pos, d.path, d.message, d.hint);
  else to.warn(d.pos, d.path, d.message, d.hint);
}

}  // namespace

std::size_t areaNamed(const Node& areas, const std::string& name) {
  const auto found = std::find_if(areas.items.begin(), areas.items.end(),
                                  [&](const Node& area) { return nameOf(area) == name; });
  return static_cast<std::size_t>(found - areas.items.begin());
}

bool isLeftOut(const Node& choice, const Node& area) {
  const Entry* list = Editor::find(choice, "leave_out");
  return list != nullptr && std::any_of(list->value.items.begin(), list->value.items.end(),
                                        [&](const Node& name) { return name.word == nameOf(area); });
}

Node withChoice(const Node& root, const Node& choice) {
  Node tree = root;
  for (const char* key : {"choices", "chosen"}) remove(tree, key);
  for (const char* key : choiceKeys) {
    if (const Entry* e = Editor::find(choice, key)) put(tree, *e);
  }
  const auto areas =
      std::find_if(tree.entries.begin(), tree.entries.end(), [](const Entry& e) { return e.key == "areas"; });
  if (areas == tree.entries.end()) return tree;
  auto& items = areas->value.items;
  if (const Entry* coats = Editor::find(choice, "coats")) {
    for (Node& area : items) {
      if (area.kind == Node::Kind::Map) put(area, *coats);
    }
  }
  if (const Entry* own = Editor::find(choice, "areas")) {
    for (Node area : own->value.items) {
      const std::size_t at = areaNamed(areas->value, nameOf(area));
      if (at == items.size()) continue;
      remove(area, "name");
      layKeys(items[at], std::move(area));
    }
  }
  const auto goes = [&](const Node& area) { return isLeftOut(choice, area); };
  if (!std::all_of(items.begin(), items.end(), goes)) std::erase_if(items, goes);
  return tree;
}

std::vector<ReadJob> readJobs(const std::string& bytes, const std::string& file,
                              const model::Content& content) {
  base::Diagnostics common;
  std::vector<ReadJob> all;
  const auto keep = [&](const base::Diagnostics& unsorted, model::Job job) {
    ReadJob& read = all.emplace_back(ReadJob{std::move(job), {}});
    forwardSorted(unsorted, read.messages);
  };
  const std::optional<Node> root = parseTree(bytes, file, common);
  const Entry* list = root ? Editor::find(*root, "choices") : nullptr;
  if (list == nullptr) {
    keep(common, root ? readTree(*root, file, content, common) : model::Job{});
    return all;
  }
  const Source source{file, common};
  const Field field(source, &list->value, "choices", list->value.mark);
  const auto items = field.items();
  if (list->value.kind == Node::Kind::List && (items.size() < fewest || items.size() > most))
    field.error("two or three choices stand side by side, not " + std::to_string(items.size()),
                "take some out, or leave 'choices' out where there is but one way");
  const auto choices = readNames(items, namesOf(*root));
  const Entry* word = Editor::find(*root, "chosen");
  std::size_t taken = 0;
  bool isTaken = false;
  if (word != nullptr) {
    if (const auto chosen = readChosen({source, &word->value, "chosen", word->value.mark}, choices)) {
      taken = *chosen;
      isTaken = true;
    }
  }
  for (const char* key : {"accepted", "done", "left", "invoices"}) {
    const Entry* e = Editor::find(*root, key);
    if (e != nullptr && word == nullptr)
      Field(source, &e->value, key, e->value.mark)
          .error("belongs to one of the choices, and none is chosen", "add a line like chosen: 1");
  }
  for (std::size_t i = 0; i < items.size(); ++i) {
    Node tree = withChoice(*root, list->value.items[i]);
    if (i != taken) {
      for (const char* key : recorded) remove(tree, key);
    }
    base::Diagnostics own, placed = common;
    model::Job job = readTree(tree, file, content, own);
    job.choices = choices;
    job.choice = i;
    job.isChosen = isTaken && i == taken;
    std::set<std::string> told;
    const Span span = spanOf(*root, list->value, i);
    const std::string prefix = "choices[" + std::to_string(i + 1) + "].";
    for (base::Diagnostic d : own.all()) {
      const Mark at{d.pos.line, d.pos.column};
      if (span.holds(at)) d.path = pathIn(list->value.items[i], prefix, d.path, at, tree);
      else d.path = pathAmongAll(d.path, tree, *root);
      if (!told.insert(base::format(d)).second) continue;  // 'coats' stands in every area
      add(d, placed);
    }
    keep(placed, std::move(job));
  }
  if (all.empty()) keep(common, model::Job{});
  return all;
}

void addOfChoices(const std::vector<base::Diagnostics>& told, base::Diagnostics& messages) {
  std::map<std::string, std::size_t> times;
  for (const auto& own : told) {
    std::set<std::string> once;
    for (const auto& d : own.all()) once.insert(base::format(d));
    for (const auto& words : once) ++times[words];
  }
  base::Diagnostics all;
  std::set<std::string> said;
  for (std::size_t i = 0; i < told.size(); ++i) {
    for (base::Diagnostic d : told[i].all()) {
      const bool isCommon = times.at(base::format(d)) == told.size();
      if (!isCommon && !d.path.starts_with("choices["))
        d.message += " (in choice " + std::to_string(i + 1) + ")";
      if (!said.insert(base::format(d)).second) continue;
      add(d, all);
    }
  }
  forwardSorted(all, messages);
}

std::size_t driving(const std::vector<ReadJob>& jobs) {
  const auto chosen =
      std::find_if(jobs.begin(), jobs.end(), [](const ReadJob& read) { return read.job.isChosen; });
  return chosen == jobs.end() ? 0 : static_cast<std::size_t>(chosen - jobs.begin());
}

model::Job readJob(const std::string& text, const std::string& file, const model::Content& content,
                   base::Diagnostics& messages) {
  auto all = readJobs(text, file, content);
  ReadJob& read = all[driving(all)];
  messages.add(read.messages);
  return std::move(read.job);
}

}  // namespace input
