#include "records/due.h"

#include <algorithm>
#include <map>
#include <set>

namespace records {
namespace {

void addBatch(std::vector<std::string>& batches, const std::string& batch) {
  if (std::find(batches.begin(), batches.end(), batch) == batches.end()) batches.push_back(batch);
}

/// Litres of the last coat of each deck: recorded, or planned with loss where they are not.
void addLitres(Visit& visit, const model::Case& c, const model::Estimate& e) {
  visit.isRecorded = true;
  for (const auto& need : e.coats) {
    if (need.coat != c.job.areas[need.deck].coats) continue;
    const auto actual = std::find_if(e.actual.begin(), e.actual.end(), [&](const auto& a) {
      return a.deck == need.deck && a.coat == need.coat && a.litres;
    });
    visit.isRecorded = visit.isRecorded && actual != e.actual.end();
    visit.litres += actual != e.actual.end() ? *actual->litres : increased(need.litres, c.job.loss);
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

}  // namespace

std::optional<Visit> visitAfter(const std::string& file, const model::Case& c, const model::Estimate& e,
                                const model::Plan& plan) {
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
  v.address = job.site.address.empty() ? job.customer.address : job.site.address;
  v.region = job.site.region;
  v.product = job.product;
  v.colour = job.colour;
  for (const auto& batch : job.batches) addBatch(v.batches, batch);
  for (const auto& done : job.done) {
    for (const auto& batch : done.batches) addBatch(v.batches, batch);
  }
  for (const auto& deck : job.areas) v.areas.push_back(deck.name);
  addLitres(v, c, e);
  return v;
}

std::vector<Visit> dueBetween(std::vector<Visit> all, std::optional<base::Date> from, base::Date by) {
  std::set<std::string> followed;
  std::map<std::string, std::vector<const Visit*>> bySite;
  for (const auto& v : all) {
    if (!v.after.empty()) followed.insert(v.after);
    bySite[whereOf(v)].push_back(&v);
  }
  std::vector<Visit> due;
  for (const auto& v : all) {
    if (v.due > by || (from && v.due < *from) || followed.contains(v.ref)) continue;
    const auto& there = bySite.at(whereOf(v));
    const bool isDoneAgain = std::any_of(there.begin(), there.end(), [&](const Visit* other) {
      return other->lastCoat > v.lastCoat && holdsAll(other->areas, v.areas);
    });
    if (!isDoneAgain) due.push_back(v);
  }
  std::stable_sort(due.begin(), due.end(), [](const auto& a, const auto& b) {
    return std::tie(a.due, a.ref, a.file) < std::tie(b.due, b.ref, b.file);
  });
  return due;
}

}  // namespace records
