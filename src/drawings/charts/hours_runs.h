// The hours of a day as runs that look alike, cut at sunrise and sunset, and at the last strokes of the day.
#pragma once

#include "drawings/pen/hatch.h"

namespace drawings {

/// Minutes of the clock.
struct Span {
  int from = 0, until = 0;
};

/// Hours in a row that are told in one word.
struct HoursPart {
  enum class Kind {
    Fit,
    ToFinish,  // fit, but after the last start
    TooLate,   // fit, but after the last stroke
    Unfit
  };
  Span at;
  Kind kind = Kind::Fit;
  std::optional<model::WeatherLimit> reason;  // nothing: an hour that the dark leaves only a part of
};

inline bool isFit(HoursPart::Kind kind) {
  return kind == HoursPart::Kind::Fit || kind == HoursPart::Kind::ToFinish;
}

/// The parts of the hours shown. It is dark only up to the minute of sunrise and from that of sunset on; the
/// rest of such an hour has its own reason, or none.
std::vector<HoursPart> partsOf(const std::vector<model::Hour>& hours, const HoursDay& day);

/// The weather leans to the right, the clock to the left.
inline Hatch hatchOf(HoursPart::Kind kind) {
  return kind == HoursPart::Kind::TooLate ? Hatch::DarkBack : Hatch::Dark;
}

}  // namespace drawings
