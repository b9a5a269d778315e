#include "schedule/crew/coat_flow.h"

#include "model/crew_time.h"
#include "schedule/crew/stands.h"
#include "schedule/weather/boards.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <numeric>
#include <tuple>

namespace schedule {
namespace {

using model::clockStep;
using model::upToStep;
constexpr Effort leastPass = 15 * 100;  // a quarter of an hour is worth going for

/// The first of the strips that wait, wiped one after another by one person.
struct Pass {
  std::size_t strips = 0;
  std::size_t who = 0;
  int start = 0, end = 0;
  std::optional<model::Stand> from;
};

/// How people share the work, and how wide the strips are.
struct Roles {
  int layers = 1;
  int spread = 1;
};

class FlowMaker {
 public:
  FlowMaker(const std::vector<FlowItem>& items, int start, const FlowRules& rules, const Roles& roles)
      : items_(&items),
        rules_(&rules),
        spread_(roles.spread),
        layersFree_(start),
        isRested_(rules.rest == 0) {
    free_.assign(static_cast<std::size_t>(rules.people), start);
    everyone_.resize(free_.size());
    std::iota(everyone_.begin(), everyone_.end(), std::size_t{0});
    layers_.assign(everyone_.begin(), everyone_.begin() + roles.layers);
    helpers_.assign(everyone_.begin() + roles.layers, everyone_.end());
    hasHelpers_ = !helpers_.empty();
    if (!hasHelpers_) helpers_ = layers_;
  }

  std::optional<Flow> make() {
    for (std::size_t i = 0; i < items_->size(); ++i) {
      if (!place(i)) return {};
    }
    wipeAll(pending_.size(), everyone_);
    for (const int f : free_) flow_.end = std::max(flow_.end, f);
    if (flow_.end > rules_->until) return {};
    return std::move(flow_);
  }

 private:
  const FlowItem& itemOf(std::size_t item) const { return (*items_)[item]; }
  const CoatWork& workOf(std::size_t item) const { return itemOf(item).work(); }
  bool isWiped(std::size_t item) const { return rules_->wipeWait > 0 && workOf(item).wipe > 0; }

  /// Side by side they need two metres of board each: our own choice.
  int layersOf(std::size_t item) const {
    const auto layers = static_cast<int>(layers_.size());
    const Unit& unit = *itemOf(item).unit;
    if (!unit.row) return layers;
    const auto longest = std::max_element(unit.row->lengths.begin(), unit.row->lengths.end());
    return std::clamp(static_cast<int>(longest->millionths / base::metres(2).millionths), 1, layers);
  }

  int layingMinutes(std::size_t item) const {
    return fives(workOf(item).lay + (hasHelpers_ ? 0 : workOf(item).cutIn), layersOf(item));
  }

  /// In the first of its fit spans that holds the whole coat.
  bool place(std::size_t item) {
    const auto& it = itemOf(item);
    const int ready = upToStep(std::max(layersFree_, it.notBefore));
    for (const auto& span : it.open) {
      if (span.until <= ready) continue;
      const bool isLast = &span == &it.open.back();
      std::optional<FlowMaker> before;
      if (!isLast) before = *this;
      earliest_ = std::max(upToStep(span.from), upToStep(it.notBefore));
      lay(item, std::max(earliest_, ready));
      if (flow_.lastStroke <= span.until) return true;
      if (before) *this = std::move(*before);
    }
    return false;
  }

  /// Nobody works longer than six hours on end: where this unit would take longer, all rest before it.
  int rested(std::size_t item, int start) {
    const auto& work = workOf(item);
    const int minutes =
        std::max(layingMinutes(item), fives(work.cutIn + work.lay + work.wipe, rules_->people));
    constexpr int afterWork = 60;
    if (isRested_ || start - rules_->arrive < afterWork || start + minutes - rules_->arrive <= rules_->spell)
      return start;
    isRested_ = true;
    const int from = std::max(start, *std::max_element(free_.begin(), free_.end()));
    flow_.rests.push_back({from, from + rules_->rest});
    for (int& f : free_) f = from + rules_->rest;
    return from + rules_->rest;
  }

