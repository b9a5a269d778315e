// What is read quickly, by libyaml, is read as yaml-cpp does, to the last mark.
#include "input/yaml/quick_yaml.h"
#include "input/read.h"
#include "input/yaml/tree.h"

#include <catch2/catch.hpp>

#include <filesystem>
#include <random>
#include <sstream>

namespace fs = std::filesystem;
using input::Node;

namespace {

std::string dump(const Node& n) {
  std::string s = std::to_string(n.mark.line) + ":" + std::to_string(n.mark.column) + " ";
  switch (n.kind) {
    case Node::Kind::Nothing:
      return s + "nothing\n";
    case Node::Kind::Word:
      return s + "'" + n.word + "'\n";
    case Node::Kind::List:
      s += "list of " + std::to_string(n.items.size()) + "\n";
      for (const auto& item : n.items) s += dump(item);
      return s;
    case Node::Kind::Map:
      s += "map of " + std::to_string(n.entries.size()) + "\n";
      for (const auto& e : n.entries)
        s += std::to_string(e.mark.line) + ":" + std::to_string(e.mark.column) + " " + e.key + ": " +
             dump(e.value);
      return s;
    case Node::Kind::Broken:
      return s + "broken\n";
  }
  return s;
}

/// The tree of yaml-cpp as text, or what it says against the file.
std::string byLibrary(const std::string& text) {
  base::Diagnostics messages;
  const auto tree = input::parseWithLibrary(text, "f", messages);
  std::string s = tree ? dump(*tree) : "none\n";
  for (const auto& m : messages.all()) s += base::format(m);
  return s;
}

std::string clean(const std::string& bytes) {
  base::Diagnostics messages;
  return input::cleanText(bytes, "f", messages).value_or("");
}

/// Every YAML file that comes with the program, as clean text.
std::vector<std::pair<std::string, std::string>> allFiles() {
  std::vector<std::pair<std::string, std::string>> files;
  for (const char* folder : {"content", "out_examples", "templates", "tests"}) {
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(SOURCE_DIR) / folder)) {
      if (entry.path().extension() == ".yaml")
        files.emplace_back(entry.path().string(), clean(*input::readFile(entry.path().string())));
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace

TEST_CASE("all YAML of the program gives the tree of yaml-cpp with the same marks") {
  std::size_t plain = 0;
  const auto files = allFiles();
  for (const auto& [name, text] : files) {
    CAPTURE(name);
    const auto tree = input::readQuickly(text);
    if (name.ends_with("/job.yaml")) CHECK(tree);
    if (!tree) continue;
    ++plain;
    CHECK(dump(*tree) == byLibrary(text));
  }
  CHECK(files.size() > 30);
  CHECK(plain * 10 > files.size() * 6);  // else it is not worth its lines
}

TEST_CASE("each form of plain YAML is read as yaml-cpp reads it") {
  const char* const texts[] = {
      "a: 1",
      "a: b c  # said\nd: x#y",
      "# first\n\na:\n  b: 1\n  c:\n    - x\n    - y: 2\n      z: 3\n  d: 4",
      "a:\n- 1\n- 2\nb: 3",
      "a:\nb:\n\n  # nothing but this\nc:",
      "- a\n- b: 1\n  c: 2\n- [1, 2]\n- {x: 1, y: [2, 3]}",
      "a: [1, 'it''s', \"two words\", (3), -4, 5 1/2 in]",
      "a: [one,\n    two,  # told\n    # more\n    three]\nb: {c: 1,\n    d: 2}",
      "a: []\nb: {}\nc: [ ]\nd: [{}, []]",
      "a: {b: {c: [14:40, x:y]}}",
      "\xC3\xA4: 1",
      "a: {\xC3\xA4\xC3\xB6: 1, b: \xE2\x82\xAC 5, c: 6}",
      "a: \xE2\x82\xAC 5, \xC3\xB6, [x] {y} 'z' \"q\"\nb: {c: \xC3\xB6, d: 1}",
      "  a: 1\n  b: 2",
      "a: 'x'   # y\nb: \"z\"",
      "40: 12 m2/h\n60: 1",
      "a: \"b\\n\\\"c\\\" \\u00e9\"",
      "a: [1, ]",
      "a: {b: }",
      "a: ~\nb: null",
      "a: #b",
      "'a': 1\n\"b\": 2",
      "- - a\n- \n- b",
      "a: b\n  c",
      "a: 'b\n c'",
      "a: one  \n   two\n     three # told\nb: {c: one\n    two, d: 'x\n     y'}",
  };
  for (const std::string text : texts) {
    CAPTURE(text);
    const auto tree = input::readQuickly(text);
    REQUIRE(tree);
    CHECK(dump(*tree) == byLibrary(text));
  }
}

TEST_CASE("what needs words about a mistake, or may be taken in two ways, is left to yaml-cpp") {
  const char* const texts[] = {
      "",          "a",          "a: &x 1",        "a: *x",          "a: !t 1",      "a: |\n  x",
      "a: >\n x",  "a: b: c",    "a: b\n\n  c",    "a: 'b\n\n c'",   "a: \"b\n c\"", "null: 1",
      "---\na: 1", "a: 1\n...",  "a: 1\n b: 2",    "a: [1] b",       "a: 'b' c",     "a: [b",
      "a: 'b",     "a: %x",      "a: @x",          "a: {b: 1}\n  x", "a: 1\n- b",    "a: - b",
      "a: {b: c]", "<<: {a: 1}", "[a, b]\n[c, d]",
  };
  for (const std::string text : texts) {
    CAPTURE(text);
    CHECK_FALSE(input::readQuickly(text));
  }
}

TEST_CASE("a file spoiled anywhere is read alike by both libraries, or only by one") {
  std::mt19937 random(20'27);
  const auto below = [&](std::size_t n) { return random() % n; };
  const std::string_view alphabet = " \n:#-[]{},'\"?&*!|>%@\\~.ax1";
  auto files = allFiles();
  std::erase_if(files, [](const auto& file) { return file.second.size() > 8'000; });
  std::size_t plain = 0;
  for (int round = 0; round < 3'000; ++round) {
    std::string text = files[below(files.size())].second;
    // A piece of some lines, so that much of it is reached.
    std::size_t from = text.rfind('\n', below(text.size()));
    from = from == std::string::npos ? 0 : from + 1;
    text = text.substr(from, 400);
    for (std::size_t n = below(3) + 1; n > 0 && !text.empty(); --n) {
      const std::size_t at = below(text.size());
      const char c = alphabet[below(alphabet.size())];
      switch (below(3)) {
        case 0:
          text[at] = c;
          break;
        case 1:
          text.insert(at, 1, c);
          break;
        default:
          text.erase(at, below(4) + 1);
      }
    }
    text = clean(text);
    const auto tree = input::readQuickly(text);
    if (!tree) continue;
    const std::string other = byLibrary(text);
    if (other.starts_with("none")) continue;  // it refuses some YAML, as a '?' in a word within brackets
    ++plain;
    CAPTURE(text);
    REQUIRE(dump(*tree) == other);
  }
  CHECK(plain > 300);
}
