#include "estimate/labour.h"

#include "base/quantity_words.h"
#include "estimate/coverage.h"
#include "model/lookup.h"

#include <algorithm>

namespace estimate {
namespace {

using base::Count;
using base::divide;
using base::Hours;
using base::Round;
using base::Wide;

constexpr std::int64_t wholeShare = 100'000'000;  // 100 % in millionths
constexpr std::int64_t one = 1'000'000;           // in millionths

bool isByDeck(model::Measure measure) {
  return measure != model::Measure::Job && measure != model::Measure::Day;
}

Count quantityOf(model::Measure measure, const model::Measures& m) {
  switch (measure) {
    case model::Measure::Job:
    case model::Measure::Day:
      return {};
    case model::Measure::Surface:
      return {base::inSquareMetres(m.area)};
    case model::Measure::Wetted:
      return {base::inSquareMetres(m.wetted)};
    case model::Measure::CutIn:
      return {base::inMetres(m.cutIn)};
    case model::Measure::BoardLength:
      return {base::inMetres(m.boardMetres)};
    case model::Measure::Fixings:
      return Count::whole(m.fixings);
  }
  throw std::logic_error("internal error: unknown measure");
}

/// Of all fixings, those that stand up: of a task that is done to these only.
Count quantityOf(const model::Task& task, const model::Measures& m, const model::Deck& deck) {
  const Count all = quantityOf(task.measure, m);
  if (task.raisedByState.empty() || !deck.fixings) return all;
  const auto usual = task.raisedByState.find(deck.state);
  const base::Share raised = deck.fixings->raised.value_or(
      usual == task.raisedByState.end() ? base::Share::whole(100) : usual->second);
  return Count::whole(divide(Wide{all.millionths} * raised.millionths, Wide{one} * wholeShare, Round::Up));
}

Hours checkingOf(const model::Task& task, const model::Measures& m) {
  if (task.checkedPerHour.isZero()) return {};
  return {
      base::mulDiv(Count::whole(m.fixings).millionths, one, task.checkedPerHour.millionths, Round::HalfUp)};
}

Count rateOf(const model::Task& task, int grit, const model::Job& job) {
  Count rate = task.ratePerHour;
  if (const auto own = job.taskRates.find(task.id); own != job.taskRates.end()) {
    rate = own->second;
  } else if (const auto listed = task.rateByGrit.find(grit); listed != task.rateByGrit.end()) {
    rate = listed->second;
  }
  if (rate.millionths <= 0) throw std::logic_error("internal error: task '" + task.id + "' has no rate");
  return rate;
}

/// Each time a task is done over a whole deck: grits, numbers of coats, or once.
std::vector<int> passesOf(const model::Task& task, std::size_t deckNumber, const model::Job& job,
                          const std::vector<model::ExtraPass>& late) {
  const auto& deck = job.areas.at(deckNumber);
  if (task.isForLateCoat) {
    std::vector<int> coats;
    for (const auto& one : late) {
      if (one.deck == deckNumber) coats.push_back(one.coat);
    }
    return coats;
  }
  if (task.isPerPass) return job.sanding;
  if (!task.isPerCoat) return {0};
  std::vector<int> coats;
  for (int n = 1; n <= deck.coats && model::asksFor(job.work, model::Work::Oil); ++n) coats.push_back(n);
  return coats;
}

Count partOf(Count quantity, const std::vector<model::ExtraPass>& late, std::size_t deck, int coat) {
  for (const auto& one : late) {
    if (one.deck == deck && one.coat == coat)
      return {divide(Wide{quantity.millionths} * one.part.millionths, Wide{wholeShare}, Round::HalfUp)};
  }
  return quantity;
}

model::LabourLine onDeck(const model::JobInputs& c, const model::Task& task, std::size_t deck, Count quantity,
                         Hours checking, int pass) {
  const Count rate = rateOf(task, task.isPerPass ? pass : 0, c.job);
  const auto listed = task.timeByState.find(c.job.areas[deck].state);
  const base::Share time = listed == task.timeByState.end() ? base::Share::whole(100) : listed->second;

  model::LabourLine line{task.id, deck, quantity, {}, pass, rate, time, checking};
  line.hours = {divide(Wide{quantity.millionths} * one * time.millionths, Wide{rate.millionths} * wholeShare,
                       Round::HalfUp)};
  line.hours += checking;
  return line;
}

/// Deck screws are no use to boards that are nailed.
bool isUsedOn(const model::Consumable& consumable, const model::LabourLine& work, const model::Job& job) {
  if (consumable.fixing.empty()) return true;
  if (!work.deck) return false;
  const auto& fixings = job.areas.at(*work.deck).fixings;
  return fixings && fixings->kind == consumable.fixing;
}

}  // namespace

std::vector<model::LabourLine> labourOf(const model::JobInputs& c, const model::Content& content,
                                        const std::vector<model::Measures>& decks, int days,
                                        const std::vector<model::ExtraPass>& late) {
  std::vector<model::LabourLine> lines;
  for (const auto& task : content.tasks) {
    if (task.work && !model::asksFor(c.job.work, *task.work)) continue;
    if (task.isWiping && c.product->times.wipeOff.isZero()) continue;
    if (!isByDeck(task.measure)) {
      const bool isDaily = task.measure == model::Measure::Day;
      const int times = isDaily ? days : 1;
      if (times == 0) continue;
      lines.push_back({task.id,
                       std::nullopt,
                       Count::whole(times),
                       task.hoursEach * times,
                       0,
                       {},
                       base::Share::whole(100)});
      continue;
    }
    for (std::size_t deck = 0; deck < decks.size(); ++deck) {
      const Count quantity = quantityOf(task, decks[deck], c.job.areas.at(deck));
      const Hours checking = checkingOf(task, decks[deck]);
      if (quantity.isZero() && checking.isZero()) continue;
      for (const int pass : passesOf(task, deck, c.job, late))
        lines.push_back(onDeck(c, task, deck,
                               task.isForLateCoat ? partOf(quantity, late, deck, pass) : quantity, checking,
                               pass));
    }
  }
  return lines;
}

std::vector<model::LabourLine> lateCoatLabour(const model::JobInputs& c, const model::Content& content,
                                              const std::vector<model::Measures>& decks) {
  std::vector<model::ExtraPass> all;
  for (std::size_t deck = 0; deck < decks.size(); ++deck) {
    const int first = model::asksFor(c.job.work, model::Work::Sand) ? 1 : 2;
    for (int coat = first; coat <= c.job.areas.at(deck).coats; ++coat) all.push_back({deck, coat});
  }
  std::vector<model::LabourLine> lines;
  for (auto& line : labourOf(c, content, decks, 0, all)) {
    if (taskOf(content, line.task).isForLateCoat) lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<model::ConsumableLine> consumablesOf(const model::JobInputs& c, const model::Content& content,
                                                 const std::vector<model::LabourLine>& labour) {
  std::vector<model::ConsumableLine> lines;
  for (const auto& work : labour) {
    for (const auto& use : taskOf(content, work.task).uses) {
      if (!isUsedOn(content.consumables.at(use.consumable), work, c.job)) continue;
      // Each grit is a belt or disc of its own, so each is rounded up by itself.
      const int grit = taskOf(content, work.task).isPerPass ? work.pass : 0;
      auto line = std::find_if(lines.begin(), lines.end(), [&](const auto& l) {
        return l.consumable == use.consumable && l.grit == grit;
      });
      if (line == lines.end()) line = lines.insert(lines.end(), {use.consumable, grit, {}, 0, {}});
      // What a day uses up, everyone on site does.
      const int people = taskOf(content, work.task).measure == model::Measure::Day ? c.job.crew.people : 1;
      line->used += scaled(use.per, work.quantity.millionths, one, Round::HalfUp) * people;
    }
  }
  constexpr std::int64_t quart = 946'352'946, litre = 1'000'000'000;  // NIST SP 811 (2008), App. B.8
  for (auto& line : lines) {
    const auto& consumable = content.consumables.at(line.consumable);
    if (consumable.isLiquid && c.region->units == model::UnitSystem::UsCustomary)
      line.used = scaled(line.used, litre, quart, Round::HalfUp);
    const base::Money price = consumable.price.at(c.job.site.region);
    line.bought = divide(line.used.millionths, one, Round::Up);
    line.cost = consumable.boughtWhole
                    ? price * line.bought
                    : base::Money{base::mulDiv(price.minor, line.used.millionths, one, Round::HalfUp)};
  }
  return lines;
}

}  // namespace estimate
