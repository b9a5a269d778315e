#include "app/after/letters.h"

#include "app/pack/documents.h"
#include "app/system/folder_exchange.h"
#include "app/system/parallel.h"

#include <algorithm>
#include <filesystem>
#include <map>

namespace app {
namespace fs = std::filesystem;
namespace {

constexpr auto document = "reminder", mail = "reminder_mail";
constexpr std::chrono::days noticeOf{7};  // nobody is asked about a week that has begun

/// Up to the next ten, without coins: the boards are not looked over yet.
base::Money guidePrice(const model::JobResult& visit) {
  std::int64_t ten = 10;
  for (int digit = 0; digit < visit.c.region->currencyDigits; ++digit) ten *= 10;
  return {base::divide(visit.price.total.minor, ten, base::Round::Up) * ten};
}

std::string mailText(const Letter& letter, const model::Customer& customer) {
  const std::string to = customer.email.empty() ? "" : "To: " + customer.name + " <" + customer.email + ">\n";
  return to + "Subject: " + letter.title + "\n\n" + letter.text;
}

/// The letter and the e-mail of one visit; none where there are mistakes.
std::vector<OutputFile> lettersOf(NextVisit& v, base::Date today, const Choices& choices,
                                  base::Diagnostics& messages) {
  if (!v.next) return {};
  auto& x = v.last.value();
  x.offer = {guidePrice(*v.next), v.visit.due, std::max(v.visit.due, today + noticeOf)};
  auto files = makeDocuments(x, *v.shipped, choices, {document}, messages);
  for (auto& file : files) file.path = v.visit.ref + file.path.substr(std::string(document).size());
  if (const auto letter = makeLetter(mail, document, x, *v.shipped, choices, messages))
    files.push_back({v.visit.ref + ".txt", mailText(*letter, x.c.job.customer)});
  return messages.ok() ? files : std::vector<OutputFile>{};
}

}  // namespace

std::vector<Reminder> makeLetters(std::vector<NextVisit>& visits, base::Date today, const Choices& choices,
                                  base::Diagnostics& messages) {
  std::vector<Reminder> made(visits.size());
  std::vector<base::Diagnostics> told(visits.size());
  inParallel(visits.size(), 0, [&](std::size_t i) {
    const auto& v = visits[i].visit;
    made[i] = {v.customer, v.ref, {}};
    tellingFailures(v, told[i], [&] { made[i].files = lettersOf(visits[i], today, choices, told[i]); });
  });
  std::map<std::string, std::string> jobs;  // by number
  for (std::size_t i = 0; i < visits.size(); ++i) {
    const auto& v = visits[i].visit;
    if (const auto [other, isNew] = jobs.emplace(v.ref, v.file); !isNew) {
      told[i].error({v.file}, "ref", "has the same number as '" + other->second + "'",
                    "give each job a number of its own: the letter is named after it");
      made[i].files.clear();
    }
    if (!told[i].ok()) messages.add(told[i]);
  }
  return made;
}

bool writeLetters(const std::string& folder, const std::vector<Reminder>& letters,
                  base::Diagnostics& messages) {
  std::error_code failed;
  if (fs::exists(folder, failed) && !fs::is_empty(folder, failed)) {
    messages.error({"--letters"}, "", "'" + folder + "' is there already and not empty",
                   "name a new folder; nothing is written over");
    return false;
  }
  std::vector<OutputFile> files;
  std::set<std::string> names;
  for (const auto& letter : letters) {
    files.insert(files.end(), letter.files.begin(), letter.files.end());
    for (const auto& file : letter.files) names.insert(file.path);
  }
  exchangeFolder({folder, std::move(files), names, names});
  return true;
}

}  // namespace app
