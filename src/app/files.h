// Files in and out: whole or not at all.
#pragma once

#include <string>
#include <vector>

namespace app {

struct OutputFile {
  std::string path;
  std::string bytes;
};

/// Writes all files beside their final names first and renames them only when every one is safely on disk, so
/// that a failure leaves older files as they were. Creates folders. Throws std::runtime_error naming the
/// file.
void writeAll(const std::vector<OutputFile>& files);

/// The folder of the running program.
std::string programFolder();

/// A folder that comes with the program ('content' or 'templates'): beside the program's folder, in its
/// parent, or in
/// ../share/planksheaf. Throws std::runtime_error when there is none.
std::string shippedFolder(const std::string& name);

/// All of standard input, or its first 2 MiB: twice what a job may have.
std::string readStandardInput();

}  // namespace app
