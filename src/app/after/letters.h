// Reminders for the customers whose yearly visit falls due.
#pragma once

#include "app/after/next_visits.h"
#include "app/system/files.h"

namespace app {

/// For each visit a letter in each of the customer's languages, 'LA-2027-031.pdf', and the text of an e-mail
/// in his main one beside it, 'LA-2027-031.txt'. Mistakes go to 'messages'; then the result is not to be
/// written.
std::vector<OutputFile> makeLetters(std::vector<NextVisit>& visits, base::Date today, const Choices& choices,
                                    base::Diagnostics& messages);

/// Writes them into a folder that is new or empty, all or none. An error where it is neither.
void writeLetters(const std::string& folder, const std::vector<OutputFile>& letters,
                  base::Diagnostics& messages);

}  // namespace app
