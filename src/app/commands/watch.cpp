#include "app/commands/watch.h"

#include "app/firm/firm_folder.h"
#include "app/system/files.h"
#include "base/hidden.h"
#include "input/read.h"

#include <poll.h>
#include <sys/inotify.h>
#include <unistd.h>
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>
#include <stdexcept>

namespace app {
namespace fs = std::filesystem;
namespace {

/// Tells which files below some folders were saved.
class Watcher {
 public:
  Watcher() : fd_(::inotify_init1(IN_CLOEXEC)) {
    if (fd_ < 0) throw std::runtime_error("files cannot be watched on this system");
  }
  ~Watcher() { ::close(fd_); }
  Watcher(const Watcher&) = delete;
  Watcher& operator=(const Watcher&) = delete;

  /// Editors save by writing, or by renaming a new file over the old one.
  void add(const std::string& folder) {
    const int watch = ::inotify_add_watch(fd_, folder.c_str(), IN_CLOSE_WRITE | IN_MOVED_TO);
    if (watch >= 0) folders_[watch] = folder;
  }

  /// Waits for a save, then until a moment passes without another; the paths that were saved.
  std::set<std::string> wait() {
    constexpr int forEver = -1, aMoment = 10;  // milliseconds
    std::set<std::string> saved;
    read(forEver, saved);
    while (read(aMoment, saved)) {
    }
    return saved;
  }

 private:
  bool read(int timeout, std::set<std::string>& saved) {
    pollfd ready{fd_, POLLIN, 0};
    if (::poll(&ready, 1, timeout) <= 0) return false;
    alignas(inotify_event) char buffer[8192];
    const auto size = ::read(fd_, buffer, sizeof buffer);
    for (long at = 0; at < size;) {
      inotify_event event{};
      std::copy_n(buffer + at, sizeof event, reinterpret_cast<char*>(&event));
      if (event.len > 0) {
        const fs::path path = fs::path(folders_[event.wd]) / (buffer + at + sizeof event);
        const auto kind = path.extension();
        const bool isFolder = (event.mask & IN_ISDIR) != 0;  // that of a pack was exchanged
        if (!isFolder && kind != ".pdf" && kind != ".ics") saved.insert(path.string());
      }
      at += static_cast<long>(sizeof event + event.len);
    }
    return true;
  }

  int fd_;
  std::map<int, std::string> folders_;
};

std::string folderOf(const std::string& file) {
  const auto folder = fs::path(file).parent_path();
  return folder.empty() ? "." : folder.string();
}

std::shared_ptr<const Shipped> shippedFor(const std::string& job, const PackOrder& order) {
  return Firms(order.choices).of({job, input::readFile(job).value_or("")});
}

void addAllFolders(std::set<std::string>& folders, const std::string& top) {
  folders.insert(top);
  for (const auto& entry : fs::recursive_directory_iterator(top)) {
    if (entry.is_directory()) folders.insert(entry.path().string());
  }
}

/// Everything a pack of this job is made from, as folders.
std::set<std::string> foldersOf(const std::string& job, const PackOrder& order) {
  std::set<std::string> folders{folderOf(job)};
  addAllFolders(folders, shippedFolder("content"));
  addAllFolders(folders, shippedFolder("templates"));
  const auto shipped = shippedFor(job, order);
  if (shipped->firmFolder.empty()) return folders;
  folders.insert(shipped->firmFolder);
  for (const auto& folder : firmFolders(shipped->firmFolder)) addAllFolders(folders, folder);
  if (!shipped->firm.logoFile.empty()) folders.insert(folderOf(shipped->firm.logoFile));
  return folders;
}

using Files = std::map<std::string, std::string>;  // a pack, by path

/// The documents as they are now, or nothing and the messages on standard error.
Files build(const std::string& job, const PackOrder& order) {
  Files files;
  base::Diagnostics messages;
  try {
    const auto text = readJobText(job, messages);
    const auto shipped = text ? Firms(order.choices).of(*text) : nullptr;
    const auto made = text ? makePack(*text, *shipped, order, messages) : std::nullopt;
    if (made) {
      writePack(*made, order, *shipped);
      for (const auto& file : made->files) files[(fs::path(made->folder) / file.path).string()] = file.bytes;
    }
  } catch (const std::exception& e) {
    std::cerr << base::printable(job) << ": error: " << base::printable(e.what(), base::Lines::Keep) << "\n";
  }
  std::cerr << base::format(messages);
  return files;
}

/// 'quote' of quote.pdf; the calendar with its ending, because 'job' is the file that was saved.
std::string nameOf(const fs::path& file) {
  return (file.extension() == ".pdf" ? file.stem() : file.filename()).string();
}

void tellChanges(const Files& before, const Files& now, long milliseconds) {
  if (now.empty()) {
    std::cout << "  not made; the pack is as it was\n" << std::flush;
    return;
  }
  std::string names;
  for (const auto& [path, bytes] : now) {
    const auto old = before.find(path);
    if (old == before.end() || old->second != bytes) names += (names.empty() ? "" : ", ") + nameOf(path);
  }
  std::cout << "  " << (names.empty() ? "nothing changed" : "changed: " + names) << " (" << milliseconds
            << " ms)\n"
            << std::flush;
}

}  // namespace

int watch(const std::string& job, const PackOrder& order) {
  Watcher watcher;
  std::set<std::string> folders;
  const auto watchAll = [&] {
    for (const auto& folder : foldersOf(job, order)) {
      if (folders.insert(folder).second) watcher.add(folder);
    }
  };
  Files files = build(job, order);
  watchAll();
  const auto shipped = shippedFor(job, order);
  std::cout << "watching " << base::printable(job) << "; stop with Ctrl-C\n";
  if (!shipped->firmFolder.empty())
    std::cout << "firm: " << base::printable(firmWords(shipped->firmFolder, shipped->firmFiles)) << "\n";
  std::cout << std::flush;
  while (std::cout) {
    auto saved = watcher.wait();
    std::erase_if(saved, [](const std::string& path) { return !fs::exists(path); });  // an editor's own
    if (saved.empty()) continue;
    for (const auto& path : saved) std::cout << base::printable(path) << "\n";
    const auto from = std::chrono::steady_clock::now();
    Files now = build(job, order);
    const auto took = std::chrono::steady_clock::now() - from;
    tellChanges(files, now, std::chrono::duration_cast<std::chrono::milliseconds>(took).count());
    if (!now.empty()) files = std::move(now);
    watchAll();
  }
  return 2;
}

}  // namespace app
