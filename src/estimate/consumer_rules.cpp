#include "estimate/consumer_rules.h"

#include "base/holidays.h"

#include <algorithm>

namespace estimate {
namespace {

bool fits(const model::DepositCap& cap, const std::string& state, base::Money total) {
  return base::holdsIn(cap.states, state) && (!cap.from || total >= *cap.from) &&
         (!cap.to || total <= *cap.to);
}

bool counts(model::CountedDays counted, base::Date day, const std::vector<base::Date>& holidays) {
  const std::chrono::weekday weekday{day};
  const bool isHoliday = std::find(holidays.begin(), holidays.end(), day) != holidays.end();
  switch (counted) {
    case model::CountedDays::All:
      return true;
    case model::CountedDays::Working:
      return !isHoliday && weekday != std::chrono::Saturday && weekday != std::chrono::Sunday;
    case model::CountedDays::WorkingAndSaturdays:
      return !isHoliday && weekday != std::chrono::Sunday;
  }
  return true;
}

}  // namespace

const model::DepositCap* depositCapFor(const model::Region& region, const std::string& state,
                                       base::Money total) {
  const auto& caps = region.depositCaps;
  const auto found =
      std::find_if(caps.begin(), caps.end(), [&](const auto& cap) { return fits(cap, state, total); });
  return found == caps.end() ? nullptr : &*found;
}

base::Money mostDeposit(const model::DepositCap& cap, base::Money total, base::Money specialOrders) {
  base::Money most{base::mulDiv(total.minor, cap.part, cap.whole, base::Round::Down)};
  if (cap.amount) most = std::min(most, *cap.amount);
  switch (cap.specialOrders) {
    case model::SpecialOrders::Ignored:
      return most;
    case model::SpecialOrders::Added:
      return std::min(most + specialOrders, total);
    case model::SpecialOrders::Instead:
      return std::min(std::max(most, specialOrders), total);
  }
  return most;
}

base::Date lastDayToCancel(const model::Cancellation& rule, base::Date agreed, bool isUninvited,
                           const std::vector<base::Date>& holidays) {
  base::Date day = agreed;
  for (int left = isUninvited ? rule.uninvitedDays.value_or(rule.days) : rule.days; left > 0;) {
    day += std::chrono::days{1};
    if (counts(rule.counted, day, holidays)) --left;
  }
  return day;
}

}  // namespace estimate
