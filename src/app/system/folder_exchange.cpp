#include "app/system/folder_exchange.h"

#include "app/system/process.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <stdexcept>

namespace app {
namespace fs = std::filesystem;
namespace {

using Names = std::set<std::string>;

/// What lies there, links not followed.
std::optional<struct stat> lookAt(const fs::path& path) {
  struct stat found {};
  if (::lstat(path.c_str(), &found) != 0) return {};
  return found;
}

bool isFolder(const fs::path& path) {
  const auto found = lookAt(path);
  return found && S_ISDIR(found->st_mode);
}

/// Keeps other runs out of the folders below 'parent'. Some network file systems do not lock folders: there
/// two runs at once each exchange a whole folder all the same, and leave what others have made alone.
class Lock {
 public:
  explicit Lock(const fs::path& parent) : fd_(::open(parent.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (fd_ < 0) failOn(parent.string(), "cannot be opened");
    do isHeld_ = ::flock(fd_, LOCK_EX) == 0;
    while (!isHeld_ && errno == EINTR);
  }
  ~Lock() { ::close(fd_); }
  Lock(const Lock&) = delete;
  Lock& operator=(const Lock&) = delete;
  bool isHeld() const { return isHeld_; }

 private:
  int fd_;
  bool isHeld_ = false;
};

fs::path makeBeside(const fs::path& folder) {
  for (int n = 1;; ++n) {
    const fs::path path = besideName(folder.string(), n);
    if (::mkdir(path.c_str(), 0777) == 0) return path;
    if (errno != EEXIST) failOn(folder.string(), "cannot be written");
  }
}

/// Whether 'path' is a folder that makeBeside(folder) has made, in this run or any.
bool isMadeBeside(const fs::path& path, const fs::path& folder, bool isOfThisRun) {
  const std::string name = path.filename().string();
  const std::string start =
      "." + folder.filename().string() + besideMark + (isOfThisRun ? std::to_string(::getpid()) + "-" : "");
  if (!name.starts_with(start) || name.find_first_not_of("0123456789-", start.size()) != std::string::npos)
    return false;
  const auto found = lookAt(path);
  return found && S_ISDIR(found->st_mode) && (::geteuid() == 0 || found->st_uid == ::geteuid());
}

/// Gives a folder the owner and rights of another.
bool makeAlike(const fs::path& folder, const fs::path& model) {
  const auto is = lookAt(folder), wanted = lookAt(model);
  if (!is || !wanted) return false;
  const bool isOwned = is->st_uid == wanted->st_uid && is->st_gid == wanted->st_gid;
  if (!isOwned && ::lchown(folder.c_str(), wanted->st_uid, wanted->st_gid) != 0) return false;
  return ::chmod(folder.c_str(), wanted->st_mode & 07777) == 0;
}

/// Links all but 'except' into another folder; false where that cannot be done to the last file.
bool linkAll(const fs::path& from, const fs::path& to, const Names& except) {
  if (::access(from.c_str(), R_OK | W_OK | X_OK) != 0 || !makeAlike(to, from)) return false;
  for (const auto& entry : fs::directory_iterator(from)) {
    const fs::path name = entry.path().filename(), target = to / name;
    if (except.contains(name.string())) continue;
    if (!isFolder(entry)) {
      if (::linkat(AT_FDCWD, entry.path().c_str(), AT_FDCWD, target.c_str(), 0) != 0) return false;
    } else if (::mkdir(target.c_str(), 0777) != 0 || !linkAll(entry, target, {})) {
      return false;
    }
  }
  std::error_code ignored;
  fs::last_write_time(to, fs::last_write_time(from, ignored), ignored);
  return true;
}

/// Whether 'path' was saved after what stands in its place, or nothing does.
bool isNewer(const fs::path& path, const fs::path& inPlace) {
  const auto a = lookAt(path), b = lookAt(inPlace);
  if (!a || !b) return a.has_value();
  if (a->st_dev == b->st_dev && a->st_ino == b->st_ino) return false;
  return std::pair(a->st_mtim.tv_sec, a->st_mtim.tv_nsec) > std::pair(b->st_mtim.tv_sec, b->st_mtim.tv_nsec);
}

/// Removes a folder, but what somebody saved in it while the folders were exchanged goes to its place.
void clear(const fs::path& folder, const fs::path& place, const Names& ours) {
  for (const auto& entry : fs::directory_iterator(folder)) {
    const fs::path name = entry.path().filename(), target = place / name;
    if (isFolder(entry) && isFolder(target)) clear(entry, target, {});
    else if (ours.contains(name.string()) || !isNewer(entry, target)) fs::remove_all(entry);
    else fs::rename(entry, target);
  }
  fs::remove(folder);
}

/// Clears what this run and, under the lock, killed ones have made beside the folder.
void clearAllBeside(const FolderChange& change, const fs::path& parent, const Lock& lock) {
  std::vector<fs::path> found;
  for (const auto& entry : fs::directory_iterator(parent)) {
    if (isMadeBeside(entry, change.folder, !lock.isHeld())) found.push_back(entry);
  }
  for (const auto& path : found) clear(path, change.folder, change.ours);
}

/// Nobody who stands in the folder is to find it gone.
bool isInside(const fs::path& folder) {
  std::error_code gone;
  const auto way = fs::current_path(gone).lexically_relative(fs::canonical(folder));
  return !way.empty() && *way.begin() != "..";
}

/// The old files go before the first new one comes, so that even a killed run never mixes them.
void exchangeFiles(const FolderChange& change, const fs::path& fresh) {
  const fs::path folder = change.folder, old = makeBeside(folder);
  std::vector<std::pair<fs::path, fs::path>> moved;
  const auto move = [&](const fs::path& from, const fs::path& to) {
    fs::rename(from, to);
    moved.emplace_back(from, to);
  };
  try {
    for (const auto& name : change.replaced) {
      if (lookAt(folder / name)) move(folder / name, old / name);
    }
    for (const auto& file : change.files) move(fresh / file.path, folder / file.path);
  } catch (const fs::filesystem_error&) {
    std::error_code ignored;
    for (auto m = moved.rbegin(); m != moved.rend(); ++m) fs::rename(m->second, m->first, ignored);
    throw;
  }
}

void exchange(const FolderChange& change) {
  const fs::path folder = change.folder, fresh = makeBeside(folder);
  const bool isNew = !lookAt(folder);
  const bool isLinked = !isNew && !isInside(folder) && linkAll(folder, fresh, change.replaced);
  for (const auto& file : change.files)
    writeNew((fresh / file.path).string(), file.bytes, (folder / file.path).string());
  if (isNew) {
    fs::rename(fresh, folder);
  } else if (!isLinked ||
             ::renameat2(AT_FDCWD, fresh.c_str(), AT_FDCWD, folder.c_str(), RENAME_EXCHANGE) != 0) {
    exchangeFiles(change, fresh);
  }
}

void exchangeAndClear(const FolderChange& change, const fs::path& parent, const Lock& lock) {
  try {
    if (lookAt(change.folder)) clearAllBeside(change, parent, lock);
    exchange(change);
  } catch (const std::runtime_error&) {
    try {
      clearAllBeside(change, parent, lock);
    } catch (const fs::filesystem_error&) {  // the next run tries again
    }
    throw;
  }
  clearAllBeside(change, parent, lock);
}

/// Throws where the user has something of his own in the way.
void checkPlace(const FolderChange& change) {
  const fs::path folder = change.folder;
  if (lookAt(folder) && !isFolder(folder))
    throw std::runtime_error(
        change.folder + ": is a file or a link, not a folder\n  hint: move it away; nothing was written");
  for (const auto& name : change.replaced) {
    if (isFolder(folder / name))
      throw std::runtime_error(
          (folder / name).string() +
          ": is a folder, not a document\n  hint: give it another name; nothing was written");
  }
}

}  // namespace

void exchangeFolder(const FolderChange& change) {
  checkPlace(change);
  if (change.files.empty() && !lookAt(change.folder)) return;
  const fs::path above = fs::path(change.folder).parent_path(), parent = above.empty() ? "." : above;
  std::error_code failure;
  if (fs::create_directories(parent, failure); failure)
    throw std::runtime_error(parent.string() + ": cannot be made: " + failure.message());
  const Lock lock(parent);
  const auto whole = unbroken();
  try {
    exchangeAndClear(change, parent, lock);
  } catch (const fs::filesystem_error& e) {
    throw std::runtime_error(e.path1().string() + ": cannot be replaced: " + e.code().message());
  }
}

}  // namespace app
