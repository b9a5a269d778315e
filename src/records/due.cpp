#include "records/due.h"

#include "records/actual.h"
#include "records/links.h"

#include <algorithm>
#include <map>

namespace records {
namespace {

/// Litres of the last coat of each deck: recorded, or planned with loss where they are not.
void addLitres(Visit& visit, const model::JobInputs& c, const model::Estimate& e,
               const std::vector<model::ActualCoat>& actual) {
  visit.isRecorded = true;
  for (const auto& need : e.coats) {
    if (need.coat != c.job.areas[need.deck].coats) continue;
    const auto laid = std::find_if(actual.begin(), actual.end(), [&](const auto& a) {
      return a.deck == need.deck && a.coat == need.coat && a.litres;
    });
    visit.isRecorded = visit.isRecorded && laid != actual.end();
    visit.litres += laid != actual.end() ? *laid->litres : increased(need.litres, c.job.loss);
  }
}

bool holdsAll(const std::vector<std::string>& names, const std::vector<std::string>& wanted) {
  return std::all_of(wanted.begin(), wanted.end(), [&](const auto& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
  });
}

std::string whereOf(const Visit& v) {
  std::string key = v.customer + '\n' + v.region;
  for (const auto& line : v.address) key += '\n' + line;
  return key;
}

/// Finds what a visit is followed by among the jobs that name it and those at the same site.
class Followers {
 public:
  explicit Followers(const std::vector<Visit>& all) {
    for (const auto& v : all) {
      if (!v.after.empty()) byNumber_[v.after].push_back(&v);
      bySite_[whereOf(v)].push_back(&v);
    }
  }

  std::vector<const Visit*> of(const Visit& v) const {
    std::vector<const Visit*> found;
    if (const auto named = byNumber_.find(v.ref); named != byNumber_.end()) {
      for (const auto* other : named->second) {
        if (isLater(*other, v) && isSame({other->customer, other->address}, {v.customer, v.address}) &&
            !followsElsewhere(*other, v))
          found.push_back(other);
      }
    }
    for (const auto* other : bySite_.at(whereOf(v))) {
      if (isLater(*other, v) && holdsAll(other->areas, v.areas) &&
          std::find(found.begin(), found.end(), other) == found.end())
        found.push_back(other);
    }
    return found;
  }

 private:
  static bool isLater(const Visit& other, const Visit& v) { return other.lastCoat > v.lastCoat; }

  /// The job was done at another site of the customer, after one that was done there: the number it names is
  /// a slip.
  bool followsElsewhere(const Visit& follower, const Visit& v) const {
    if (whereOf(follower) == whereOf(v)) return false;
    const auto& there = bySite_.at(whereOf(follower));
    return std::any_of(there.begin(), there.end(), [&](const auto* one) { return isLater(follower, *one); });
  }

  std::map<std::string, std::vector<const Visit*>> byNumber_, bySite_;
};

}  // namespace

std::optional<Visit> visitAfter(const std::string& file, const model::JobInputs& c, const model::Estimate& e,
                                const std::vector<model::ActualCoat>& actual, const model::Plan& plan) {
  const auto event = std::find_if(plan.events.begin(), plan.events.end(),
                                  [](const auto& one) { return one.name == "maintenance"; });
  if (event == plan.events.end()) return {};
  const auto& job = c.job;
  Visit v;
  v.file = file;
  v.ref = job.ref;
  v.after = job.after;
  v.due = event->at.day;
  v.lastCoat = plan.finished.day;
  v.customer = job.customer.name;
  v.phone = job.customer.phone;
  v.email = job.customer.email;
  v.address = partyOf(job).address;
  v.region = job.site.region;
  v.product = job.product;
  v.colour = job.colour;
  addBatches(v.batches, job.batches);
  for (const auto& done : job.done) addBatches(v.batches, done.batches);
  v.hasRecords = !job.done.empty();
  for (const auto& deck : job.areas) v.areas.push_back(deck.name);
  addLitres(v, c, e, actual);
  return v;
}

std::vector<Visit> dueBetween(std::vector<Visit> all, std::optional<base::Date> from, base::Date by) {
  const Followers followers(all);
  std::vector<Visit> due;
  for (const auto& v : all) {
    if (v.due > by || (from && v.due < *from)) continue;
    const auto after = followers.of(v);
    if (std::any_of(after.begin(), after.end(), [](const Visit* f) { return f->hasRecords; })) continue;
    due.push_back(v);
    for (const auto* quote : after) due.back().openQuotes.push_back(quote->ref);
  }
  std::stable_sort(due.begin(), due.end(), [](const auto& a, const auto& b) {
    return std::tie(a.due, a.ref, a.file) < std::tie(b.due, b.ref, b.file);
  });
  return due;
}

}  // namespace records
