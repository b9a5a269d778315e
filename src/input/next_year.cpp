#include "input/next_year.h"

#include "input/edit.h"

namespace input {
namespace {

/// In double quotes where the words would mean something else to YAML.
std::string plainOrQuoted(const std::string& words) {
  const bool isPlain =
      words.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789/._- ") ==
      std::string::npos;
  if (isPlain && !words.empty() && words.front() != ' ' && words.front() != '-' && words.back() != ' ')
    return words;
  std::string quoted = "\"";
  for (const char c : words) {
    if (c == '"' || c == '\\') quoted += '\\';
    quoted += c;
  }
  return quoted + "\"";
}

struct Rewriter {
  const Node& root;
  const NextYear& next;
  Editor editor;

  void setTop(const char* key, const std::string& word) {
    if (const Entry* e = Editor::find(root, key)) editor.setWord(e->value, word);
  }

  void area(const Node& map, const NextYear::Area& a) {
    const Entry* state = Editor::find(map, "state");
    editor.setWord(state->value, a.state);
    if (const Entry* coats = Editor::find(map, "coats")) editor.setWord(coats->value, "1");
    else editor.insertAfter(map, *state, "coats: 1", "");
    if (!a.rate.empty()) editor.insertAfter(map, *state, "rates: [" + a.rate + "]", a.why);
    const Entry* note = Editor::find(map, "note");
    if (note != nullptr && !editor.isFlow(map)) editor.commentOut(*note);
    editor.remove(map, {"rates", "test_patch", editor.isFlow(map) ? "note" : ""});
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
    if (!next.brand.empty()) setTop("brand", plainOrQuoted(next.brand));
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
    editor.remove(root, {"revision", "title", "sanding", "in_stock", "batches"});
    // A forecast is of its days; the usual weather of a month comes again.
    if (const Entry* weather = Editor::find(root, "weather");
        weather && weather->value.kind == Node::Kind::Word)
      editor.remove(root, {"weather"});
    for (const char* key : {"done", "left"}) editor.removeWithHead(root, key);
    const Node& areas = Editor::find(root, "areas")->value;
    for (std::size_t i = 0; i < areas.items.size(); ++i) area(areas.items[i], next.areas.at(i));
    if (const Entry* price = Editor::find(root, "price"); price && price->value.kind == Node::Kind::Map)
      prices(*price);
    std::string text = editor.result();
    const std::string editorsLine = "$schema=";
    const std::size_t at = text.find(editorsLine);
    if (!next.schema.empty() && at != std::string::npos && at < text.find('\n')) {
      const std::size_t from = at + editorsLine.size();
      text.replace(from, text.find_first_of(" \n", from) - from, next.schema);
    }
    return text;
  }

  /// Stages and options speak of last year's work. A group that holds nothing else goes with them.
  void prices(const Entry& price) {
    std::size_t kept = 0;
    for (const Entry& e : price.value.entries) kept += e.key != "stages" && e.key != "options" ? 1 : 0;
    if (kept == 0) editor.remove(root, {"price"});
    else editor.remove(price.value, {"stages", "options"});
  }
};

}  // namespace

std::string nextYearsJob(const std::string& text, const NextYear& next) {
  base::Diagnostics messages;
  const std::optional<std::string> clean = cleanText(text, "", messages);
  const std::optional<Node> root = clean ? parseTree(*clean, "", messages) : std::nullopt;
  if (!root || !messages.ok()) throw std::logic_error("internal error: a job that was read cannot be edited");
  return Rewriter{*root, next, Editor(*clean, *root)}.rewrite();
}

}  // namespace input
