#include "schedule/crew/coat_flow.h"

#include "schedule/weather/boards.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <tuple>

namespace schedule {
namespace {

using base::Wide;

constexpr int five = 5;

int fivesOf(int minutes) { return (minutes + five - 1) / five * five; }

/// A strip that waits to be wiped.
struct Pending {
  std::size_t strip = 0;
  std::size_t item = 0;
  int due = 0, minutes = 0;
  bool isFromGround = false;
  std::vector<std::size_t> decks;  // from which a pole reaches it
};

class FlowMaker {
 public:
  FlowMaker(const std::vector<FlowItem>& items, int start, const FlowRules& rules, int layers)
      : items_(&items), rules_(&rules), layersFree_(start) {
    const auto people = static_cast<std::size_t>(rules.people);
    free_.assign(people, start);
    for (std::size_t p = 0; p < people; ++p)
      (p < static_cast<std::size_t>(layers) ? layers_ : helpers_).push_back(p);
    hasHelpers_ = !helpers_.empty();
    if (!hasHelpers_) helpers_ = layers_;
    isRested_ = rules.rest == 0;
  }

  std::optional<Flow> make() {
    for (std::size_t i = 0; i < items_->size(); ++i) {
      if (!place(i)) return {};
    }
    while (!pending_.empty()) wipe(allPeople());
    for (const int f : free_) flow_.end = std::max(flow_.end, f);
    if (flow_.end > rules_->until) return {};
    return std::move(flow_);
  }

 private:
  const Unit& unitOf(std::size_t item) const { return *(*items_)[item].unit; }
  const CoatWork& workOf(std::size_t item) const {
    return unitOf(item).coats[static_cast<std::size_t>((*items_)[item].coat - 1)];
  }
  std::vector<std::size_t> allPeople() const {
    std::vector<std::size_t> all;
    for (std::size_t p = 0; p < free_.size(); ++p) all.push_back(p);
    return all;
  }

  /// Side by side they need two metres of board each: our own choice.
  int layersOf(std::size_t item) const {
    const auto layers = static_cast<int>(layers_.size());
    const Unit& unit = unitOf(item);
    if (!unit.row) return layers;
    const auto longest = std::max_element(unit.row->lengths.begin(), unit.row->lengths.end());
    return std::clamp(static_cast<int>(longest->millionths / base::metres(2).millionths), 1, layers);
  }

  /// In the first of its fit spans that holds the whole coat.
  bool place(std::size_t item) {
    const auto& it = (*items_)[item];
    wipeFrom(it.unit->deck);
    const int ready = fivesOf(std::max(layersFree_, it.notBefore));
    for (const auto& span : it.open) {
      if (span.until <= ready) continue;
      FlowMaker attempt = *this;
      attempt.earliest_ = std::max(fivesOf(span.from), fivesOf(it.notBefore));
      attempt.lay(item, std::max(attempt.earliest_, ready));
      if (attempt.flow_.lastStroke > span.until) continue;
      *this = std::move(attempt);
      return true;
    }
    return false;
  }

  /// Nobody works longer than six hours on end: where this unit would take longer, all rest before it.
  int rested(std::size_t item, int start) {
    const int minutes = fives(workOf(item).lay, layersOf(item));
    constexpr int afterWork = 60;
    if (isRested_ || start - rules_->arrive < afterWork || start + minutes - rules_->arrive <= longestSpell)
      return start;
    isRested_ = true;
    int from = start;
    for (const int f : free_) from = std::max(from, f);
    flow_.rests.push_back({from, from + rules_->rest});
    for (int& f : free_) f = from + rules_->rest;
    return from + rules_->rest;
  }

  int openMinutes(std::size_t item, int from) const {
    const int minutes = fives(workOf(item).lay + workOf(item).cutIn, layersOf(item));
    double warmest = 20;
    for (int h = from / 60; h <= std::min(23, (from + minutes) / 60); ++h)
      warmest = std::max(warmest, (*items_)[item].surface[static_cast<std::size_t>(h)]);
    constexpr double rounding = 0.001;
    return std::max(1, static_cast<int>(std::floor(openTime(rules_->openAt20, warmest) + rounding)));
  }

