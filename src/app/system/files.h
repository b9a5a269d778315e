// Files in and out: whole or not at all.
#pragma once

#include <string>
#include <vector>

namespace app {

struct OutputFile {
  std::string path;
  std::string bytes;
};

/// Writes a file that is not there yet, nor a link of its name. Throws std::runtime_error naming 'shown'.
void writeNew(const std::string& path, const std::string& bytes, const std::string& shown);

/// Writes all files beside their final names first and renames them only when every one is safely on disk, so
/// that a failure leaves older files as they were. Creates folders. Throws std::runtime_error naming the
/// file.
void writeAll(const std::vector<OutputFile>& files);

/// A name beside 'path' for what is not whole yet, hidden: its own, the mark, the process, and 'n'.
constexpr auto besideMark = ".planksheaf-";
std::string besideName(const std::string& path, int n);

/// Throws std::runtime_error: 'path: what: ' and why the system says so.
[[noreturn]] void failOn(const std::string& path, const std::string& what);

/// The folder of the running program.
std::string programFolder();

/// A folder that comes with the program ('content' or 'templates'): beside the program's folder, in its
/// parent, or in
/// ../share/planksheaf. Throws std::runtime_error when there is none.
std::string shippedFolder(const std::string& name);

/// All of standard input, or its first 2 MiB: twice what a job may have.
std::string readStandardInput();

}  // namespace app
