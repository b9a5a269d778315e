#include "app/files.h"

#include <fcntl.h>
#include <unistd.h>
#include <filesystem>
#include <iostream>
#include <stdexcept>
#include <system_error>

namespace app {
namespace fs = std::filesystem;
namespace {

[[noreturn]] void fail(const std::string& what, const std::string& path) {
  throw std::runtime_error(path + ": " + what + ": " + std::generic_category().message(errno));
}

void writeSynced(const std::string& path, const std::string& bytes) {
  const int fd = ::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
  if (fd < 0) fail("cannot be written", path);
  std::size_t done = 0;
  while (done < bytes.size()) {
    const auto n = ::write(fd, bytes.data() + done, bytes.size() - done);
    if (n < 0) {
      ::close(fd);
      fail("cannot be written", path);
    }
    done += static_cast<std::size_t>(n);
  }
  const bool isSynced = ::fsync(fd) == 0;
  if (::close(fd) != 0 || !isSynced) fail("cannot be written", path);
}

void syncFolder(const fs::path& folder) {
  const int fd = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return;  // some file systems do not open folders; the rename itself has happened
  ::fsync(fd);
  ::close(fd);
}

}  // namespace

void writeAll(const std::vector<OutputFile>& files) {
  std::vector<std::string> written;
  try {
    for (const auto& file : files) {
      const fs::path folder = fs::path(file.path).parent_path();
      if (!folder.empty()) fs::create_directories(folder);
      written.push_back(file.path + ".part");
      writeSynced(written.back(), file.bytes);
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