  void lay(std::size_t item, int start) {
    start = rested(item, start);
    const int open = openMinutes(item, start);
    if (open < rules_->leastOpen) {
      flow_.lastStroke = 24 * 60;
      return;
    }
    const Unit& unit = unitOf(item);
    const std::size_t first = flow_.strips.size();
    cutIntoStrips(item, open);
    bool isFirst = true;
    for (std::size_t i = first; i < flow_.strips.size(); ++i) {
      auto& strip = flow_.strips[i];
      if (isFirst) layersFree_ = std::max(layersFree_, start);
      const int held = unit.row ? wipeBefore(item, i, first) : 0;
      const int target = std::max(layersFree_, held);
      const int begun = cutIn(item, i, target);
      strip.lay.who.assign(layers_.begin(), layers_.begin() + layersOf(item));
      strip.lay.start = std::max(target, begun);
      for (const auto p : strip.lay.who) strip.lay.start = std::max(strip.lay.start, free_[p]);
      strip.lay.end = strip.lay.start + strip.lay.end;  // its length so far
      if (strip.goesOn) {
        const auto& before = flow_.strips[i - 1].lay;
        const bool isMet = std::max(strip.lay.start - before.start, strip.lay.end - before.end) <= open;
        if (!isMet && !(strip.isTooLong && flow_.strips[i - 1].isTooLong)) {
          strip.goesOn = false;
          ++flow_.joints;
        }
      }
      strip.segment = isFirst ? 0 : flow_.strips[i - 1].segment + (strip.goesOn ? 0 : 1);
      layersFree_ = strip.lay.end;
      for (const auto p : strip.lay.who) free_[p] = std::max(free_[p], strip.lay.end);
      const int stroke = strip.cutIn ? strip.cutIn->start : strip.lay.start;
      flow_.firstStroke = i == 0 ? stroke : std::min(flow_.firstStroke, stroke);
      flow_.lastStroke = std::max(flow_.lastStroke, strip.lay.end);
      if (rules_->wipeWait > 0 && workOf(item).wipe > 0) await(item, i);
      isFirst = false;
    }
  }

  /// The strips of a unit on a grid of five minutes: as many whole boards as are laid in the time. The length
  /// of each stands in its lay.end.
  void cutIntoStrips(std::size_t item, int open) {
    const Unit& unit = unitOf(item);
    const Effort all = workOf(item).lay;
    const int layers = layersOf(item);
    FlowStrip strip;
    strip.unit = (*items_)[item].index;
    strip.coat = (*items_)[item].coat;
    strip.openMinutes = open;
    if (!unit.row) {
      strip.lay.end = std::max(five, fives(all, layers));
      flow_.strips.push_back(strip);
      return;
    }
    Wide whole = 0;
    for (const auto& run : unit.runs)
      for (int i = 0; i < run.count; ++i) whole += sizeAt(unit, run, i);
    strip.unitSize = whole;
    // Who lays also cuts in and wipes between two strips.
    const int besides = hasHelpers_ ? 0
                                    : (workOf(item).cutIn > 0 ? five : 0) +
                                          (rules_->wipeWait > 0 && workOf(item).wipe > 0 ? five : 0);
    const int longest = std::max(five, (open - besides) / five * five);
    const auto hundredths = [&](Wide size) { return all * size / (whole * layers); };
    for (const auto& run : unit.runs) {
      Wide runSize = 0;
      for (int i = 0; i < run.count; ++i) runSize += sizeAt(unit, run, i);
      const auto minutes = static_cast<int>((hundredths(runSize) + 99) / 100);
      const int count = std::max(1, (minutes + longest - 1) / longest);
      const int each = std::min(longest, std::max(five, fivesOf((minutes + count - 1) / count)));
      Wide done = 0;
      int clock = 0, i = 0;
      bool goesOn = false;
      while (i < run.count) {
        const int from = i;
        Wide size = 0;
        while (i < run.count &&
               (i == from || hundredths(done + size + sizeAt(unit, run, i)) <= (clock + each) * 100))
          size += sizeAt(unit, run, i++);
        const auto needed = static_cast<int>((hundredths(done + size) - clock * 100 + 99) / 100);
        const bool isLast = i == run.count;
        strip.lay.end = isLast || needed > each ? std::max(five, fivesOf(needed)) : each;
        strip.isTooLong = needed > open && i - from == 1;
        strip.size = size;
        strip.boards = i - from;
        strip.fromBoard = run.isDown ? run.first - i + 1 : run.first + from;
        strip.goesOn = goesOn;
        flow_.strips.push_back(strip);
        goesOn = true;
        done += size;
        clock += strip.lay.end;
      }
    }
  }

