// A copy of tests/sample_content in a folder of its own, to be spoilt, and all that is said about it.
#pragma once

#include "input/read.h"

#include <unistd.h>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>

namespace fixture {

namespace fs = std::filesystem;

/// A folder that goes away with the test.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("sample-content-" + std::to_string(getpid()))) {
    fs::remove_all(path_);
    fs::copy(fs::path(SOURCE_DIR) / "tests/sample_content", path_, fs::copy_options::recursive);
    std::ofstream(path_ / "logo.png") << "a picture";
    std::ofstream(path_ / "face.ttf") << "a font";
  }
  ~Folder() { fs::remove_all(path_); }

  void edit(const std::string& file, const std::string& from, const std::string& to) const {
    std::string text = input::readFile((path_ / file).string()).value();
    const std::size_t at = text.find(from);
    if (at == std::string::npos) throw std::logic_error(file + " has no '" + from + "'");
    std::ofstream(path_ / file, std::ios::binary) << text.replace(at, from.size(), to);
  }

  model::Content content() { return input::readContent(path_.string(), messages_); }
  model::Firm firm() { return input::readFirm(path_.string(), content(), messages_); }
  model::Theme theme(const std::string& file = "theme.yaml") {
    return input::readTheme((path_ / file).string(), messages_, {(path_ / "shipped").string()});
  }
  void write(const std::string& file, const std::string& text) const {
    fs::create_directories((path_ / file).parent_path());
    std::ofstream(path_ / file, std::ios::binary) << text;
  }

  /// All messages so far, file names without the folder.
  std::string said() const {
    std::string all;
    for (base::Diagnostic d : messages_.all()) {
      d.pos.file = fs::path(d.pos.file).lexically_relative(path_).string();
      all += base::format(d);
    }
    return all;
  }

  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
  base::Diagnostics messages_;
};

struct Bad {
  const char* file;
  const char* from;
  const char* to;
  const char* expected;
};

template <class Read, std::size_t N>
void checkEach(const Bad (&table)[N], Read read) {
  for (const Bad& bad : table) {
    Folder folder;
    folder.edit(bad.file, bad.from, bad.to);
    read(folder);
    INFO(bad.file << ": " << bad.to);
    CHECK(folder.said() == bad.expected);
  }
}

}  // namespace fixture
