#include "input/job/next_year.h"

#include "input/job/choices.h"
#include "input/yaml/edit.h"
#include "input/yaml/quantity.h"

#include <algorithm>

namespace input {
namespace {

/// The entry's key is one of these.
bool isOneOf(const Entry& e, const std::vector<std::string>& keys) {
  return std::find(keys.begin(), keys.end(), e.key) != keys.end();
}

struct Rewriter {
  const Node& root;
  const NextYear& next;
  Editor editor;
  std::vector<std::string> promises;

  void setTop(const char* key, const std::string& word) {
    if (const Entry* e = Editor::find(root, key)) editor.setWord(e->value, word);
  }

  /// The entries of these keys become comments, those in 'gone' go. In braces no line is a comment of its
  /// own: there it stands above the line where the outermost braces begin, and names the place.
  void keepAsComments(const Node& map, const std::vector<std::string>& keys, std::vector<std::string> gone,
                      const std::string& path, const std::vector<const Node*>& around) {
    const auto braces =
        std::find_if(around.begin(), around.end(), [&](const auto* n) { return editor.isFlow(*n); });
    for (const Entry& e : map.entries) {
      if (!isOneOf(e, keys)) continue;
      const std::string promise = path + e.key + ": " + editor.valueText(map, e);
      promises.push_back(promise);
      if (braces == around.end()) {
        editor.commentOut(map, e, gone);
      } else {
        editor.insertLineBefore(**braces, "# " + promise);
        gone.push_back(e.key);
      }
    }
    editor.remove(map, gone);
  }

  void area(const Node& list, std::size_t i) {
    const Node& map = list.items[i];
    const NextYear::Area& a = next.areas.at(i);
    const Entry* state = Editor::find(map, "state");
    editor.setWord(state->value, a.state);
    if (const Entry* coats = Editor::find(map, "coats")) editor.setWord(coats->value, "1");
    else editor.insertAfter(map, *state, "coats: 1", "");
    if (!a.rate.empty()) editor.insertAfter(map, *state, "rates: [" + a.rate + "]", a.why);
    keepAsComments(map, {"note"}, {"rates", "test_patch"}, "areas[" + std::to_string(i + 1) + "].",
                   {&root, &list, &map});
  }

  /// Days off that are past when the work starts say nothing of it.
  void daysOff() {
    const Entry* crew = Editor::find(root, "crew");
    const Entry* off = crew == nullptr ? nullptr : Editor::find(crew->value, "off");
    if (off == nullptr) return;
    std::string kept;
    bool allStay = true;
    for (const Node& day : off->value.items) {
      const auto date = base::parseDate(day.word);
      const bool stays = !date || *date >= next.start;
      if (stays) kept += (kept.empty() ? "" : ", ") + day.word;
      allStay = allStay && stays;
    }
    if (allStay) return;
    if (kept.empty()) editor.remove(crew->value, {"off"});
    else editor.setValue(crew->value, *off, "[" + kept + "]");
  }

  /// Paths in the file begin at its folder.
  void paths() {
    const Entry* firm = Editor::find(root, "firm");
    if (firm == nullptr && !next.firm.empty())
      editor.insertAfter(root, *Editor::find(root, "start"), "firm: " + plainOrQuoted(next.firm), "");
    else if (!next.firm.empty()) editor.setWord(firm->value, plainOrQuoted(next.firm));
    if (!next.spreadingRates.empty()) setTop("spreading_rates", plainOrQuoted(next.spreadingRates));
  }

  std::string rewrite() {
    for (const std::string& line : next.about) editor.insertLineBefore(root, "# " + line);
    const Entry& ref = *Editor::find(root, "ref");
    editor.setWord(ref.value, plainOrQuoted(next.ref));
    if (const Entry* after = Editor::find(root, "after")) {
      if (Editor::find(root, "first_job") == nullptr)
        editor.insertAfter(root, *after, "first_job: " + plainOrQuoted(after->value.word), "");
      editor.setWord(after->value, plainOrQuoted(next.after));
    } else {
      editor.insertAfter(root, ref, "after: " + plainOrQuoted(next.after), "");
    }
    setTop("quoted", base::isoDate(next.quoted));
    setTop("start", base::isoDate(next.start));
    paths();
    daysOff();
    const Entry& work = *Editor::find(root, "work");
    editor.setValue(root, work, "[wash, oil]");
    if (const Entry* site = Editor::find(root, "site"))
      keepAsComments(site->value, {"access"}, {}, "site.", {&root, &site->value});
    const Node& areas = Editor::find(root, "areas")->value;
    for (std::size_t i = 0; i < areas.items.size(); ++i) area(areas, i);
    top();
    std::string text = editor.result();
    const std::string editorsLine = "$schema=";
    const std::size_t at = text.find(editorsLine);
    if (!next.schema.empty() && at != std::string::npos && at < text.find('\n')) {
      const std::size_t from = at + editorsLine.size();
      text.replace(from, text.find_first_of(" \n", from) - from, next.schema);
    }
    return text;
  }

  /// What of the price goes or becomes a comment. When it is all, the whole price does.
  void top() {
    std::vector<std::string> promised = {"title", "included", "excluded", "before_we_come"};
    std::vector<std::string> gone = {"revision", "accepted", "declined", "sanding",
                                     "in_stock", "batches",  "invoices", "photos"};
    // A forecast is of its days; the usual weather of a month comes again.
    if (const Entry* weather = Editor::find(root, "weather");
        weather != nullptr && weather->value.kind == Node::Kind::Word)
      gone.push_back("weather");
    const Entry* price = Editor::find(root, "price");
    const bool hasPrices = price != nullptr && price->value.kind == Node::Kind::Map;
    if (hasPrices) prices(price->value, promised, gone);
    else raise(nullptr, {});
    if (editor.isFlow(root)) gone.insert(gone.end(), {"done", "left"});
    else
      for (const char* key : {"done", "left"}) editor.removeWithHead(root, key);
    keepAsComments(root, promised, gone, "", {&root});
  }

