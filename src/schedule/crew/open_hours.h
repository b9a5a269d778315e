// The clock times of each day at which product may be laid on a deck: the fit hours, within the hours the job
// keeps its coats to.
#pragma once

#include "model/plan.h"
#include "schedule/crew/calendar.h"
#include "schedule/weather/weather_samples.h"

#include <array>
#include <optional>

namespace schedule {

/// Which weather counts. Usual weather cannot forbid a whole season, and no weather can forbid a job for
/// ever: where nothing else is left a coat goes by the clock, and the plan says so.
enum class Heed { All, Forecast, Clock };

/// Reads the fit hours in stretches of some days, as far as it is asked, and keeps them.
class OpenHours {
 public:
  /// 'c' and 'calendar' outlive this.
  OpenHours(const model::JobInputs& c, const Calendar& calendar, base::Date from);

  /// In order, none touching another; within the crew's day, empty on a day on which nothing is
  /// fit.
  const std::vector<Span>& on(base::Date day, std::size_t deck, Heed heed);
  /// What all tasks of a coat keep to, blowing the boards clean too: the job's own hours; without weather the
  /// usual ones for its exposure; else the crew's day.
  Span bounds() const { return bounds_; }
  /// Where nothing is known of the weather.
  Span usual() const { return usual_; }
  bool hasWeather() const { return hasWeather_; }

  /// The hour of a deck that this moment lies in; nothing for a deck that is not coated.
  const model::Hour* hourAt(base::LocalTime at, std::size_t deck);
  /// C, by the hour of a day; 20 where the weather is not known.
  const std::array<double, 24>& surfaces(base::Date day, std::size_t deck);
  /// What most often makes the working hours of these days unfit for a deck; nothing where all are fit.
  std::optional<model::WeatherLimit> trouble(std::size_t deck, base::LocalTime from, base::LocalTime until);
  /// When the next piece of work may begin on a deck made wet until 'end': after the hours it takes at least
  /// and, on a deck that is coated, when the air has dried the wood to the product's limit, from rain that
  /// has fallen since as well. Where it never does within two weeks, the hours for coating say so.
  base::LocalTime dryAfter(std::size_t deck, base::LocalTime end, base::Hours least);
  /// The hours of these days, 'until' not included.
  std::vector<model::Hour> hours(base::Date from, base::Date until);

 private:
  struct Day {
    std::vector<std::size_t> hours;                // of hours_
    std::vector<std::vector<Span>> open[3];        // by Heed, then deck
    std::vector<std::array<double, 24>> surfaces;  // by deck
  };
  Day& dayOf(base::Date day);
  void readMore(base::Date until);
  std::vector<Span> spansOf(const Day& day, std::size_t deck, Heed heed) const;

  const model::JobInputs& c_;
  const Calendar& calendar_;
  WeatherSamples moments_;
  bool hasWeather_;
  Span usual_, bounds_;
  base::Date first_, end_;
  std::vector<model::Hour> hours_;
  std::vector<Day> days_;
};

bool isShutBy(const model::Hour& hour, model::WeatherLimit gate);

/// Clock times a coat keeps to where neither the job nor a weather says more. Common practice: boards in the
/// open are too hot after midday, and by the sea the dew goes later.
Span usualHours(const model::Job& job, Span day);

}  // namespace schedule