  static Wide sizeAt(const Unit& unit, const BoardRun& run, int i) {
    return unit.row->sizes[static_cast<std::size_t>(run.isDown ? run.first - i : run.first + i)];
  }

  Effort shareOf(Effort all, const FlowStrip& strip) const {
    return base::divide(Wide{all} * strip.size, strip.unitSize, base::Round::HalfUp);
  }

  /// Just ahead of laying, by a helper; by all where nobody else has anything to do, or where one alone takes
  /// longer than the border stays open. Returns when it is done.
  int cutIn(std::size_t item, std::size_t i, int target) {
    auto& strip = flow_.strips[i];
    const Effort effort = shareOf(workOf(item).cutIn, strip);
    if (effort == 0) {
      dueWipes(target);
      return target;
    }
    const int alone = std::max(five, fives(effort, 1));
    Slot slot;
    if (i == 0 || alone > strip.openMinutes || !hasHelpers_) {
      dueWipes(target);
      slot.start = target;
      for (const int f : free_) slot.start = std::max(slot.start, f);
      slot.end = slot.start + std::max(five, fives(effort, static_cast<int>(free_.size())));
      slot.who = allPeople();
    } else {
      const int from = std::max(target - alone, earliest_);
      dueWipes(from);
      const auto p = *std::min_element(helpers_.begin(), helpers_.end(),
                                       [&](auto a, auto b) { return free_[a] < free_[b]; });
      slot.start = std::max(free_[p], from);
      slot.end = slot.start + alone;
      slot.who = {p};
    }
    for (const auto p : slot.who) free_[p] = slot.end;
    strip.cutIn = slot;
    return slot.end;
  }

  // ------------------------------------------------------------ wiping

  void await(std::size_t item, std::size_t i) {
    const auto& strip = flow_.strips[i];
    const Unit& unit = unitOf(item);
    Pending p{i,
              item,
              strip.lay.end + rules_->wipeWait,
              std::max(five, fives(shareOf(workOf(item).wipe, strip), 1)),
              false,
              {}};
    if (!unit.row) {
      p.isFromGround = true;
    } else {
      const Row& row = *unit.row;
      p.isFromGround = true;
      p.decks = row.reachedFrom[static_cast<std::size_t>(strip.fromBoard)];
      for (int i = 0; i < strip.boards; ++i) {
        const auto board = static_cast<std::size_t>(strip.fromBoard + i);
        p.isFromGround = p.isFromGround && row.isReachedFromGround[board];
        std::erase_if(p.decks, [&](std::size_t deck) {
          return std::find(row.reachedFrom[board].begin(), row.reachedFrom[board].end(), deck) ==
                 row.reachedFrom[board].end();
        });
      }
      std::erase_if(p.decks, [&](std::size_t deck) { return rules_->isWet(deck, p.due); });
      // What is coated today before it is wet by then.
      std::erase_if(p.decks, [&](std::size_t deck) {
        return std::any_of(items_->begin(), items_->begin() + static_cast<std::ptrdiff_t>(item),
                           [&](const auto& other) { return other.unit->deck == deck; });
      });
    }
    pending_.push_back(std::move(p));
  }

  /// The first of a unit's boards that is dry once its strips up to 'next' are laid; the next part's after
  /// it.
  std::optional<int> dryBoard(std::size_t item, std::size_t next) const {
    if (next < flow_.strips.size() && flow_.strips[next].unit == (*items_)[item].index) {
      const auto& strip = flow_.strips[next];
      const auto& unit = unitOf(item);
      for (const auto& run : unit.runs) {
        const int low = run.isDown ? run.first - run.count + 1 : run.first, high = low + run.count;
        if (strip.fromBoard >= low && strip.fromBoard < high)
          return run.isDown ? strip.fromBoard + strip.boards - 1 : strip.fromBoard;
      }
    }
    return rules_->nextDryBoard((*items_)[item].index, (*items_)[item].coat);
  }

