#include "sheets/words/hours.h"

namespace sheets {
namespace {

/// How the office reads a count: its unit, and how many of them make one metric unit of the measure, exactly
/// (NIST SP 811 (2008), App. B.8).
struct Reading {
  const Formatter& w;
  std::string unit;
  std::int64_t times = 1, over = 1;

  std::string operator()(base::Count q) const {
    return w.briefNumber({base::mulDiv(q.millionths, times, over, base::Round::HalfUp)}) + " " + unit;
  }
};

Reading readingOf(model::Measure measure, const Formatter& w) {
  const bool isUs = !w.isMetric();
  switch (measure) {
    case model::Measure::Surface:
    case model::Measure::Wetted:
      return isUs ? Reading{w, w.areaUnit(), 100'000'000, 9'290'304} : Reading{w, w.areaUnit()};
    case model::Measure::CutIn:
    case model::Measure::BoardLength:
      return isUs ? Reading{w, w("units.ft"), 10'000, 3048} : Reading{w, w("units.m")};
    case model::Measure::Fixings:
    case model::Measure::Job:
    case model::Measure::Day:
      return {w, w("explain.pieces")};
  }
  throw std::logic_error("internal error: unknown measure");
}

}  // namespace

std::string hoursFormula(const model::LabourLine& line, const model::Task& task, const Formatter& w) {
  const auto each = w.briefNumber({task.hoursEach.millionths});
  if (task.measure == model::Measure::Job) return w("explain.once", {{"hours", each}});
  if (task.measure == model::Measure::Day)
    return w.counted("explain.daily", line.quantity.millionths / 1'000'000, {{"hours", each}});
  const Reading read = readingOf(task.measure, w);
  std::string formula = read(line.quantity) + " / " + read(line.ratePerHour) + "/h";
  if (line.time != base::Share::whole(100)) formula += " × " + w.share(line.time);
  if (!line.checking.isZero())
    formula += " + " + w.number({line.checking.millionths}, 2) + " " + w("units.hour");
  return formula;
}

}  // namespace sheets
