// Where the firm's folder of a job is, and what it holds.
#pragma once

#include "base/diagnostic.h"

#include <string>
#include <vector>

namespace app {

/// The tables of content that a firm's folder lays over the shipped ones, key by key.
inline constexpr const char* firmTables[] = {"consumables", "ghs", "hazards", "tasks", "timbers", "tools"};

/// A folder with a 'firm.yaml'.
bool isFirm(const std::string& folder);

/// The nearest folder 'firm' that holds a 'firm.yaml', beside a file or above it; else 'planksheaf' in the
/// user's $XDG_CONFIG_HOME, which is ~/.config where it is not set (XDG Base Directory Specification, 0.8,
/// 2021). Empty where there is neither.
std::string nearestFirm(const std::string& file);

/// 'firm.yaml', 'products/mine.yaml', 'templates/en/quote.md': the files of a firm's folder that are used, by
/// name. Names that are nearly such are mistakes, and so are languages that are not known.
std::vector<std::string> firmFiles(const std::string& folder, const std::vector<std::string>& languages,
                                   base::Diagnostics& messages);

/// The folders in it that hold such files, as far as they are there.
std::vector<std::string> firmFolders(const std::string& folder);

/// '../firm (firm.yaml, products/mine.yaml, templates/en/quote.md)', with a count for more than eight.
std::string firmWords(const std::string& folder, const std::vector<std::string>& files);

}  // namespace app
