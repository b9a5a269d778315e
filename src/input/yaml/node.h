// A YAML document as a tree in which every key and value knows its line and column.
#pragma once

#include <string>
#include <vector>

namespace input {

struct Mark {
  int line = 0, column = 0;  // both from 1; columns count letters
  bool isOverlay = false;    // in the file that is laid over the first
};

struct Entry;

struct Node {
  enum class Kind {
    Nothing,  // 'key:' with no value
    Word,     // text, number, date: any single value
    List,
    Map,
    Broken  // an error was reported already
  };
  Kind kind = Kind::Nothing;
  Mark mark;
  std::string word;
  std::vector<Node> items;     // of a list
  std::vector<Entry> entries;  // of a map, in the order written, doubles included
};

struct Entry {
  std::string key;
  Mark mark;  // of the key
  Node value;
};

}  // namespace input
