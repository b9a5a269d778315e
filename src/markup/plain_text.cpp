#include "markup/plain_text.h"

namespace markup {
namespace {

/// Fixed spaces and hyphens become those of the keyboard.
std::string typed(std::string text) {
  constexpr std::pair<const char*, const char*> letters[] = {
      {"\u00A0", " "}, {"\u202F", " "}, {"\u2011", "-"}};
  for (const auto& [from, to] : letters) {
    const std::string fixed = from;
    for (std::size_t at = 0; (at = text.find(fixed, at)) != std::string::npos;)
      text.replace(at, fixed.size(), to);
  }
  return text;
}

std::string wordsOf(const Inlines& inlines) {
  std::string words;
  for (const auto& part : inlines) words += part.text;
  return typed(words);
}

/// '- words', a line each; empty where an item holds more than a paragraph.
std::string linesOf(const List& list) {
  std::string lines;
  for (const auto& item : list.items) {
    const auto* only = item.body.size() == 1 ? std::get_if<Paragraph>(&item.body.front().node) : nullptr;
    if (only == nullptr) return {};
    lines += (lines.empty() ? "- " : "\n- ") + wordsOf(only->text);
  }
  return lines;
}

}  // namespace

PlainText plainText(const Document& document) {
  PlainText text;
  for (const auto& block : document.blocks) {
    const auto* heading = std::get_if<Heading>(&block.node);
    if (heading != nullptr && heading->level == 1 && text.title.empty()) {
      text.title = wordsOf(heading->text);
      continue;
    }
    std::string words;
    if (const auto* paragraph = std::get_if<Paragraph>(&block.node)) words = wordsOf(paragraph->text);
    else if (const auto* list = std::get_if<List>(&block.node)) words = linesOf(*list);
    if (words.empty() && text.unreadLine == 0) text.unreadLine = block.line;
    if (!words.empty()) text.body += (text.body.empty() ? "" : "\n\n") + words;
  }
  if (!text.body.empty()) text.body += "\n";
  return text;
}

}  // namespace markup
