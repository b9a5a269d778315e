#include "estimate/shed.h"

#include "estimate/tins.h"

#include <algorithm>

namespace estimate {
namespace {

using base::Money;
using base::Round;
using base::Volume;

using Stock = std::vector<model::StockTin>;

constexpr std::int64_t wholeShare = 100'000'000;  // 100 % in millionths

Volume volumeOf(const Stock& tins) {
  Volume sum;
  for (const auto& tin : tins) sum += tin.size * tin.count;
  return sum;
}

/// Leaves out the largest that are not needed, largest first.
void dropNeedless(Stock& tins, Volume need) {
  Volume sum = volumeOf(tins);
  for (auto& tin : tins) {
    while (tin.count > 0 && sum - tin.size >= need) {
      sum = sum - tin.size;
      --tin.count;
    }
  }
}

/// What the job takes of the shed and what it buys, and what the rest of an opened tin loses. The rest stays
/// in the smallest: each is larger than it, or it would have stayed shut.
Money costOf(const Stock& opened, Volume need, const std::vector<model::Tin>& sold, base::Share openedLoss) {
  Money worth;
  const model::StockTin* smallest = nullptr;
  for (const auto& tin : opened) {
    worth += priceAgain(tin.size, sold) * tin.count;
    if (tin.count > 0) smallest = &tin;
  }
  const Volume volume = volumeOf(opened);
  if (volume <= need) return worth + cheapestTins(need - volume, sold).cost;
  const Money rest = {base::mulDiv(priceAgain(smallest->size, sold).minor, (volume - need).millionths,
                                   smallest->size.millionths, Round::HalfUp)};
  const Money kept = {
      base::mulDiv(rest.minor, wholeShare - openedLoss.millionths, wholeShare, Round::HalfUp)};
  return worth - kept;
}

}  // namespace

Money priceAgain(Volume size, const std::vector<model::Tin>& sold) {
  const auto larger =
      std::find_if(sold.begin(), sold.end(), [&](const auto& tin) { return tin.size >= size; });
  const model::Tin& like = larger == sold.end() ? sold.back() : *larger;
  return {base::mulDiv(like.price.minor, size.millionths, like.size.millionths, Round::HalfUp)};
}

Shed openShed(Volume need, Stock shed, const std::vector<model::Tin>& sold, base::Share openedLoss) {
  if (shed.empty()) return {};
  std::stable_sort(shed.begin(), shed.end(), [](const auto& a, const auto& b) { return a.size > b.size; });
  Stock opened = shed;
  dropNeedless(opened, need);
  Stock best = opened;
  Money least = costOf(opened, need, sold, openedLoss);
  for (std::size_t i = 0; i < opened.size() && volumeOf(opened) > need; ++i) {
    if (opened[i].count == 0) continue;
    Stock without = opened;
    --without[i].count;
    const Money cost = costOf(without, need, sold, openedLoss);
    if (cost < least) {
      least = cost;
      best = std::move(without);
    }
  }
  Shed result{std::move(best), std::move(shed)};
  for (std::size_t i = 0; i < result.shut.size(); ++i) result.shut[i].count -= result.opened[i].count;
  const auto isNone = [](const auto& tin) { return tin.count == 0; };
  std::erase_if(result.opened, isNone);
  std::erase_if(result.shut, isNone);
  return result;
}

}  // namespace estimate
