#include "schedule/weather/air.h"
#include "schedule/weather/weather_limits.h"
#include "weather_sample.h"

using model::WeatherLimit;
using namespace weather;

namespace {

using Reasons = std::vector<WeatherLimit>;

/// Fit hours of the first deck on the summer day.
std::vector<int> fitOn(const model::JobInputs& c, base::Date day) {
  std::vector<int> hours;
  for (const auto& h : schedule::fitHours(c, day, day + std::chrono::days{1})) {
    if (h.isFit && h.deck == 0) hours.push_back(h.at.minutes / 60);
  }
  return hours;
}

/// A product that takes boards as hot as an overcast summer noon makes them.
model::Product warmProduct() {
  model::Product p = fixtures::sampleProduct();
  p.limits.surfaceMax = base::Temperature::whole(40);
  return p;
}

}  // namespace

TEST_CASE("a clear summer day at 30 C has boards near 60 C at noon and no fit hour from mid-morning on") {
  const model::Product product = warmProduct();
  model::JobInputs c = summerCase([](int) { return still(30, 35, 0); });
  c.product = &product;
  // Noon by the sun is 13:52 by the clock (169.13 east, UTC+13). ASHRAE Fundamentals' sol-air temperature
  // with Haurwitz (1945): at 67 degrees I = 1098 x 0.921 x e^(-0.0641) = 948 W/m2; 30 + 0.7 x 948 / 17 - 3.9
  // = 65.
  CHECK(hourAt(c, summerDay(), 14).surface == Approx(65.1).margin(0.5));
  // At 60 degrees, 888.3 W/m2: 30 + 36.6 - 3.9 = 62.7.
  CHECK(hourAt(c, summerDay(), 12).sunElevation == Approx(59).margin(1.5));
  CHECK(hourAt(c, summerDay(), 12).surface == Approx(62.4).margin(1));
  const auto fit = fitOn(c, summerDay());
  REQUIRE_FALSE(fit.empty());
  for (const int hour : fit) CHECK((hour < 10 || hour >= 18));  // the sun is low again after 18:00
  for (int hour = 10; hour < 18; ++hour)
    CHECK(hourAt(c, summerDay(), hour).reasons == Reasons{WeatherLimit::BoardsHot});
}

TEST_CASE("the same day overcast leaves a usable day") {
  const model::Product product = warmProduct();
  model::JobInputs c = summerCase([](int) { return still(30, 35, 1); });
  c.product = &product;
  for (int hour = 7; hour < 20; ++hour) {
    CAPTURE(hour);
    CHECK(hourAt(c, summerDay(), hour).isFit);
  }
  // A quarter of the sun comes through (Kasten and Czeplak 1980), no loss to the sky: 30 + 9.7.
  CHECK(hourAt(c, summerDay(), 14).surface == Approx(39.7).margin(0.2));
}

TEST_CASE("at 40 C no hour is fit, nor on a day that reaches 40 C before a coat is dry") {
  model::JobInputs hot = summerCase([](int) { return still(40, 30, 1); });
  CHECK(fitOn(hot, summerDay()).empty());
  // 24 C at five in the morning, 40 C from noon to six in the evening.
  model::JobInputs day = summerCase([](int hour) {
    const int h = hour % 24;
    return still(h < 5    ? 26
                 : h < 12 ? 24 + 16.0 * (h - 5) / 7
                 : h < 18 ? 40
                          : 40 - 14.0 * (h - 18) / 6,
                 30, 1);
  });
  CHECK(fitOn(day, summerDay()).empty());
  const auto morning = hourAt(day, summerDay(), 7);
  CHECK(morning.air.celsius < 32);
  CHECK(morning.reasons == Reasons{WeatherLimit::AirHot});  // the air is too hot before the coat is touch dry
}

TEST_CASE("a coat that ends at 16:00 before a dewy night is refused for the dew") {
  // 20 C and 55 % by day under cloud; from six on clear, 12 C and 80 %: dew point 8.7 C (WMO-No. 8), boards
  // at 8.1 C once the sun is down.
  const auto dewy = [](int hour) {
    const int h = hour % 24;
    if (h >= 7 && h < 18) return still(20, 55, 1);
    return still(12, 80, 0);
  };
  model::JobInputs c = summerCase(dewy);
  const auto late = hourAt(c, summerDay(), 15);  // 15:00 to 16:00; touch dry six hours later
  CHECK_FALSE(late.isFit);
  CHECK(late.reasons == Reasons{WeatherLimit::DewBefore});
  CHECK(hourAt(c, summerDay(), 10).isFit);  // touch dry at 17:00
  CHECK(hourAt(c, summerDay(), 11).isFit);  // and at 18:00, when the evening sun still warms the boards
}