  int openMinutes(std::size_t item, int from) const {
    double warmest = 20;
    for (int h = from / 60; h <= std::min(23, (from + layingMinutes(item) - 1) / 60); ++h)
      warmest = std::max(warmest, itemOf(item).surface[static_cast<std::size_t>(h)]);
    constexpr double rounding = 0.001;
    return static_cast<int>(std::floor(openTime(rules_->openAt20, warmest) + rounding));
  }

  void lay(std::size_t item, int start) {
    start = rested(item, start);
    int open = openMinutes(item, start);
    if (open < rules_->leastOpen) {
      flow_.lastStroke = 24 * 60;
      return;
    }
    open = std::max(open, clockStep);  // on boards too hot for it, which are told of: nobody plans finer
    // Whoever lays also cuts in and wipes between two strips where nobody else is there.
    const int besides =
        hasHelpers_ ? 0 : (workOf(item).cutIn > 0 ? clockStep : 0) + (isWiped(item) ? clockStep : 0);
    const std::size_t first = flow_.strips.size();
    firstStrips_.push_back(first);
    for (auto& strip : stripsOf(itemOf(item), {layersOf(item), open, besides, spread_}))
      flow_.strips.push_back(std::move(strip));
    layersFree_ = std::max(layersFree_, start);
    earliest_ = std::max(earliest_, layersFree_);  // others may still come over its boards till then
    for (std::size_t i = first; i < flow_.strips.size(); ++i) {
      layStrip(item, i, i == first);
      laid_ = i + 1;
      if (isWiped(item)) await(item, i);
    }
  }

  void layStrip(std::size_t item, std::size_t i, bool isFirst) {
    auto& strip = flow_.strips[i];
    int target = std::max(layersFree_, wipeBefore(i));
    if (!isFirst && spread_ > 1 && strip.goesOn) target = std::max(target, pacedStart(i));
    const int begun = cutIn(item, i, target);
    strip.lay.who.assign(layers_.begin(), layers_.begin() + layersOf(item));
    strip.lay.start = std::max(target, begun);
    for (const auto p : strip.lay.who) strip.lay.start = std::max(strip.lay.start, free_[p]);
    strip.lay.end = strip.lay.start + strip.minutes;
    if (!isFirst) meetEdge(flow_.strips[i - 1], strip);
    layersFree_ = strip.lay.end;
    for (const auto p : strip.lay.who) free_[p] = std::max(free_[p], strip.lay.end);
    flow_.firstStroke = i == 0 ? strip.firstStroke() : std::min(flow_.firstStroke, strip.firstStroke());
    flow_.lastStroke = std::max(flow_.lastStroke, strip.lay.end);
  }

  /// As late as the wet edge allows.
  int pacedStart(std::size_t i) const {
    const auto& before = flow_.strips[i - 1];
    const auto& strip = flow_.strips[i];
    const int wait = strip.openMinutes - std::max(0, strip.minutes - before.minutes);
    return before.lay.start + wait / clockStep * clockStep;
  }

  /// Where the edge of the strip before is too old, the strip begins at a joint.
  void meetEdge(const FlowStrip& before, FlowStrip& strip) {
    const int age = std::max(strip.lay.start - before.lay.start, strip.lay.end - before.lay.end);
    const bool isMet = age <= strip.openMinutes || (strip.isTooLong && before.isTooLong) || strip.boards == 0;
    if (strip.goesOn && !isMet) {
      strip.goesOn = false;
      ++flow_.joints;
    }
  }

  /// Just ahead of laying, by a helper; by all where nobody helps, or where one alone takes longer than the
  /// border stays open. Returns when the strip may be laid: who lays follows who cuts in.
  int cutIn(std::size_t item, std::size_t i, int target) {
    auto& strip = flow_.strips[i];
    const Effort effort = shareOf(workOf(item).cutIn, strip);
    if (effort == 0) {
      dueWipes(target, hasHelpers_ ? 0 : strip.minutes);
      return target;
    }
    const int alone = std::max(clockStep, fives(effort, 1));
    Slot slot;
    int layFrom = 0;
    if (!hasHelpers_ || alone > strip.openMinutes) {
      const int together = std::max(clockStep, fives(effort, static_cast<int>(free_.size())));
      dueWipes(target, together + (hasHelpers_ ? 0 : strip.minutes));
      slot.start = std::max(target, *std::max_element(free_.begin(), free_.end()));
      slot.end = slot.start + together;
      slot.who = everyone_;
      layFrom = slot.end;
    } else {
      const int from = std::max(target - alone, earliest_);
      dueWipes(from, alone);
      const auto p = firstFree(helpers_);
      slot.start = std::max(free_[p], from);
      slot.end = slot.start + alone;
      slot.who = {p};
      layFrom = std::max(slot.start, slot.end - strip.minutes);
    }
    for (const auto p : slot.who) free_[p] = slot.end;
    strip.cutIn = slot;
    return layFrom;
  }