  /// Stages and options speak of last year's work, and a discount was for it.
  void prices(const Node& price, std::vector<std::string>& promised, std::vector<std::string>& gone) {
    std::vector<std::string> given, empty;
    for (const char* key : {"stages", "options", "special_orders"}) {
      const Entry* e = Editor::find(price, key);
      const bool isEmpty = e != nullptr && e->value.kind == Node::Kind::List && e->value.items.empty();
      (isEmpty ? empty : given).emplace_back(key);
    }
    empty.emplace_back("ten_years");  // the first quote looked that far
    const Entry* discount = Editor::find(price, "discount");
    if (discount != nullptr && !parseShare(discount->value.word).value.isZero())
      given.insert(given.end(), {"discount", "discount_reason"});
    const auto isGiven = [&](const Entry& e) { return isOneOf(e, given); };
    const auto& entries = price.entries;
    const auto kept = std::find_if(entries.begin(), entries.end(),
                                   [&](const Entry& e) { return !isGiven(e) && !isOneOf(e, empty); });
    if (kept != entries.end()) {
      raise(&price, kept->key);
      keepAsComments(price, given, empty, "price.", {&root, &price});
    } else {
      raise(nullptr, {});
      (std::any_of(entries.begin(), entries.end(), isGiven) ? promised : gone).emplace_back("price");
    }
  }

  /// Into the price where it stays, behind a key that stays; else a price of its own.
  void raise(const Node* price, const std::string& behind) {
    if (next.raise.empty()) return;
    const std::string words = "raise: " + next.raise, why = "on the firm's rates";
    if (price == nullptr) {
      editor.insertAfter(root, *Editor::find(root, "work"), "price: {" + words + "}", why);
    } else if (const Entry* old = Editor::find(*price, "raise")) {
      editor.setWord(old->value, next.raise);
    } else {
      editor.insertAfter(*price, *Editor::find(*price, behind), words, why);
    }
  }
};

/// On one line.
std::string flowText(const Node& node) {
  const bool isMap = node.kind == Node::Kind::Map;
  if (!isMap && node.kind != Node::Kind::List) return plainOrQuoted(node.word);
  std::string words;
  const auto add = [&](const std::string& part) { words += (words.empty() ? "" : ", ") + part; };
  for (const Node& item : node.items) add(flowText(item));
  for (const Entry& e : node.entries) add(e.key + ": " + flowText(e.value));
  return (isMap ? "{" : "[") + words + (isMap ? "}" : "]");
}

/// A clean text and its tree.
struct ParsedJob {
  std::string text;
  Node root;
};
ParsedJob parsed(const std::string& text) {
  base::Diagnostics messages;
  std::optional<std::string> clean = cleanText(text, "", messages);
  std::optional<Node> root = clean ? parseTree(*clean, "", messages) : std::nullopt;
  if (!root || !messages.ok()) throw std::logic_error("internal error: a job that was read cannot be edited");
  return {std::move(*clean), std::move(*root)};
}

/// The text as if there had never been another choice.
std::string withoutOthers(const std::string& text, std::size_t choice) {
  const ParsedJob job = parsed(text);
  const Node& own = Editor::find(job.root, "choices")->value.items.at(choice);
  const Node whole = withChoice(job.root, own);
  Editor editor(job.text, job.root);
  const auto put = [&](const Node& map, const char* behind, const std::string& key, const Node& value) {
    if (const Entry* e = Editor::find(map, key)) editor.setValue(map, *e, flowText(value));
    else editor.insertAfter(map, *Editor::find(map, behind), key + ": " + flowText(value), "");
  };
  for (const char* key : choiceKeys) {
    if (const Entry* e = Editor::find(own, key)) put(job.root, "ref", key, e->value);
  }
  const Node &areas = Editor::find(job.root, "areas")->value, &merged = Editor::find(whole, "areas")->value;
  if (const Entry* changed = Editor::find(own, "areas")) {
    for (const Node& area : changed->value.items) {
      const auto name = Editor::find(area, "name")->value.word;
      const auto i = areaNamed(areas, name), j = areaNamed(merged, name);
      for (const Entry& e : area.entries) {
        if (e.key != "name")
          put(areas.items.at(i), "name", e.key, Editor::find(merged.items.at(j), e.key)->value);
      }
    }
  }
  for (std::size_t i = 0; i < areas.items.size(); ++i) {
    if (isLeftOut(own, areas.items[i])) editor.commentOutItem(areas, i);
  }
  if (editor.isFlow(job.root)) editor.remove(job.root, {"choices", "chosen"});
  else
    for (const char* key : {"choices", "chosen"}) editor.removeWithHead(job.root, key);
  return editor.result();
}

}  // namespace

NextYearsJob nextYearsJob(const std::string& text, const NextYear& next) {
  const ParsedJob job = parsed(next.choice ? withoutOthers(text, *next.choice) : text);
  Rewriter rewriter{job.root, next, Editor(job.text, job.root), {}};
  std::string fresh = rewriter.rewrite();
  return {std::move(fresh), std::move(rewriter.promises)};
}

}  // namespace input