TEST_CASE("dew counts 3 K above the dew point and is worst under a clear sky at night") {
  // 15 C and 72 %: dew point 10.0 C; boards lose 3.9 K to a clear sky: 1.1 K above it.
  model::JobInputs clear = summerCase([](int) { return still(15, 72, 0); });
  const auto night = hourAt(clear, summerDay(), 2);
  CHECK(night.surface == Approx(11.1));
  CHECK(night.dewPoint == Approx(10.0).margin(0.05));
  CHECK(isFor(night, WeatherLimit::Dew));
  model::JobInputs covered = clear;
  covered.job.areas[0].isCovered = true;
  const auto roofed = hourAt(covered, summerDay(), 2);
  CHECK(roofed.surface == Approx(15));
  CHECK(roofed.reasons == Reasons{WeatherLimit::Dark});
}

TEST_CASE("rain shuts the hour it falls in and those whose coat is not rain safe by then") {
  model::Product product = fixtures::sampleProduct();
  product.times.touchDry = base::Hours::whole(2);
  product.times.rainSafe = base::Hours::whole(4);
  model::JobInputs c = summerCase([](int hour) {
    model::Air air = still(20, 50, 1);
    if (hour == 15) air.rain = 0.4;
    return air;
  });
  c.product = &product;
  CHECK(hourAt(c, summerDay(), 9).isFit);
  CHECK(hourAt(c, summerDay(), 10).isFit);  // ends 11:00, rain safe at 15:00 as the rain begins
  CHECK(hourAt(c, summerDay(), 11).reasons == Reasons{WeatherLimit::RainBefore});
  CHECK(hourAt(c, summerDay(), 14).reasons == Reasons{WeatherLimit::RainBefore});
  const auto wet = hourAt(c, summerDay(), 15);
  CHECK(isFor(wet, WeatherLimit::Rain));
  CHECK(wet.air.rain == Approx(0.4));
  CHECK(hourAt(c, summerDay(), 16).reasons == Reasons{WeatherLimit::Wet});  // drizzle: two hours
  CHECK(hourAt(c, summerDay(), 17).reasons == Reasons{WeatherLimit::Wet});
  CHECK(hourAt(c, summerDay(), 18).isFit);
  c.job.areas[0].isCovered = true;
  CHECK(hourAt(c, summerDay(), 15).isFit);
}

TEST_CASE("a coat dries slower in the cold, so that the rain of the evening comes too soon") {
  // At 10 C it takes 12 h for the 6 h of the data sheet: from 07:00 to 19:00.
  const auto rainAtSix = [](double celsius) {
    return [celsius](int hour) {
      model::Air air = still(celsius, 50, 1);
      if (hour == 18) air.rain = 2;
      return air;
    };
  };
  CHECK(hourAt(summerCase(rainAtSix(20)), summerDay(), 7).isFit);
  CHECK(hourAt(summerCase(rainAtSix(10)), summerDay(), 7).reasons == Reasons{WeatherLimit::RainBefore});
}

TEST_CASE("cold, wind, damp air and damp wood each shut an hour by their own name") {
  model::Product product = fixtures::sampleProduct();
  product.limits.windMax = base::Count::whole(8);
  const auto at = [&](model::Air air) {
    model::JobInputs c = summerCase([&](int) { return air; });
    c.product = &product;
    return hourAt(c, summerDay(), 10).reasons;
  };
  CHECK(at({7.9, 40, 1, 2, 0}) == Reasons{WeatherLimit::AirCold});
  CHECK(at({8, 40, 1, 2, 0}).empty());
  CHECK(at({20, 50, 1, 8, 0}).empty());
  CHECK(at({20, 50, 1, 8.1, 0}) == Reasons{WeatherLimit::Wind});
  // 86 % at 20 C: over the 85 % of the product; wood settles at 18.5 %, over 16 % (Wood Handbook eq. 4-5).
  CHECK(at({20, 86, 1, 2, 0}) == Reasons{WeatherLimit::Damp, WeatherLimit::Moisture});
  CHECK(at({20, 79, 1, 2, 0}).empty());  // settles at 15.7 %
}

TEST_CASE("wood is judged by the air of the whole day before") {
  // Damp from midnight to eight, dry from then on: at ten the mean of ten hours is still high; by evening
  // not.
  const auto air = [](int hour) { return still(20, hour % 24 < 8 ? 84 : 45, 1); };
  model::JobInputs c = summerCase(air);
  CHECK(schedule::equilibriumMoisture(20, 84) == Approx(17.6).margin(0.05));
  CHECK(isFor(hourAt(c, summerDay(), 7), WeatherLimit::Moisture));
  CHECK(hourAt(c, summerDay(), 10).isFit);  // (8.25 x 17.6 + 2 x 8.5) / 10.25 = 15.8
}