  // ------------------------------------------------------------ wiping

  void await(std::size_t item, std::size_t i) {
    const auto& strip = flow_.strips[i];
    Waiting p{i,    item, upToStep(strip.lay.end + rules_->wipeWait), shareOf(workOf(item).wipe, strip),
              true, {}};
    if (const Row* row = itemOf(item).unit->row) {
      p.decks = row->reachedFrom[static_cast<std::size_t>(strip.fromBoard)];
      for (int k = 0; k < strip.boards; ++k) {
        const auto board = static_cast<std::size_t>(strip.fromBoard + k);
        p.isReachedFromGround = p.isReachedFromGround && row->isReachedFromGround[board];
        const auto& from = row->reachedFrom[board];
        std::erase_if(p.decks,
                      [&](auto deck) { return std::find(from.begin(), from.end(), deck) == from.end(); });
      }
    }
    if (standFor(p, i + 1, p.due)) pending_.push_back(std::move(p));
    else wipeAtOnce(i, p.effort);
  }

  /// Out of every reach later: whoever lays it wipes it, walking backwards.
  void wipeAtOnce(std::size_t i, Effort effort) {
    auto& strip = flow_.strips[i];
    const int end =
        strip.lay.end + std::max(clockStep, fives(effort, static_cast<int>(strip.lay.who.size())));
    strip.wipe = Slot{strip.lay.end, end, strip.lay.who, {model::Stand::On::Strip, 0}};
    for (const auto p : strip.lay.who) free_[p] = end;
    layersFree_ = end;
    ++flow_.unreached;
  }

  std::optional<model::Stand> standFor(const Waiting& strip, std::size_t laid, int minute) const {
    return schedule::standFor(strip, {*items_, *rules_, flow_.strips, firstStrips_}, laid, minute);
  }

  /// Before this strip is laid, what could then no more be reached from a dry place is wiped. Returns when
  /// that is done.
  int wipeBefore(std::size_t next) {
    int held = 0;
    for (std::size_t i = 0; i < pending_.size();) {
      const Waiting& p = pending_[i];
      // What is out of reach already is not waited for.
      if (standFor(p, next + 1, p.due) || !standFor(p, next, p.due)) {
        ++i;
        continue;
      }
      held = std::max(held, wipeAll(i + 1, helpers_));
      i = 0;
    }
    return held;
  }

  /// What is due and done before a moment, a quarter of an hour at a time; at once where it would be sticky
  /// once whoever wipes has been busy with something else for so many minutes.
  void dueWipes(int until, int busy) {
    while (!pending_.empty()) {
      const Pass fitting = longestPass(pending_.size(), until, helpers_);
      const bool isEnough = (fitting.end - fitting.start) * 100 >= leastPass;
      if (fitting.strips > 0 && hasHelpers_ && isEnough) {
        wipe(fitting);
        continue;
      }
      // Without helpers the edge waits for as long as a pass takes; so it does for what waits too long.
      const int due = pending_.front().due, back = std::max(until, free_[firstFree(helpers_)]) + busy;
      if (due + rules_->wipeWait / 2 > until && due + rules_->wipeWait >= back) return;
      wipe(fitting.strips > 0 ? fitting : duePass(hasHelpers_ ? pending_.size() : 1, helpers_));
    }
  }

  std::size_t firstFree(const std::vector<std::size_t>& people) const {
    return *std::min_element(people.begin(), people.end(),
                             [&](auto a, auto b) { return free_[a] < free_[b]; });
  }

  /// So many of the first strips, by whoever is free first, once the last of them is due.
  Pass passOf(std::size_t strips, const std::vector<std::size_t>& people) const {
    Pass pass{strips, firstFree(people), 0, 0, {}};
    Effort effort = 0;
    pass.start = free_[pass.who];
    for (std::size_t k = 0; k < strips; ++k) {
      pass.start = std::max(pass.start, pending_[k].due);
      effort += pending_[k].effort;
    }
    pass.end = pass.start + std::max(clockStep, fives(effort, 1));
    pass.from = standFor(pending_.front(), laid_, pass.start);
    return pass;
  }

