// Total-fit line breaking over boxes, glue and penalties.
#include "typeset/lines/breaker.h"

#include "base/fixed.h"

#include <algorithm>
#include <array>
#include <optional>

namespace typeset {
namespace {

constexpr std::int64_t one = 1'000'000;  // ratio 1
constexpr std::int64_t infinite = 1'000'000'000'000;
constexpr std::int64_t worst = 10'000'000;  // badness 10 000, in thousandths
// Two flagged breaks in a row, and neighbours of very different white: 3000 as in the paper's example.
constexpr std::int64_t flaggedDemerits = 3'000'000'000, fitnessDemerits = 3'000'000'000;
constexpr std::int64_t leastDemerits = 1'000'000;  // of a line without badness and penalty

struct Sums {
  std::int64_t width = 0, stretch = 0, shrink = 0;
};

/// A break that may still begin a line.
struct Node {
  std::size_t at = 0;     // item broken at
  std::size_t start = 0;  // first item of the next line
  int fitness = 1;
  std::int64_t demerits = 0;
  std::int64_t ratio = 0;  // of the line that ends here
  std::ptrdiff_t before = -1;
};

class Breaker {
 public:
  Breaker(const std::vector<BreakItem>& items, const BreakRules& rules) : items_(items), rules_(rules) {
    sums_.resize(items.size() + 1);
    starts_.resize(items.size() + 1, items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
      sums_[i + 1] = sums_[i];
      if (items[i].kind == BreakItem::Kind::Penalty) continue;
      sums_[i + 1].width += items[i].width;
      sums_[i + 1].stretch += items[i].stretch;
      sums_[i + 1].shrink += items[i].shrink;
    }
    for (std::size_t i = items.size(); i-- > 0;)
      starts_[i] = items[i].kind == BreakItem::Kind::Box || isForced(i) ? i : starts_[i + 1];
  }

  std::vector<BrokenLine> run() {
    if (items_.empty()) return {};
    nodes_.push_back({});
    if (const auto whole = onOneLine()) return {*whole};
    active_.push_back(0);
    for (std::size_t b = 0; b < items_.size(); ++b)
      if (isLegal(b)) tryBreak(b);
    return lines();
  }

 private:
  /// All of it, where it fits a line as well as any text can: more lines can only be worse.
  std::optional<BrokenLine> onOneLine() const {
    const std::size_t last = items_.size() - 1;
    for (std::size_t i = 0; i < last; ++i)
      if (items_[i].kind == BreakItem::Kind::Penalty && items_[i].penalty < 0) return {};
    if (!isForced(last)) return {};
    const std::int64_t r = ratio(nodes_.front(), last);
    if (r < -one || r > rules_.tolerance || demerits(nodes_.front(), last, r) > leastDemerits) return {};
    return BrokenLine{0, last, r};
  }

  bool isForced(std::size_t i) const {
    return items_[i].kind == BreakItem::Kind::Penalty && items_[i].penalty <= mustBreak;
  }
  bool isLegal(std::size_t i) const {
    const BreakItem& item = items_[i];
    if (item.kind == BreakItem::Kind::Glue) return i > 0 && items_[i - 1].kind == BreakItem::Kind::Box;
    return item.kind == BreakItem::Kind::Penalty && item.penalty < neverBreak;
  }

  std::int64_t ratio(const Node& from, std::size_t b) const {
    Sums line = {};
    if (from.start < b) {
      const Sums &x = sums_[from.start], &y = sums_[b];
      line = {y.width - x.width, y.stretch - x.stretch, y.shrink - x.shrink};
    }
    if (items_[b].kind == BreakItem::Kind::Penalty) line.width += items_[b].width;
    const std::int64_t slack = rules_.width - line.width;
    const std::int64_t give = slack > 0 ? line.stretch + rules_.lineStretch : line.shrink;
    if (slack == 0) return 0;
    if (give <= 0) return slack > 0 ? infinite : -infinite;
    return base::divide(base::Wide{slack} * one, give, base::Round::HalfEven);
  }

