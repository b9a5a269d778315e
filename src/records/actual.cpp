#include "records/actual.h"

#include <algorithm>
#include <map>

namespace records {
namespace {

using base::Round;
using base::Volume;

const model::CoatNeed* needOf(const model::Estimate& e, const model::DoneCoat& done) {
  for (const auto& need : e.coats) {
    if (need.deck == done.deck && need.coat == done.coat) return &need;
  }
  return nullptr;
}

/// Gives the litres of each entry to its coats.
void shareOut(std::vector<model::ActualCoat>& coats, const std::vector<model::DoneCoat>& done) {
  std::map<std::size_t, std::vector<model::ActualCoat*>> entries;
  for (auto& coat : coats) entries[done[coat.done].entry].push_back(&coat);
  for (const auto& [entry, members] : entries) {
    const auto used = done[members.front()->done].used;
    if (!used) continue;
    Volume planned, plannedSoFar, given;
    for (const auto* coat : members) planned += coat->plannedLitres;
    for (auto* coat : members) {
      plannedSoFar += coat->plannedLitres;
      const Volume upToHere = scaled(*used, plannedSoFar.millionths,
                                     std::max<std::int64_t>(planned.millionths, 1), Round::HalfUp);
      coat->litres = upToHere - given;
      coat->isShared = members.size() > 1;
      given = upToHere;
    }
  }
}

std::vector<model::ActualCoat> actualCoats(const model::Case& c, const model::Estimate& e) {
  std::vector<model::ActualCoat> coats;
  for (std::size_t i = 0; i < c.job.done.size(); ++i) {
    const auto& done = c.job.done[i];
    const auto* need = needOf(e, done);
    if (need == nullptr) continue;
    model::ActualCoat coat;
    coat.done = i;
    coat.deck = done.deck;
    coat.coat = done.coat;
    coat.plannedLitres = increased(need->litres, c.job.loss);
    coat.plannedRate = need->rate;
    coats.push_back(coat);
  }
  shareOut(coats, c.job.done);
  for (auto& coat : coats) {
    const base::Area wetted = e.decks[coat.deck].wetted;
    if (coat.litres && !coat.litres->isZero() && !wetted.isZero())
      coat.rate = base::Spread{wetted, *coat.litres};
  }
  return coats;
}

/// Bought and taken from the shed, less what was used. Nothing while a coat has no record with its litres,
/// and where they are more than there was.
std::optional<Volume> leftByTheBooks(const model::Estimate& e) {
  Volume used;
  for (const auto& coat : e.actual) {
    if (!coat.litres) return {};
    used += *coat.litres;
  }
  if (e.actual.empty() || e.actual.size() < e.coats.size()) return {};
  const Volume had = e.product.bought.volume + e.product.fromStock;
  return used > had ? std::nullopt : std::optional(had - used);
}

/// Nothing where the job does not say what is left.
std::optional<Volume> leftAsCounted(const model::Case& c) {
  Volume left;
  bool isCounted = false;
  for (const auto& tin : c.job.left) {
    if (tin.product != c.job.product) continue;
    left += tin.holds.value_or(tin.size) * tin.count;
    isCounted = true;
  }
  return isCounted ? std::optional(left) : std::nullopt;
}

}  // namespace

base::Spread withoutLoss(base::Spread asLaid, base::Share loss) {
  return {increased(asLaid.area, loss), asLaid.volume};
}

void addActual(model::Estimate& e, const model::Case& c) {
  e.actual = actualCoats(c, e);
  e.leftByTheBooks = leftByTheBooks(e);
  e.leftAsCounted = leftAsCounted(c);
}

}  // namespace records
