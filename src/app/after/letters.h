// Reminders for the customers whose yearly visit falls due.
#pragma once

#include "app/after/next_visits.h"
#include "app/system/files.h"

namespace app {

/// To one customer, by the names of its files; none where it could not be made.
struct Reminder {
  std::string customer, ref;  // of the job it comes after
  std::vector<OutputFile> files;
};

/// For each visit a letter in each of the customer's languages, 'LA-2027-031.pdf', and the text of an e-mail
/// in his main one beside it, 'LA-2027-031.txt'. Mistakes go to 'messages'; they stop no other letter.
std::vector<Reminder> makeLetters(std::vector<NextVisit>& visits, base::Date today, const Choices& choices,
                                  base::Diagnostics& messages);

/// Writes them into a folder that is new or empty, all or none. False, and an error, where it is neither.
bool writeLetters(const std::string& folder, const std::vector<Reminder>& letters,
                  base::Diagnostics& messages);

}  // namespace app
