// Hand-arm vibration, against HSE's ready-reckoner and the EU directive.
#include "near.h"

#include "safety/vibration.h"

#include <catch2/catch.hpp>

TEST_CASE("points of a tool follow the ready-reckoner") {
  // HSE, hand-arm vibration ready-reckoner: 5 m/s2 for 3 h are 150 points. The other cells are recomputed
  // from points = 2 a^2 t; HSE's printed grid rounds, so a cell may differ there by two or three.
  struct {
    double a, hours, points;
  } cases[] = {{5, 3, 150},       {2, 0.25, 2.0},   {2, 0.5, 4.0},   {2, 8, 64},       {2.5, 0.25, 3.125},
               {2.5, 1, 12.5},    {2.5, 2, 25.0},   {2.5, 4, 50.0},  {2.5, 8, 100.0},  {3, 0.5, 9.0},
               {3, 1, 18},        {3, 4, 72},       {3, 8, 144},     {4, 0.5, 16.0},   {4, 2, 64},
               {5, 0.25, 12.5},   {5, 4, 200},      {6, 0.25, 18.0}, {6, 0.5, 36.0},   {6, 1, 72},
               {6, 2, 144},       {6, 4, 288},      {6, 8, 576},     {7, 1, 98},       {7, 2, 196},
               {7, 4, 392},       {7, 8, 784},      {8, 0.25, 32.0}, {8, 0.5, 64.0},   {8, 2, 256},
               {8, 8, 1024},      {10, 0.5, 100.0}, {10, 1, 200},    {10, 2, 400},     {10, 4, 800},
               {12, 1, 288},      {12, 2, 576},     {12, 4, 1152},   {15, 0.5, 225.0}, {15, 4, 1800},
               {20, 0.25, 200.0}, {20, 0.5, 400.0}, {20, 2, 1600},   {20, 4, 3200}};
  for (const auto& c : cases) CHECK(safety::vibrationPoints({{c.a, c.hours}}) == near(c.points).margin(1e-9));
}

TEST_CASE("action and limit value are 100 and 400 points") {
  // HSE ready-reckoner; Directive 2002/44/EC, art. 3: 2.5 and 5 m/s2.
  CHECK(safety::vibrationPoints({{2.5, 8}}) == near(100));
  CHECK(safety::vibrationPoints({{5, 8}}) == near(400));
}

TEST_CASE("several tools of a day add up to A(8)") {
  // Directive 2002/44/EC, annex A.1: A(8) = sqrt(1/8 sum a^2 t); recomputed.
  struct {
    std::vector<safety::VibrationPeriod> day;
    double a8, points;
  } cases[] = {{{{4, 4}}, 2.8284, 128.0},
               {{{2.5, 8}}, 2.5, 100.0},
               {{{5, 8}}, 5.0, 400.0},
               {{{0, 8}}, 0.0, 0.0},
               {{{2, 7}}, 1.8708, 56.0},
               {{{6, 1.5}, {6, 1.5}}, 3.6742, 216.0},
               {{{4.2, 2.75}}, 2.4625, 97.02},
               {{{9.5, 0.16666666666666666}, {3.1, 1.5833333333333333}}, 1.9448, 60.52}};
  for (const auto& c : cases) {
    CHECK(safety::dailyVibration(c.day) == near(c.a8).margin(0.005));
    CHECK(safety::vibrationPoints(c.day) == near(c.points).margin(0.005));
  }
}

TEST_CASE("minutes until the action and the limit value") {
  // ISO 5349-1 and Directive 2002/44/EC, annex A.1: A(8) = a sqrt(t/8); recomputed.
  struct {
    double a, toAction, toLimit;
  } cases[] = {{3, 333.33, 1333.33}, {3.5, 244.9, 979.59}, {4, 187.5, 750.0}, {6, 83.33, 333.33},
               {7, 61.22, 244.9},    {10, 30.0, 120.0},    {15, 13.33, 53.33}};
  for (const auto& c : cases) {
    CHECK(safety::minutesUntil(c.a, 2.5) == near(c.toAction).margin(0.01));
    CHECK(safety::minutesUntil(c.a, 5) == near(c.toLimit).margin(0.01));
  }
}

TEST_CASE("vibrating work is shared among as many as bring it under the action value") {
  CHECK(safety::shareVibration(2.5, 2.5) == 1);
  CHECK(safety::shareVibration(3.54, 2.5) == 3);  // 12.53 / 6.25 = 2.005
  CHECK(safety::shareVibration(5, 2.5) == 4);
  CHECK(safety::shareVibration(2.5 * std::sqrt(2), 2.5) == 2);  // in doubles a hair above 2
}

TEST_CASE("points used leave so many minutes with the next tool") {
  // HSE's ready-reckoner: 2 a^2 t, action 100; recomputed.
  const std::vector<safety::VibrationPeriod> belt = {{3.5, 2}}, both = {{3.5, 2}, {4.5, 0.6}},
                                             disc = {{4.5, 3}};
  CHECK_THAT(safety::minutesLeft(safety::vibrationPoints(belt), 4.5, 100), Catch::WithinAbs(75.6, 0.1));
  CHECK_THAT(safety::minutesLeft(safety::vibrationPoints(both), 3.0, 100), Catch::WithinAbs(89.0, 0.1));
  CHECK_THAT(safety::minutesLeft(safety::vibrationPoints(disc), 3.0, 100), Catch::WithinAbs(0, 0.1));  // over
  CHECK_THAT(safety::minutesLeft(0, 2.5, 100), Catch::WithinAbs(480.0, 0.1));
}