  static int fitnessOf(std::int64_t r) { return r < -one / 2 ? 0 : r <= one / 2 ? 1 : r <= one ? 2 : 3; }

  std::int64_t demerits(const Node& from, std::size_t b, std::int64_t r) const {
    const base::Wide size = r < 0 ? -r : r;
    const std::int64_t badness =
        size > 5 * one ? worst
                       : std::min(worst, base::divide(size * size * size * 100'000,
                                                      base::Wide{one} * one * one, base::Round::HalfEven));
    const bool isPenalty = items_[b].kind == BreakItem::Kind::Penalty;
    const std::int64_t penalty = isPenalty ? std::int64_t{items_[b].penalty} * 1000 : 0;
    std::int64_t d = 1000 + badness;
    if (penalty >= 0) d = (d + penalty) * (d + penalty);
    else d = isForced(b) ? d * d : d * d - penalty * penalty;
    const bool wasPenalty = from.before >= 0 && items_[from.at].kind == BreakItem::Kind::Penalty;
    if (isPenalty && wasPenalty && items_[b].isFlagged && items_[from.at].isFlagged) d += flaggedDemerits;
    if (from.before >= 0 && std::abs(fitnessOf(r) - from.fitness) > 1) d += fitnessDemerits;
    return d;
  }

  void tryBreak(std::size_t b) {
    std::array<Node, 4> best;
    std::array<bool, 4> isFound{};
    const auto offer = [&](std::size_t a, std::int64_t r) {
      const int fitness = fitnessOf(r);
      const auto slot = static_cast<std::size_t>(fitness);
      const std::int64_t total = nodes_[a].demerits + demerits(nodes_[a], b, r);
      if (isFound[slot] && best[slot].demerits <= total) return;
      isFound[slot] = true;
      best[slot] = {b, starts_[b + 1], fitness, total, r, static_cast<std::ptrdiff_t>(a)};
    };
    std::vector<std::size_t>& still = still_;
    still.clear();
    const std::size_t last = active_.back();
    for (const std::size_t a : active_) {
      const std::int64_t r = ratio(nodes_[a], b);
      if (r >= -one && r <= rules_.tolerance) offer(a, r);
      if (r >= -one && !isForced(b)) still.push_back(a);
    }
    // Nothing else could begin a line any more: take the line as it is rather than lose words.
    const bool isAnyFound = std::find(isFound.begin(), isFound.end(), true) != isFound.end();
    if (still.empty() && !isAnyFound) offer(last, ratio(nodes_[last], b));
    std::swap(active_, still_);
    std::int64_t least = INT64_MAX;
    for (std::size_t i = 0; i < best.size(); ++i)
      if (isFound[i]) least = std::min(least, best[i].demerits);
    for (std::size_t i = 0; i < best.size(); ++i)
      // What follows differs by this much at most, so a worse one can never win.
      if (isFound[i] && best[i].demerits - fitnessDemerits <= least) {
        active_.push_back(nodes_.size());
        nodes_.push_back(best[i]);
      }
  }

  std::vector<BrokenLine> lines() const {
    std::size_t at = active_.front();
    for (const std::size_t a : active_)
      if (nodes_[a].demerits < nodes_[at].demerits) at = a;
    std::vector<BrokenLine> found;
    for (; nodes_[at].before >= 0; at = static_cast<std::size_t>(nodes_[at].before)) {
      const Node& from = nodes_[static_cast<std::size_t>(nodes_[at].before)];
      found.push_back({std::min(from.start, nodes_[at].at), nodes_[at].at, nodes_[at].ratio});
    }
    std::reverse(found.begin(), found.end());
    return found;
  }

  const std::vector<BreakItem>& items_;
  const BreakRules& rules_;
  std::vector<Sums> sums_;           // before each item
  std::vector<std::size_t> starts_;  // first item at or after this one that a line may begin with
  std::vector<Node> nodes_;
  std::vector<std::size_t> active_, still_;
};

}  // namespace

std::vector<BrokenLine> breakIntoLines(const std::vector<BreakItem>& items, const BreakRules& rules) {
  return Breaker(items, rules).run();
}

}  // namespace typeset
