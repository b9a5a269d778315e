#include "input/yaml/quick_yaml.h"

#include <yaml.h>

#include <memory>
#include <string_view>

namespace input {
namespace {

/// Thrown and caught in this file only: the text is left to yaml-cpp.
struct NotPlain {};

constexpr int deepest = 40;

Mark markOf(const yaml_mark_t& m) { return {static_cast<int>(m.line) + 1, static_cast<int>(m.column) + 1}; }

/// What yaml-cpp takes for an empty value.
bool isNull(std::string_view word) {
  return word.empty() || word == "~" || word == "null" || word == "Null" || word == "NULL";
}

class Event {
 public:
  explicit Event(yaml_parser_t& parser) {
    if (yaml_parser_parse(&parser, &event_) == 0) throw NotPlain{};
  }
  ~Event() { yaml_event_delete(&event_); }
  Event(const Event&) = delete;
  Event& operator=(const Event&) = delete;

  const yaml_event_t* operator->() const { return &event_; }

 private:
  yaml_event_t event_;
};

class Reader {
 public:
  explicit Reader(const std::string& text) {
    if (yaml_parser_initialize(&parser_) == 0) throw std::bad_alloc();
    yaml_parser_set_encoding(&parser_, YAML_UTF8_ENCODING);
    yaml_parser_set_input_string(&parser_, reinterpret_cast<const unsigned char*>(text.data()), text.size());
  }
  ~Reader() { yaml_parser_delete(&parser_); }
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  Node read() {
    expect(YAML_STREAM_START_EVENT);
    const Event start(parser_);
    if (start->type != YAML_DOCUMENT_START_EVENT || start->data.document_start.implicit == 0)
      throw NotPlain{};
    const Event first(parser_);
    if (first->type == YAML_SCALAR_EVENT) throw NotPlain{};
    Node root = node(first, {}, 0);
    const Event end(parser_);
    if (end->type != YAML_DOCUMENT_END_EVENT || end->data.document_end.implicit == 0) throw NotPlain{};
    expect(YAML_STREAM_END_EVENT);
    return root;
  }

 private:
  void expect(yaml_event_type_t type) {
    if (Event(parser_)->type != type) throw NotPlain{};
  }

  /// 'holder' is the place of the key or list an empty value belongs to.
  Node node(const Event& event, Mark holder, int depth) {
    if (depth > deepest) throw NotPlain{};
    switch (event->type) {
      case YAML_SCALAR_EVENT:
        return word(event, holder);
      case YAML_SEQUENCE_START_EVENT:
        if (event->data.sequence_start.anchor || event->data.sequence_start.tag) throw NotPlain{};
        return list(event, depth);
      case YAML_MAPPING_START_EVENT:
        if (event->data.mapping_start.anchor || event->data.mapping_start.tag) throw NotPlain{};
        return map(event, depth);
      default:
        throw NotPlain{};
    }
  }

  static Node word(const Event& event, Mark holder) {
    const auto& scalar = event->data.scalar;
    const std::string_view value(reinterpret_cast<const char*>(scalar.value), scalar.length);
    // Words that go on on the next lines are joined by blanks; all else of several lines has rules of its
    // own.
    const bool isOneLine = event->start_mark.line == event->end_mark.line;
    const bool isJoined =
        (scalar.style == YAML_PLAIN_SCALAR_STYLE || scalar.style == YAML_SINGLE_QUOTED_SCALAR_STYLE) &&
        value.find('\n') == std::string_view::npos;
    if (scalar.anchor || scalar.tag || !(isOneLine || isJoined)) throw NotPlain{};
    Node n;
    if (scalar.style == YAML_PLAIN_SCALAR_STYLE && isNull(value)) {
      n.mark = holder;
      return n;
    }
    n.kind = Node::Kind::Word;
    n.mark = markOf(event->start_mark);
    n.word = value;
    return n;
  }

  Node list(const Event& start, int depth) {
    Node n;
    n.kind = Node::Kind::List;
    n.mark = markOf(start->start_mark);
    while (true) {
      const Event item(parser_);
      if (item->type == YAML_SEQUENCE_END_EVENT) return n;
      n.items.push_back(node(item, n.mark, depth + 1));
    }
  }

  Node map(const Event& start, int depth) {
    Node n;
    n.kind = Node::Kind::Map;
    n.mark = markOf(start->start_mark);
    while (true) {
      const Event key(parser_);
      if (key->type == YAML_MAPPING_END_EVENT) return n;
      if (key->type != YAML_SCALAR_EVENT) throw NotPlain{};
      Node name = word(key, {});
      if (name.kind != Node::Kind::Word || name.word == "<<") throw NotPlain{};
      n.entries.push_back({std::move(name.word), name.mark, {}});
      const Event value(parser_);
      n.entries.back().value = node(value, name.mark, depth + 1);
    }
  }

  yaml_parser_t parser_;
};

}  // namespace

std::optional<Node> readQuickly(const std::string& text) {
  try {
    return Reader(text).read();
  } catch (const NotPlain&) {
    return {};
  }
}

}  // namespace input
