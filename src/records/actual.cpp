#include "records/actual.h"

#include "base/joined.h"
#include "model/plain.h"

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

/// Gives the litres of each entry to its coats. A coat of which one part has no litres has none.
void shareOut(std::vector<model::ActualCoat>& coats, const std::vector<model::DoneCoat>& done) {
  std::map<std::size_t, std::vector<model::ActualCoat*>> entries;
  std::map<std::size_t, std::optional<Volume>> usedBy;
  for (auto& coat : coats) {
    coat.litres = Volume{};
    for (const auto record : coat.records) {
      entries[done[record].entry].push_back(&coat);
      usedBy[done[record].entry] = done[record].used;
    }
  }
  for (const auto& [entry, members] : entries) {
    const auto& used = usedBy.at(entry);
    Volume planned, plannedSoFar, given;
    for (const auto* coat : members) planned += coat->plannedLitres;
    for (auto* coat : members) {
      plannedSoFar += coat->plannedLitres;
      if (!used) coat->litres = {};
      if (!used) continue;
      const Volume upToHere = scaled(*used, plannedSoFar.millionths,
                                     std::max<std::int64_t>(planned.millionths, 1), Round::HalfUp);
      if (coat->litres) *coat->litres += upToHere - given;
      coat->isShared = coat->isShared || members.size() > 1;
      given = upToHere;
    }
  }
}

/// Bought and taken from the shed, less what was used. Nothing while a coat has no record with its litres,
/// and where they are more than there was.
std::optional<Volume> leftByTheBooks(const std::vector<model::ActualCoat>& actual, const model::Estimate& e,
                                     const model::ProductNeed& product) {
  Volume used;
  for (const auto& coat : actual) {
    if (!coat.litres) return {};
    used += *coat.litres;
  }
  if (actual.empty() || actual.size() < e.coats.size()) return {};
  const Volume had = product.bought.volume + product.fromStock;
  return used > had ? std::nullopt : std::optional(had - used);
}

/// Nothing where the job does not say what is left.
std::optional<Volume> leftAsCounted(const model::JobInputs& c) {
  Volume left;
  bool isCounted = false;
  for (const auto& tin : c.job.left) {
    if (tin.product != c.job.product) continue;
    left += tin.holds.value_or(tin.size) * tin.count;
    isCounted = true;
  }
  return isCounted ? std::optional(left) : std::nullopt;
}

std::string fieldOf(const model::DoneCoat& done, const char* key) {
  return "done[" + std::to_string(done.entry + 1) + "]." + key;
}

/// Coats whose litres were shared out of one entry are measured together.
void warnOfFarUse(const model::JobInputs& c, const std::vector<model::ActualCoat>& actual,
                  base::Diagnostics& messages) {
  struct Sum {
    const model::DoneCoat* first = nullptr;
    Volume used, planned;
  };
  std::map<std::size_t, Sum> entries;
  for (const auto& coat : actual) {
    if (!coat.litres) continue;
    const auto& first = c.job.done[coat.records.front()];
    auto& sum = entries[first.entry];
    sum.first = &first;
    sum.used += *coat.litres;
    sum.planned += coat.plannedLitres;
  }
  for (const auto& [entry, sum] : entries) {
    if (!isFarFromPlan(sum.used, sum.planned)) continue;
    const auto units = c.region->units;
    messages.warn(
        sum.first->usedPos, fieldOf(*sum.first, "used"),
        model::plainLitres(sum.used, units) +
            (sum.used > sum.planned ? " is more than twice the " : " is less than half of the ") +
            model::plainLitres(sum.planned, units) + " planned",
        "check the figure: what came out of the tins for this coat, no other coat and no tin left over");
  }
}

/// All tins of the shed count, also those that the plan did not open.
void warnOfMoreThanThereWas(const model::JobInputs& c, const std::vector<model::ActualCoat>& actual,
                            const model::ProductNeed& product, base::Diagnostics& messages) {
  Volume used, had = product.bought.volume;
  for (const auto& coat : actual) used += coat.litres.value_or(Volume{});
  for (const auto& tin : c.job.inStock) {
    if (tin.product == c.job.product) had += tin.size * tin.count;
  }
  if (used <= had) return;
  const auto units = c.region->units;
  messages.warn(c.job.done.front().pos, "done",
                model::plainLitres(used, units) + " used is more than the " + model::plainLitres(had, units) +
                    " bought and in stock",
                "check the figures under 'used'; the tins bought are those of the order list");
}

}  // namespace

base::Spread withoutLoss(base::Spread asLaid, base::Share loss) {
  return {increased(asLaid.area, loss), asLaid.volume};
}

bool isFarFromPlan(Volume used, Volume planned) { return used > planned * 2 || used * 2 < planned; }

std::vector<model::ActualCoat> actualCoats(const model::JobInputs& c, const model::Estimate& e) {
  std::vector<model::ActualCoat> coats;
  for (std::size_t i = 0; i < c.job.done.size(); ++i) {
    const auto& done = c.job.done[i];
    const auto* need = needOf(e, done);
    if (need == nullptr) continue;
    const auto found = std::find_if(coats.begin(), coats.end(), [&](const auto& coat) {
      return coat.deck == done.deck && coat.coat == done.coat;
    });
    if (found != coats.end()) {
      found->records.push_back(i);
      continue;
    }
    model::ActualCoat coat;
    coat.records = {i};
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

model::AsLaid asLaid(const model::JobInputs& c, const model::Estimate& e, const model::ProductNeed& product) {
  auto coats = actualCoats(c, e);
  const auto byTheBooks = leftByTheBooks(coats, e, product);
  return {std::move(coats), byTheBooks, leftAsCounted(c)};
}

void warnOfUse(const model::JobInputs& c, const model::AsLaid& laid, const model::ProductNeed& product,
               base::Diagnostics& messages) {
  warnOfFarUse(c, laid.coats, messages);
  warnOfMoreThanThereWas(c, laid.coats, product, messages);
}

void addBatches(std::vector<std::string>& all, const std::vector<std::string>& more) {
  for (const auto& batch : more) {
    base::addOnce(all, batch);
  }
}

}  // namespace records
