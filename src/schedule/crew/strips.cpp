#include "schedule/crew/strips.h"

#include "model/crew_time.h"

#include <algorithm>

namespace schedule {
namespace {

using base::Wide;

using model::clockStep;
using model::upToStep;

int downToStep(int minutes) { return std::max(clockStep, minutes / clockStep * clockStep); }
int minutesOf(Wide hundredths) { return static_cast<int>((hundredths + 99) / 100); }

int boardOf(const BoardRun& run, int i) { return run.isDown ? run.first - i : run.first + i; }

/// The boards of the strips from each one on.
void noteDryBoards(std::vector<FlowStrip>& strips) {
  for (std::size_t i = strips.size(); i-- > 0;) {
    auto& s = strips[i];
    s.dry = {s.fromBoard, s.fromBoard + s.boards - 1};
    if (i + 1 == strips.size()) continue;
    s.dry.low = std::min(s.dry.low, strips[i + 1].dry.low);
    s.dry.high = std::max(s.dry.high, strips[i + 1].dry.high);
  }
}

/// Cuts the boards of one unit.
class BoardStrips {
 public:
  BoardStrips(const FlowItem& item, const StripLimits& limits)
      : item_(item), limits_(limits), longest_(downToStep((limits.open - limits.besides) / limits.spread)) {
    for (const auto& run : item.unit->runs) whole_ += sizeOf(run);
    // One alone cuts in a strip while its border is open.
    const Effort cutIn = item.work().cutIn;
    widest_ = cutIn > 0 ? whole_ * downToStep(limits.open) * 100 / cutIn : whole_;
  }

  std::vector<FlowStrip> make() {
    for (const auto& run : item_.unit->runs) cut(run);
    noteDryBoards(strips_);
    return std::move(strips_);
  }

 private:
  Wide sizeAt(const BoardRun& run, int i) const {
    return item_.unit->row->sizes[static_cast<std::size_t>(boardOf(run, i))];
  }
  Wide sizeOf(const BoardRun& run) const {
    Wide size = 0;
    for (int i = 0; i < run.count; ++i) size += sizeAt(run, i);
    return size;
  }
  Wide hundredths(Wide size) const { return item_.work().lay * size / (whole_ * limits_.layers); }

  void cut(const BoardRun& run) {
    const int minutes = minutesOf(hundredths(sizeOf(run)));
    const int count = std::max(1, (minutes + longest_ - 1) / longest_);
    const int each = std::min(longest_, std::max(clockStep, upToStep((minutes + count - 1) / count)));
    Wide done = 0;
    int clock = 0;
    for (int i = 0; i < run.count;) {
      const int from = i;
      Wide size = 0;
      bool isFull = false;
      while (i < run.count && !isFull) {
        const Wide more = size + sizeAt(run, i);
        isFull = i > from && (more > widest_ || hundredths(done + more) > (clock + each) * 100);
        if (!isFull) size = more, ++i;
      }
      const int needed = minutesOf(hundredths(done + size) - Wide{clock} * 100);
      strips_.push_back(stripOf(run, from, i - from));
      auto& strip = strips_.back();
      strip.size = size;
      strip.minutes = std::max(clockStep, upToStep(needed));
      strip.isTooLong = strip.minutes > limits_.open && strip.boards == 1;
      done += size;
      clock += strip.minutes;
    }
  }

  FlowStrip stripOf(const BoardRun& run, int from, int boards) const {
    FlowStrip strip;
    strip.unitSize = whole_;
    strip.boards = boards;
    strip.fromBoard = std::min(boardOf(run, from), boardOf(run, from + boards - 1));
    strip.goesOn = from > 0;
    return strip;
  }

  const FlowItem& item_;
  const StripLimits& limits_;
  int longest_;
  Wide whole_ = 0, widest_ = 0;
  std::vector<FlowStrip> strips_;
};

/// Where no boards are known: stretches of equal time if something is cut in, which must not dry; else one.
std::vector<FlowStrip> stretchesOf(const FlowItem& item, const StripLimits& limits) {
  const CoatWork& work = item.work();
  const int minutes = std::max(clockStep, fives(work.lay, limits.layers));
  int count = 1;
  if (work.cutIn > 0) {
    const int longest = downToStep(limits.open - limits.besides), border = fives(work.cutIn, 1);
    count = std::max((minutes + longest - 1) / longest,
                     (border + downToStep(limits.open) - 1) / downToStep(limits.open));
  }
  std::vector<FlowStrip> stretches(static_cast<std::size_t>(count));
  int clock = 0;
  for (int i = 0; i < count; ++i) {
    auto& stretch = stretches[static_cast<std::size_t>(i)];
    stretch.size = wholeUnit * (i + 1) / count - wholeUnit * i / count;
    stretch.unitSize = wholeUnit;
    stretch.minutes = std::max(clockStep, upToStep(minutes * (i + 1) / count) - clock);
    stretch.goesOn = i > 0;
    clock += stretch.minutes;
  }
  return stretches;
}

}  // namespace

std::vector<FlowStrip> stripsOf(const FlowItem& item, const StripLimits& limits) {
  auto strips = item.unit->row ? BoardStrips(item, limits).make() : stretchesOf(item, limits);
  for (auto& strip : strips) {
    strip.unit = item.index;
    strip.coat = item.coat;
    strip.openMinutes = limits.open;
  }
  return strips;
}

Effort shareOf(Effort all, const FlowStrip& strip) {
  return base::divide(base::Wide{all} * strip.size, strip.unitSize, base::Round::HalfUp);
}

}  // namespace schedule