TEST_CASE("the night is dark from the minute the sun has set, and a polar day never is") {
  const auto air = [](int) { return still(18, 40, 1); };
  model::JobInputs c = summerCase(air);
  const auto light = schedule::daylightOf(c.job.site, summerDay(), summerDay() + std::chrono::days{1});
  REQUIRE(light.size() == 1);
  REQUIRE(light[0].sunrise);
  REQUIRE(light[0].sunset);
  for (const auto& h : schedule::fitHours(c, summerDay(), summerDay() + std::chrono::days{1})) {
    CAPTURE(base::isoTime(h.at));
    const bool isLight = h.at >= *light[0].sunrise && base::plusMinutes(h.at, 60) <= *light[0].sunset;
    CHECK(isFor(h, WeatherLimit::Dark) == !isLight);
  }
  c.job.site.latitudeMicro = 78'220'000;  // Longyearbyen
  c.job.site.longitudeMicro = 15'640'000;
  c.job.site.timezone = "Arctic/Longyearbyen";
  CHECK(isFor(hourAt(c, summerDay(), 12), WeatherLimit::Dark));
  const base::Date june = *base::parseDate("2027-06-20");
  c.job.forecast = hourly(june, 3, air);
  CHECK_FALSE(isFor(hourAt(c, june, 0), WeatherLimit::Dark));
  const auto polar = schedule::daylightOf(c.job.site, june, june + std::chrono::days{1});
  CHECK_FALSE(polar[0].sunrise);
  CHECK_FALSE(polar[0].sunset);
}

TEST_CASE("a deck is hot only while the sun reaches it") {
  model::JobInputs c = summerCase([](int) { return still(24, 40, 0); });
  c.job.areas[0].sun = model::ClockSpan{13 * 60, 18 * 60};
  CHECK(hourAt(c, summerDay(), 11).surface < 35);
  CHECK(hourAt(c, summerDay(), 11).isFit);
  CHECK(hourAt(c, summerDay(), 12).reasons == Reasons{WeatherLimit::BoardsHot});  // at 13:00, its last minute
  CHECK(hourAt(c, summerDay(), 13).surface > 50);
  c.job.areas[0].sun = model::ClockSpan{0, 0};
  CHECK(hourAt(c, summerDay(), 13).isFit);
  c.job.areas[0].sun = {};
  CHECK(hourAt(c, summerDay(), 11).reasons == Reasons{WeatherLimit::BoardsHot});
}

TEST_CASE("bare boards that take one coat stay lighter than those that are oiled") {
  model::Deck deck = fixtures::sampleDeck();
  CHECK(schedule::absorptanceOf(deck) == schedule::absorptanceOiled);  // the second coat meets the first
  deck.coats = 1;
  CHECK(schedule::absorptanceOf(deck) == schedule::absorptanceWeathered);
  deck.state = model::State::Oiled;
  CHECK(schedule::absorptanceOf(deck) == schedule::absorptanceOiled);
}

TEST_CASE("beyond the forecast the usual weather counts, and without it the hour is not known") {
  model::JobInputs c = summerCase([](int) { return still(20, 50, 1); }, 1);
  const base::Date next = summerDay() + std::chrono::days{1};
  CHECK(hourAt(c, next, 10).reasons == Reasons{WeatherLimit::Unknown});
  CHECK(hourAt(c, next, 10).source == model::WeatherSource::None);
  CHECK(hourAt(c, summerDay(), 16).isFit);
  CHECK(hourAt(c, summerDay(), 18).reasons == Reasons{WeatherLimit::Unknown});  // touch dry at 01:00
  c.job.normals.months.assign(12, {12, 22, 80, 1, 3, 8});
  CHECK(hourAt(c, next, 10).source == model::WeatherSource::Normals);
  CHECK(hourAt(c, next, 10).isFit);
}

TEST_CASE("without any weather an hour is fit when it is light; without a place every hour is") {
  model::JobInputs c = fixtures::sampleCase();
  CHECK(hourAt(c, summerDay(), 10).isFit);
  CHECK(hourAt(c, summerDay(), 10).source == model::WeatherSource::None);
  CHECK(hourAt(c, summerDay(), 2).reasons == Reasons{WeatherLimit::Dark});
  c.job.site.latitudeMicro = c.job.site.longitudeMicro = 0;
  CHECK(hourAt(c, summerDay(), 2).isFit);
}

TEST_CASE("hours come by time, then deck, and only for what is oiled") {
  model::JobInputs c = summerCase([](int) { return still(20, 50, 1); });
  const auto hours = schedule::fitHours(c, summerDay(), summerDay() + std::chrono::days{2});
  REQUIRE(hours.size() == 2 * 48);
  for (std::size_t i = 0; i < hours.size(); ++i) {
    CHECK(hours[i].deck == i % 2);
    CHECK(hours[i].at.minutes == static_cast<int>(i / 2 % 24) * 60);
  }
  c.job.areas[0].coats = 0;
  CHECK(schedule::fitHours(c, summerDay(), summerDay() + std::chrono::days{1}).size() == 24);
  c.job.work = {model::Work::Wash};
  CHECK(schedule::fitHours(c, summerDay(), summerDay() + std::chrono::days{1}).empty());
}

TEST_CASE("a day has 23 hours when the clocks go forward and shows the doubled hour once when they go back") {
  model::JobInputs c = summerCase([](int) { return still(20, 50, 1); });
  c.job.areas.resize(1);
  const auto hoursOn = [&](const char* iso) {
    const base::Date d = *base::parseDate(iso);
    return schedule::fitHours(c, d, d + std::chrono::days{1}).size();
  };
  CHECK(hoursOn("2027-09-26") == 23);  // New Zealand: 02:00 becomes 03:00
  CHECK(hoursOn("2027-04-04") == 24);  // 03:00 becomes 02:00
}
