// 'planksheaf firm': a firm's folder to fill in.
#pragma once

#include <string>
#include <vector>

namespace app {

/// Writes a folder with a commented 'firm.yaml' that works in every region, and copies of shipped files to
/// edit, named as in the folder: 'templates/en/quote.md', or a whole 'templates'. Into a folder that has a
/// 'firm.yaml' it puts only copies; nothing is written over. Returns the program's exit status.
int newFirm(const std::string& folder, const std::string& region, const std::vector<std::string>& copies);

}  // namespace app