  /// Whether they are wiped from one place, the first before it is sticky.
  bool holds(const Pass& pass) const {
    if (pass.start > std::max(free_[pass.who], pending_.front().due + rules_->wipeWait)) return false;
    for (std::size_t k = 1; k < pass.strips; ++k) {
      if (pending_[k].item != pending_.front().item) return false;
      if (standFor(pending_[k], laid_, pass.start) != pass.from) return false;
    }
    return true;
  }

  /// The longest of at most so many strips that is done by a moment; none = no strip is.
  Pass longestPass(std::size_t most, int until, const std::vector<std::size_t>& people) const {
    Pass longest;
    for (std::size_t k = 1; k <= most; ++k) {
      const Pass pass = passOf(k, people);
      if (pass.end > until || !holds(pass)) break;
      longest = pass;
    }
    return longest;
  }

  /// What is due by the time that the first can be wiped, shared among those who are there.
  Pass duePass(std::size_t most, const std::vector<std::size_t>& people) const {
    Effort all = 0, taken = 0;
    for (std::size_t k = 0; k < most; ++k) all += pending_[k].effort;
    const Effort share = std::max(leastPass, all / static_cast<Effort>(people.size()));
    Pass due = passOf(1, people);
    taken = pending_.front().effort;
    for (std::size_t k = 1; k < most && pending_[k].due <= due.start; ++k) {
      const Pass pass = passOf(k + 1, people);
      taken += pending_[k].effort;
      if (taken > share || !holds(pass)) break;
      due = pass;
    }
    return due;
  }

  /// The first so many strips. Returns when that is done.
  int wipeAll(std::size_t strips, const std::vector<std::size_t>& people) {
    int done = 0;
    while (strips > 0) {
      const int last = pending_[strips - 1].due;
      Effort left = 0;
      for (std::size_t k = 0; k < strips; ++k) left += pending_[k].effort;
      Pass pass = passOf(strips, people);
      if (left > leastPass || !holds(pass)) pass = longestPass(strips, last, people);
      if (pass.strips == 0) pass = duePass(strips, people);
      strips -= pass.strips;
      done = std::max(done, wipe(pass));
    }
    return done;
  }

  /// Returns when it is done.
  int wipe(const Pass& pass) {
    const Slot slot{
        pass.start, pass.end, {pass.who}, pass.from.value_or(model::Stand{model::Stand::On::Strip, 0})};
    for (std::size_t k = 0; k < pass.strips; ++k) {
      const Waiting& p = pending_.front();
      flow_.unreached += !pass.from;
      flow_.late += pass.start > p.due + rules_->wipeWait;
      flow_.strips[p.strip].wipe = slot;
      pending_.pop_front();
    }
    free_[pass.who] = pass.end;
    return pass.end;
  }

  const std::vector<FlowItem>* items_;
  const FlowRules* rules_;
  int spread_;
  std::vector<std::size_t> everyone_, layers_, helpers_;
  std::vector<int> free_;
  std::deque<Waiting> pending_;
  Flow flow_;
  std::vector<std::size_t> firstStrips_;  // of each item laid so far
  std::size_t laid_ = 0;                  // strips
  int layersFree_;
  int earliest_ = 0;  // stroke of the unit being placed
  bool isRested_, hasHelpers_ = true;
};

}  // namespace

std::optional<Flow> flowOf(const std::vector<FlowItem>& items, int start, const FlowRules& rules) {
  constexpr int options = 4, mostSpread = 2;
  const auto badness = [](const Flow& f) { return std::tuple(f.unreached, f.late, f.joints, f.end); };
  std::optional<Flow> best;
  for (int spread = 1; spread <= mostSpread; ++spread) {
    for (int layers = rules.people; layers >= std::max(1, rules.people - options); --layers) {
      auto flow = FlowMaker(items, start, rules, {layers, spread}).make();
      if (flow && (!best || badness(*flow) < badness(*best))) best = std::move(flow);
    }
    if (!best || best->unreached + best->late + best->joints == 0) break;
  }
  return best;
}

}  // namespace schedule
