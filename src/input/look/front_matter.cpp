#include "input/look/front_matter.h"

#include "input/read.h"
#include "input/yaml/cursor.h"
#include "input/yaml/sorted.h"

#include <algorithm>

namespace input {
namespace {

constexpr Word<model::Reader> readerWords[] = {
    {"customer", model::Reader::Customer}, {"crew", model::Reader::Crew}, {"office", model::Reader::Office}};
constexpr Word<bool> tableWords[] = {{"small", true}, {"normal", false}};
constexpr Word<bool> readingWords[] = {{"large", true}, {"normal", false}};
constexpr Word<model::DocumentNeeds> needWords[] = {{"coats", model::DocumentNeeds::Coats},
                                                    {"invoices", model::DocumentNeeds::Invoices}};
constexpr Limits<int> pageCounts = {1, 99, "from 1 to 99"};

model::DocumentKind readKind(Record& r) {
  model::DocumentKind kind;
  kind.reader = choice(r.must("reader", "customer"), readerWords, "reader", model::Reader::Customer);
  kind.heading = text(r.must("heading", "Invoice"));
  const Field most = r.may("most_pages");
  kind.isByDay = most.isGiven() && most.word() == "by day";
  if (most.isGiven() && !kind.isByDay) kind.mostPages = static_cast<std::size_t>(whole(most, pageCounts, 1));
  kind.morePages = static_cast<std::size_t>(whole(r.may("more_pages"), {0, 9, "from 0 to 9"}, 0));
  if (const Field f = r.may("letterhead"); f.isGiven()) kind.hasLetterhead = yesNo(f, false);
  if (const Field f = r.may("tables"); f.isGiven())
    kind.hasSmallTables = choice(f, tableWords, "size", false);
  if (const Field f = r.may("reading"); f.isGiven())
    kind.hasLargeReading = choice(f, readingWords, "size", false);
  if (const Field f = r.may("needs"); f.isGiven()) kind.needs = choice(f, needWords, "need", kind.needs);
  return kind;
}

/// Reads YAML with 'read', which gets its keys; mistakes come in the order of their lines.
template <class Read>
void readKeys(const std::string& yaml, const std::string& file, base::Diagnostics& out, Read read) {
  base::Diagnostics messages;
  if (const std::optional<Node> root = parseTree(yaml, file, messages)) {
    const Source source{file, messages};
    Record r(Field(source, &*root, "", root->mark));
    read(r);
    r.finish();
  }
  forwardSorted(messages, out);
}

/// The line that begins at 'at', without its end, and where the next begins.
std::string_view lineAt(const std::string& text, std::size_t& at) {
  const std::size_t end = std::min(text.find('\n', at), text.size());
  std::string_view line(text.data() + at, end - at);
  if (line.ends_with('\r')) line.remove_suffix(1);
  at = std::min(end + 1, text.size());
  return line;
}

}  // namespace

TemplateText readTemplate(const std::string& text, const std::string& file, base::Diagnostics& messages) {
  constexpr std::string_view fence = "---", byteOrderMark = "\xEF\xBB\xBF";
  std::size_t at = text.starts_with(byteOrderMark) ? byteOrderMark.size() : 0;
  if (lineAt(text, at) != fence) return {{}, text, 1};
  std::string yaml = "\n";  // for the fence, so that lines keep their numbers
  for (int line = 2; at < text.size(); ++line) {
    const auto words = lineAt(text, at);
    if (words != fence) {
      yaml.append(words) += '\n';
      continue;
    }
    model::DocumentKind kind;
    readKeys(yaml, file, messages, [&](Record& r) { kind = readKind(r); });
    return {std::move(kind), text.substr(at), line + 1};
  }
  messages.error({file, 1, 1}, "", "the head of the template has no end", "close it with a line of '---'");
  return {model::DocumentKind{}, "", 1};
}

std::vector<std::string> readPackList(const std::string& file, const std::vector<std::string>& known,
                                      base::Diagnostics& messages) {
  std::vector<std::string> names;
  const auto bytes = readFile(file);
  if (!bytes) {
    messages.error({file}, "", "cannot be read: " + whyUnreadable(file), "check that it may be read");
    return names;
  }
  readKeys(*bytes, file, messages, [&](Record& r) {
    const Field list = r.must("documents", "[quote]");
    for (const Field& item : list.items()) {
      const std::string name = text(item);
      if (std::find(known.begin(), known.end(), name) == known.end())
        reportUnknown(item, name, "document", known);
      else if (std::find(names.begin(), names.end(), name) != names.end())
        item.error(inQuotes(name) + " is given twice", "leave one out");
      else names.push_back(name);
    }
    if (list.isEmptyList()) list.error("the list is empty", "name a document");
  });
  return names;
}

}  // namespace input
