// What must fit together in a job once all of it is read.
#include "base/joined.h"
#include "base/letters.h"
#include "base/nearest.h"
#include "input/job/job_parts.h"
#include "model/lookup.h"

#include <algorithm>

namespace input {
namespace {

void checkYear(const model::Job& job, base::Diagnostics& messages) {
  const int started = static_cast<int>(std::chrono::year_month_day{job.start}.year());
  if (job.start == base::Date{} || job.site.yearBuilt.value_or(0) <= started) return;
  messages.error(base::placeOf(job.places, "site.year_built"), "site.year_built",
                 inQuotes(std::to_string(*job.site.yearBuilt)) + " is after " + std::to_string(started) +
                     ", when the work starts",
                 "check the year, or leave it out");
}

void checkTreated(const model::Job& job, const model::Content& content, base::Diagnostics& messages) {
  if (!model::asksFor(job.work, model::Work::Sand) || model::maySandTreated(job)) return;
  const auto region = content.regions.find(job.site.region);
  const auto* named =
      region == content.regions.end() ? nullptr : model::authorityFor(region->second, "treated");
  const std::string whom = named ? *named : "the authority";
  for (const model::Deck& deck : job.areas) {
    if (!content.timbers.contains(deck.timber) || !model::mayBeTreated(deck, content)) continue;
    messages.error(deck.pos, "areas", "the boards of '" + deck.name + "' may hold arsenic and are not sanded",
                   "take 'sand' out of 'work:', or write 'licensed_for: [treated]' where your papers and " +
                       whom +
                       " allow it; NSW EPA, treated timber; Caring for Our Children, standard 5.2.9.12");
  }
}

/// Words of a name or a place where strangers are likely.
void checkPublic(const model::Job& job, base::Diagnostics& messages) {
  if (job.site.isPublic) return;
  std::string words = job.customer.name;
  for (const auto* lines : {&job.customer.address, &job.site.address}) {
    for (const auto& line : *lines) words += " " + line;
  }
  words = " " + base::lowered(words) + " ";
  for (const char* word : {"club", "school", "church", "council", "hotel", "caf\u00e9", "cafe", "restaurant",
                           "marina", "museum", "library", "hospital", "campground", "bathing place"}) {
    if (words.find(std::string(" ") + word + " ") == std::string::npos) continue;
    messages.warn(
        base::placeOf(job.places, "site"), "site.public",
        std::string("'") + word + "' sounds like a place where people pass, and nothing is said of them",
        "write 'public: true', or 'public: false' where nobody does");
    return;
  }
}

/// A slip in the name of a colour comes back as the wrong tin.
void checkColour(const model::Job& job, const model::Content& content, base::Diagnostics& messages) {
  const auto product = content.products.find(job.product);
  if (product == content.products.end() || product->second.colours.empty()) return;
  std::vector<std::string> known;
  for (const auto& one : product->second.colours) known.push_back(one.name);
  const bool isOpen = job.colour.empty() && model::asksFor(job.work, model::Work::Oil);
  if (isOpen && job.accepted && !job.declined)
    messages.warn(base::placeOf(job.places, "accepted"), "accepted",
                  "the customer said yes, and the job has no colour yet",
                  "write the one that was ticked, like colour: " + known.front());
  if (job.colour.empty() || std::find(known.begin(), known.end(), job.colour) != known.end()) return;
  messages.warn(base::placeOf(job.places, "colour"), "colour",
                inQuotes(job.colour) + " is not a colour of '" + job.product + "'" +
                    base::didYouMean(base::nearest(job.colour, known)),
                "known: " + base::joined(known) + "; add others under 'colours:' of the product's file");
}

void checkWater(const model::Job& job, base::Diagnostics& messages) {
  const bool isDrawn = std::any_of(job.around.begin(), job.around.end(),
                                   [](const auto& one) { return one.kind == model::Surrounding::Water; });
  if (!isDrawn || job.site.isNearWater) return;
  messages.warn(base::placeOf(job.places, "around"), "around",
                "there is water on the plan, and the site is not near water",
                "write 'near_water: true' under 'site:', so that the safety sheet says what to do beside it");
}

std::optional<base::Date> firstDayDone(const model::Job& job) {
  std::optional<base::Date> first = job.doneOn;
  for (const auto& coat : job.done) {
    if (coat.start.day != base::Date{} && (!first || coat.start.day < *first)) first = coat.start.day;
  }
  return first;
}

/// What became of the quote: each day after the one before it.
void checkProgress(const model::Job& job, base::Diagnostics& messages) {
  const auto refuse = [&](const char* key, const std::string& what, const std::string& hint) {
    messages.error(base::placeOf(job.places, key), key, what, hint);
  };
  const auto follows = [&](const char* key, std::optional<base::Date> day, std::optional<base::Date> before,
                           const std::string& what) {
    if (!day || !before || *before == base::Date{} || *day >= *before) return;
    refuse(key, inQuotes(base::isoDate(*day)) + " is before " + base::isoDate(*before) + ", " + what,
           "check both dates");
  };
  const auto done = firstDayDone(job);
  follows("accepted", job.accepted, job.quoted, "the date of the quote");
  follows("declined", job.declined, job.quoted, "the date of the quote");
  follows("declined", job.declined, job.accepted, "when the quote was accepted");
  follows("done", done, job.accepted, "when the quote was accepted");
  if (!job.accepted) follows("done", job.doneOn, job.quoted, "the date of the quote");
  if (job.declined && (done || !job.done.empty()))
    refuse("declined", "the customer declined, but 'done' says that the work was done",
           "take 'declined' or 'done' out");
}

}  // namespace

void checkWhole(const model::Job& job, const model::Content& content, base::Diagnostics& messages) {
  checkTreated(job, content, messages);
  checkPublic(job, messages);
  checkYear(job, messages);
  checkColour(job, content, messages);
  checkWater(job, messages);
  checkProgress(job, messages);
}

}  // namespace input
