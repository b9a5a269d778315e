// A firm's folder for tests of the whole program: its file, logo and themes, and what is said at a pack.
#pragma once

#include "app/commands/commands.h"

#include <unistd.h>
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>

namespace sample {

namespace fs = std::filesystem;

inline std::string bytesOf(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void write(const fs::path& file, const std::string& bytes) {
  fs::create_directories(file.parent_path());
  std::ofstream(file, std::ios::binary) << bytes;
}

inline std::string replaced(std::string text, const std::string& what, const std::string& by) {
  const auto at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), by);
}

/// Keeps what the program says while it lives.
class Listener {
 public:
  Listener() : cerr_(std::cerr.rdbuf(said_.rdbuf())), cout_(std::cout.rdbuf(said_.rdbuf())) {}
  ~Listener() {
    std::cerr.rdbuf(cerr_);
    std::cout.rdbuf(cout_);
  }
  Listener(const Listener&) = delete;
  Listener& operator=(const Listener&) = delete;
  std::string said() const { return said_.str(); }

 private:
  std::ostringstream said_;
  std::streambuf *cerr_, *cout_;
};

/// A firm's folder with its file, logo and theme; goes away again.
class Firm {
 public:
  Firm() : folder_(fs::temp_directory_path() / ("firm" + std::to_string(getpid()))) {
    fs::create_directories(folder_);
    file(replaced(bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/firm.yaml"), "logo: cricketboard.png",
                  "logo: logo.png"));
    logo(bytesOf(SOURCE_DIR "/out_examples/firms/cricketboard/cricketboard.png"));
  }
  ~Firm() { fs::remove_all(folder_); }
  Firm(const Firm&) = delete;
  Firm& operator=(const Firm&) = delete;

  void file(const std::string& text) { write(folder_ / "firm.yaml", text); }
  void logo(const std::string& bytes) { write(folder_ / "logo.png", bytes); }
  void accent(const std::string& colours) {
    std::string text = bytesOf(folder_ / "firm.yaml");
    const auto at = text.find("colours:");
    REQUIRE(at != std::string::npos);
    file(text.replace(at, text.find('\n', at) - at, "colours: {" + colours + "}"));
  }
  /// A theme whose running text is set in these bytes.
  void font(const std::string& bytes) {
    write(folder_ / "themes/broken.ttf", bytes);
    usualFont("broken.ttf");
  }
  void usualFont(const std::string& file) {
    write(folder_ / "themes/generous.yaml", replaced(bytesOf(SOURCE_DIR "/templates/themes/generous.yaml"),
                                                     "text: Vollkorn-Regular.ttf", "text: " + file));
  }

  /// Makes one document; the exit code.
  int pack(const std::string& document = "quote") {
    app::PackOrder order;
    order.jobs = {SOURCE_DIR "/out_examples/porch/job.yaml"};
    order.folder = (folder_ / "out").string();
    order.only = {document};
    order.choices.firm = folder_.string();
    const Listener listener;
    const int status = app::pack(order);
    said_ = listener.said();
    for (std::size_t at; (at = said_.find(folder_.string() + "/")) != std::string::npos;)
      said_.erase(at, folder_.string().size() + 1);
    return status;
  }
  /// What was said at the last pack, with the folder's name cut out.
  const std::string& said() const { return said_; }
  bool wroteFiles() const { return fs::exists(folder_ / "out") && !fs::is_empty(folder_ / "out"); }

 private:
  fs::path folder_;
  std::string said_;
};

/// The whole message of a firm whose job has to be refused.
inline std::string refusal(Firm& firm, const std::string& document = "quote") {
  const int status = firm.pack(document);
  INFO(firm.said());
  CHECK(status == 1);
  CHECK_FALSE(firm.wroteFiles());
  return firm.said();
}

}  // namespace sample
