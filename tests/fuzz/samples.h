// Whole samples of what the program reads: those of the examples and the tests, and small fonts.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace fuzz {

inline const std::filesystem::path source = SOURCE_DIR;

std::string bytesOf(const std::filesystem::path& file);

/// The bytes of the files in a folder that end so, but one, in the order of their names.
std::vector<std::string> filesIn(const std::filesystem::path& folder, const std::string& ending,
                                 const std::string& except = "");

/// Files of a firm's folder, each under a line with its name.
std::vector<std::string> firmSamples();
/// Faces cut down to a few letters.
std::vector<std::string> fontSamples();
std::vector<std::string> jobSamples();
std::vector<std::string> jpegSamples();
std::vector<std::string> pngSamples();
std::vector<std::string> themeSamples();

}  // namespace fuzz
