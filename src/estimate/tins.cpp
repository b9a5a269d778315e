// The tin with the best price a litre, the base, fills the bulk. All other tins are worth buying only to end
// nearer to the need, and what counts of them is their volume beyond whole base tins. So the search runs over
// sets of those others in the order of what they cost more than the same volume of base would, and ends when
// that alone is more than the best set found. Its length does not depend on the need.
#include "estimate/tins.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <queue>

namespace estimate {
namespace {

using base::divide;
using base::Round;
using base::Wide;

struct Kind {
  const model::Tin* tin = nullptr;
  std::int64_t size = 0;   // in steps of the sizes' common divisor
  std::int64_t price = 0;  // in the smallest coin
  Wide extra = 0;          // what it costs more than its volume of base, times the base's size
};

/// A set of tins other than the base.
struct Others {
  Wide extra = 0;  // sum of theirs
  std::int64_t number = 0, volume = 0, cost = 0;
  int kind = -1;    // the one added last
  int before = -1;  // the set it was added to; nothing = -1
};

/// Sets come out by their extra cost, then number, then volume.
bool operator>(const Others& a, const Others& b) {
  return std::tuple(a.extra, a.number, a.volume) > std::tuple(b.extra, b.number, b.volume);
}

/// A set that holds the need, compared the way sets are preferred.
struct Found {
  std::int64_t cost = 0, number = 0, volume = 0;
  std::int64_t baseTins = 0;
  int others = -1;

  bool isBetterThan(const Found& o) const {
    return std::tuple(cost, number, volume) < std::tuple(o.cost, o.number, o.volume);
  }
};

class Search {
 public:
  /// The first kind is the base.
  Search(std::vector<Kind> kinds, std::int64_t need) : kinds_(std::move(kinds)), need_(need) {}

  /// The number of tins of each kind.
  std::vector<std::int64_t> counts() {
    std::priority_queue<Others, std::vector<Others>, std::greater<>> open;
    open.push({});
    while (!open.empty()) {
      const Others others = open.top();
      open.pop();
      if (best_ && leastCost(others) > best_->cost) break;
      if (isNoBetter(others)) continue;
      const int at = static_cast<int>(tried_.size());
      tried_.push_back(others);
      byRest_[others.volume % kinds_[0].size].push_back(at);
      complete(others, at);
      if (others.volume >= need_) continue;
      for (std::size_t k = 1; k < kinds_.size(); ++k) {
        const Kind& kind = kinds_[k];
        open.push({others.extra + kind.extra, others.number + 1, others.volume + kind.size,
                   others.cost + kind.price, static_cast<int>(k), at});
      }
    }
    return collect();
  }

 private:
  /// Of any set that holds the need and has these in it.
  std::int64_t leastCost(const Others& o) const {
    return divide(Wide{need_} * kinds_[0].price + o.extra, kinds_[0].size, Round::Up);
  }

  /// An earlier set, filled up with base tins to the same volume, costs no more and has no more tins.
  bool isNoBetter(const Others& o) const {
    const auto found = byRest_.find(o.volume % kinds_[0].size);
    if (found == byRest_.end()) return false;
    return std::any_of(found->second.begin(), found->second.end(), [&](int i) {
      const Others& earlier = tried_[static_cast<std::size_t>(i)];
      const std::int64_t added = (o.volume - earlier.volume) / kinds_[0].size;
      return added >= 0 && (earlier.extra < o.extra || earlier.number + added <= o.number);
    });
  }

  void complete(const Others& o, int at) {
    const std::int64_t rest = std::max<std::int64_t>(0, need_ - o.volume);
    const std::int64_t n = divide(rest, kinds_[0].size, Round::Up);
    const Found found = {o.cost + n * kinds_[0].price, o.number + n, o.volume + n * kinds_[0].size, n, at};
    if (!best_ || found.isBetterThan(*best_)) best_ = found;
  }

  std::vector<std::int64_t> collect() const {
    std::vector<std::int64_t> counts(kinds_.size());
    counts[0] = best_->baseTins;
    for (const Others* o = &tried_[static_cast<std::size_t>(best_->others)]; o->kind >= 0;
         o = &tried_[static_cast<std::size_t>(o->before)])
      ++counts[static_cast<std::size_t>(o->kind)];
    return counts;
  }

  std::vector<Kind> kinds_;
  std::int64_t need_;
  std::vector<Others> tried_;
  std::map<std::int64_t, std::vector<int>> byRest_;  // indices of tried_ by volume beyond whole base tins
  std::optional<Found> best_;
};

/// The base first: the best price a litre, and the largest of those.
std::vector<Kind> kindsOf(const std::vector<model::Tin>& tins, std::int64_t step) {
  std::vector<Kind> kinds;
  for (const auto& tin : tins) kinds.push_back({&tin, tin.size.millionths / step, tin.price.minor, 0});
  std::iter_swap(kinds.begin(),
                 std::min_element(kinds.begin(), kinds.end(), [](const Kind& a, const Kind& b) {
                   const Wide one = Wide{a.price} * b.size, other = Wide{b.price} * a.size;
                   return one != other ? one < other : a.size > b.size;
                 }));
  const Kind base = kinds.front();
  for (auto& kind : kinds) kind.extra = Wide{kind.price} * base.size - Wide{base.price} * kind.size;
  return kinds;
}

}  // namespace

model::TinSet cheapestTins(base::Volume need, const std::vector<model::Tin>& tins) {
  model::TinSet set;
  if (need.millionths <= 0) return set;

  // Whatever is bought is a whole number of steps, so the need may be rounded up to one.
  std::int64_t step = 0;
  for (const auto& tin : tins) step = std::gcd(step, tin.size.millionths);
  if (step <= 0) throw std::logic_error("internal error: no tins to buy");
  const auto kinds = kindsOf(tins, step);
  const auto counts = Search(kinds, divide(need.millionths, step, Round::Up)).counts();

  for (std::size_t i = 0; i < kinds.size(); ++i) {
    if (counts[i] == 0) continue;
    const model::Tin& tin = *kinds[i].tin;
    set.tins.push_back({tin, counts[i]});
    set.cost += tin.price * counts[i];
    set.volume += tin.size * counts[i];
  }
  std::sort(set.tins.begin(), set.tins.end(),
            [](const model::TinCount& a, const model::TinCount& b) { return a.tin.size > b.tin.size; });
  return set;
}

}  // namespace estimate
