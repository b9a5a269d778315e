#include "app/system/files.h"

#include "app/system/process.h"

#include <fcntl.h>
#include <unistd.h>
#include <cerrno>
#include <filesystem>
#include <iostream>
#include <stdexcept>
#include <system_error>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr int newFile = O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC;
constexpr auto cannotBeWritten = "cannot be written";

/// Opens a file beside 'path' that nobody else has; tells its name.
int openBeside(const std::string& path, std::string& name) {
  for (int n = 1;; ++n) {
    name = besideName(path, n);
    const int fd = ::open(name.c_str(), newFile, 0666);
    if (fd >= 0) return fd;
    if (errno != EEXIST) failOn(path, cannotBeWritten);
  }
}

/// Writes and closes; 'path' is for messages.
void fill(int fd, const std::string& bytes, const std::string& path) {
  std::size_t done = 0;
  while (done < bytes.size()) {
    const auto n = ::write(fd, bytes.data() + done, bytes.size() - done);
    if (n < 0) {
      const int reason = errno;
      ::close(fd);
      errno = reason;
      failOn(path, cannotBeWritten);
    }
    done += static_cast<std::size_t>(n);
  }
  const bool isSafe = ::fsync(fd) == 0;
  if (::close(fd) != 0 || !isSafe) failOn(path, cannotBeWritten);
}

void syncFolder(const fs::path& folder) {
  const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return;  // some file systems do not open folders; the rename itself has happened
  ::fsync(fd);
  ::close(fd);
}

}  // namespace

void failOn(const std::string& path, const std::string& what) {
  throw std::runtime_error(path + ": " + what + ": " + std::generic_category().message(errno));
}

std::string besideName(const std::string& path, int n) {
  const fs::path p(path);
  const std::string tail = besideMark + std::to_string(::getpid()) + "-" + std::to_string(n);
  return (p.parent_path() / ("." + p.filename().string() + tail)).string();
}

void writeNew(const std::string& path, const std::string& bytes, const std::string& shown) {
  const int fd = ::open(path.c_str(), newFile, 0666);
  if (fd < 0) failOn(shown, cannotBeWritten);
  fill(fd, bytes, shown);
}

void writeAll(const std::vector<OutputFile>& files) {
  const auto whole = unbroken();
  std::vector<std::string> written;
  try {
    for (const auto& file : files) {
      const fs::path folder = fs::path(file.path).parent_path();
      if (!folder.empty()) fs::create_directories(folder);
      std::string name;
      const int fd = openBeside(file.path, name);
      written.push_back(name);
      fill(fd, file.bytes, file.path);
    }
    for (std::size_t i = 0; i < files.size(); ++i) fs::rename(written[i], files[i].path);
  } catch (const std::exception&) {
    std::error_code ignored;
    for (const auto& part : written) fs::remove(part, ignored);
    throw;
  }
  if (!files.empty()) syncFolder(fs::path(files.front().path).parent_path());
}

std::string programFolder() { return fs::read_symlink("/proc/self/exe").parent_path().string(); }

std::string shippedFolder(const std::string& name) {
  const fs::path here = programFolder();
  for (const fs::path& base : {here, here.parent_path(), here.parent_path() / "share/planksheaf"}) {
    if (fs::is_directory(base / name)) return (base / name).string();
  }
  throw std::runtime_error("the folder '" + name + "' that comes with planksheaf is not beside the program");
}

std::string readStandardInput() {
  constexpr std::size_t most = 2 << 20;  // more than any job may have
  std::string bytes;
  char block[1 << 16];
  while (bytes.size() < most && (std::cin.read(block, sizeof block) || std::cin.gcount() > 0))
    bytes.append(block, static_cast<std::size_t>(std::cin.gcount()));
  return bytes;
}

}  // namespace app