  bool reachesFrom(std::optional<int> board, const Pending& p) const {
    const auto& strip = flow_.strips[p.strip];
    return board && isReachedFromBoard(*unitOf(p.item).row, strip.fromBoard, strip.boards, *board);
  }

  /// Before this strip is laid, whatever can then no more be reached from a dry board is wiped.
  int wipeBefore(std::size_t item, std::size_t next, std::size_t first) {
    int held = 0;
    const auto board = dryBoard(item, next + 1);
    while (true) {
      const auto stuck = std::find_if(pending_.begin(), pending_.end(), [&](const Pending& p) {
        return p.item == item && !p.isFromGround && p.decks.empty() && !reachesFrom(board, p);
      });
      if (stuck == pending_.end()) return held;
      // Out of reach already: waiting helps nobody.
      if (!reachesFrom(dryBoard(item, next), *stuck) || next == first) {
        stuck->isFromGround = true;
        ++flow_.unreached;
        continue;
      }
      while (!pending_.empty() && pending_.front().strip < stuck->strip)
        held = std::max(held, wipe(helpers_));
      held = std::max(held, wipe(helpers_));
    }
  }

  /// Before a deck is coated, what only it gives a place to wipe from is wiped.
  void wipeFrom(std::size_t deck) {
    const auto needs = [&](const Pending& p) {
      return !p.isFromGround && std::find(p.decks.begin(), p.decks.end(), deck) != p.decks.end();
    };
    const auto onlyThis = [&](const Pending& p) { return needs(p) && p.decks.size() == 1; };
    while (std::any_of(pending_.begin(), pending_.end(), onlyThis))
      layersFree_ = std::max(layersFree_, wipe(allPeople()));
    for (auto& p : pending_) {
      if (needs(p)) std::erase(p.decks, deck);
    }
  }

  /// What is due and done before a moment.
  void dueWipes(int until) {
    while (!pending_.empty()) {
      const auto p = earliest(helpers_);
      const auto& front = pending_.front();
      // Without helpers the edge waits for as long as a wipe takes.
      if (!hasHelpers_ ? front.due > until : std::max(free_[p], front.due) + front.minutes > until) return;
      wipe(helpers_);
    }
  }

  std::size_t earliest(const std::vector<std::size_t>& people) const {
    return *std::min_element(people.begin(), people.end(),
                             [&](auto a, auto b) { return free_[a] < free_[b]; });
  }

  /// The strip that waits longest, by the first who is free. Returns when it is done.
  int wipe(const std::vector<std::size_t>& people) {
    const Pending p = std::move(pending_.front());
    pending_.pop_front();
    const auto who = earliest(people);
    auto& strip = flow_.strips[p.strip];
    Slot slot;
    slot.start = std::max(free_[who], p.due);
    slot.end = slot.start + p.minutes;
    slot.who = {who};
    slot.from = standFor(p);
    if (slot.start > p.due + rules_->wipeWait) ++flow_.late;
    free_[who] = slot.end;
    strip.wipe = slot;
    return slot.end;
  }

  static model::Stand standFor(const Pending& p) {
    using On = model::Stand::On;
    if (p.isFromGround) return {On::Ground, 0};
    if (!p.decks.empty()) return {On::Deck, p.decks.front()};
    return {On::Boards, 0};
  }

  const std::vector<FlowItem>* items_;
  const FlowRules* rules_;
  std::vector<std::size_t> layers_, helpers_;
  std::vector<int> free_;
  std::deque<Pending> pending_;
  Flow flow_;
  int layersFree_;
  int earliest_ = 0;  // stroke of the unit being placed
  bool isRested_ = false, hasHelpers_ = true;
};

}  // namespace

std::optional<Flow> flowOf(const std::vector<FlowItem>& items, int start, const FlowRules& rules) {
  std::optional<Flow> best;
  constexpr int options = 4;
  for (int layers = rules.people; layers >= std::max(1, rules.people - options); --layers) {
    auto flow = FlowMaker(items, start, rules, layers).make();
    const auto badness = [](const Flow& f) { return std::tuple(f.unreached, f.late, f.joints, f.end); };
    if (flow && (!best || badness(*flow) < badness(*best))) best = std::move(flow);
  }
  return best;
}

}  // namespace schedule
