#include "records/due.h"

#include "model/lookup.h"
#include "records/actual.h"
#include "records/links.h"

#include <algorithm>
#include <map>
#include <set>
#include <stdexcept>
#include <tuple>

namespace records {
namespace {

using model::Progress;

/// Litres of the last coat of each deck: recorded, or planned with loss where they are not.
void addLastCoats(Visit& visit, const model::JobInputs& c, const model::Estimate& e,
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

/// When its boards were coated, or are to be.
base::Date dayOf(const Visit& v) { return v.progress == Progress::Done ? v.lastCoat : v.due; }

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
  static bool isLater(const Visit& other, const Visit& v) {
    return dayOf(other) > dayOf(v) && (other.laysCoat || !v.laysCoat);
  }

  /// The job was done at another site of the customer, after one that was done there: the number it names is
  /// a slip.
  bool followsElsewhere(const Visit& follower, const Visit& v) const {
    if (whereOf(follower) == whereOf(v)) return false;
    const auto& there = bySite_.at(whereOf(follower));
    return std::any_of(there.begin(), there.end(), [&](const auto* one) { return isLater(follower, *one); });
  }

  std::map<std::string, std::vector<const Visit*>> byNumber_, bySite_;
};

bool takesPlace(const Visit& follower, const Visit& v) {
  switch (v.progress) {
    case Progress::Done:
      return true;
    case Progress::Accepted:
      return follower.progress == Progress::Done;
    case Progress::Quoted:
      return follower.progress != Progress::Declined;
    case Progress::Declined:
      return true;
  }
  throw std::logic_error("internal error: a progress without a rule");
}

/// The first day on which a visit is something to look at.
base::Date openSince(const Visit& v) {
  switch (v.progress) {
    case Progress::Done:
    case Progress::Accepted:
      return v.due;
    case Progress::Quoted:
      return v.quoted;
    case Progress::Declined:
      return v.declined.value();
  }
  throw std::logic_error("internal error: a progress without a day");
}

/// The order within a group.
base::Date listedBy(const Visit& v) { return v.progress == Progress::Accepted ? v.due : openSince(v); }

void fillCustomer(Visit& v, const model::Job& job) {
  v.customer = job.customer.name;
  v.phone = job.customer.phone;
  v.email = job.customer.email;
  v.address = partyOf(job).address;
  v.region = job.site.region;
}

/// Who declined is asked again when the boards are a year older.
base::Date askedAgain(const std::vector<const Visit*>& declined) {
  base::Date last = declined.front()->due;
  for (const auto* v : declined) last = std::max(last, v->due);
  return base::plusMonths(last, 12);
}

bool isAllDeclined(const std::vector<const Visit*>& followers) {
  return !followers.empty() && std::all_of(followers.begin(), followers.end(),
                                           [](const Visit* v) { return v->progress == Progress::Declined; });
}

}  // namespace

std::optional<Visit> visitAfter(const std::string& file, const model::JobInputs& c, const model::Estimate& e,
                                const std::vector<model::ActualCoat>& actual, const model::Plan& plan) {
  const auto& job = c.job;
  Visit v;
  v.progress = model::progressOf(job);
  if (v.progress == Progress::Done) {
    const auto* event = model::eventOf(plan, model::Moment::Maintenance);
    if (event == nullptr) return {};
    v.due = event->at.day;
    v.lastCoat = plan.finished.day;
    addLastCoats(v, c, e, actual);
  } else {
    v.due = job.start;
    for (const auto& need : e.coats) v.litres += increased(need.litres, c.job.loss);
  }
  v.laysCoat = !e.coats.empty();
  v.file = file;
  v.ref = job.ref;
  v.after = job.after;
  v.quoted = job.quoted;
  v.validUntil = model::validUntil(job);
  v.accepted = job.accepted;
  v.declined = job.declined;
  fillCustomer(v, job);
  v.product = job.product;
  v.colour = job.colour;
  addBatches(v.batches, job.batches);
  for (const auto& done : job.done) addBatches(v.batches, done.batches);
  for (const auto& deck : job.areas) v.areas.push_back(deck.name);
  return v;
}

std::vector<Visit> dueBetween(std::vector<Visit> all, std::optional<base::Date> from, base::Date by) {
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return dayOf(a) < dayOf(b); });
  const Followers followers(all);
  std::map<const Visit*, base::Date> since;
  std::set<const Visit*> answered;  // declined, and asked again by now
  std::vector<Visit> due;
  for (const auto& v : all) {
    auto& first = since.emplace(&v, openSince(v)).first->second;
    auto after = followers.of(v);
    std::erase_if(after, [&](const Visit* follower) { return !takesPlace(*follower, v); });
    if (v.progress == Progress::Done && isAllDeclined(after) && askedAgain(after) <= by) {
      answered.insert(after.begin(), after.end());
      if (!from || askedAgain(after) >= *from) due.emplace_back(v).due = askedAgain(after);
      continue;
    }
    for (const auto* follower : after) {
      auto& day = since.emplace(follower, openSince(*follower)).first->second;
      if (follower->progress != Progress::Done) day = std::min(day, first);
    }
    const bool isWithin = std::min(first, v.due) <= by && (!from || std::max(first, v.due) >= *from);
    if (after.empty() && isWithin && !answered.contains(&v)) due.push_back(v);
  }
  std::stable_sort(due.begin(), due.end(), [](const auto& a, const auto& b) {
    return std::tuple(a.progress, listedBy(a), a.ref, a.file) <
           std::tuple(b.progress, listedBy(b), b.ref, b.file);
  });
  return due;
}

}  // namespace records
