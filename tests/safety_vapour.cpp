// Solvent vapour and fresh air, against handbooks and OSHA.
#include "near.h"

#include "safety/vapour.h"

#include <catch2/catch.hpp>

TEST_CASE("a mole of gas takes its volume") {
  // Ideal gas, R = 8.314462618 J/(mol K), 101 325 Pa; recomputed.
  struct {
    double celsius, litres;
  } cases[] = {{0, 22.414}, {20, 24.0551}, {21.111, 24.1463}};
  for (const auto& c : cases) CHECK(safety::molarVolume(c.celsius) == near(c.litres).margin(0.002));
}

TEST_CASE("the textbook's adhesive needs its air") {
  // Abulencia and Theodore, Fluid Flow for the Practicing Chemical Engineer, example 20.2: 3/8 gal/h of
  // adhesive, 0.4 of it toluene, specific gravity 0.87, 92 g/mol, 293 K, 80 ppm, K = 5: 8.24 g/min, 2.15
  // L/min, 134 375 L/min (the last is the book's formula evaluated; its print was cut).
  constexpr double gallon = 3785.411784;             // mL
  const double grams = 0.375 * gallon * 0.4 * 0.87;  // an hour
  CHECK(grams / 60 == near(8.24).margin(0.03));
  const double vapour = safety::vapourVolume(grams, 92);
  CHECK(vapour * 1000 / 60 == near(2.15).margin(0.01));
  CHECK(safety::airUnderLimit(vapour, 80, 5) * 1000 / 60 == near(134375).margin(700));
}

TEST_CASE("air that keeps a solvent under its limit") {
  // ACGIH, Industrial Ventilation: Q = K G 10^6 / C; recomputed at 20 C, m3/h.
  struct {
    double millilitres, density, molarMass, ppm, mixing, air;
  } cases[] = {{1000, 0.78, 144, 100, 5, 6514.9},
               {250, 0.77, 140, 20, 3, 4961.4},
               {1000, 0.867, 92.14, 50, 4, 18107.9},
               {100, 0.78, 144, 100, 1, 130.3},
               {2000, 0.8, 150, 100, 6, 15395.3}};
  for (const auto& c : cases) {
    const double vapour = safety::vapourVolume(c.millilitres * c.density, c.molarMass);
    CHECK(safety::airUnderLimit(vapour, c.ppm, c.mixing) == near(c.air).margin(1));
  }
}

TEST_CASE("the same in US units") {
  // ACGIH, Industrial Ventilation (secondary page): Q = 403 SG 10^6 ER K / (M C), cubic feet a minute.
  struct {
    double pints, gravity, molarMass, ppm, mixing, air;
  } cases[] = {{0.035223, 0.78, 144, 100, 5, 3844.44},
               {0.035223, 0.867, 92.14, 50, 4, 10685.42},
               {0.003522, 0.78, 144, 100, 1, 76.89},
               {0.026417, 0.87, 106.17, 100, 3, 2617.16},
               {0.010567, 0.86, 136.24, 20, 5, 6720.25}};
  for (const auto& c : cases)
    CHECK(safety::airUnderLimitUs(c.pints, c.gravity, c.molarMass, c.ppm, c.mixing) ==
          near(c.air).margin(0.5));
}

TEST_CASE("air that keeps a solvent far from burning") {
  // ACGIH, Industrial Ventilation: Q = G 100 Sf / (LEL B); recomputed, m3/h. The choice of the limit alone,
  // 0.6 or 1.1 %, changes the air by 1.8.
  struct {
    double millilitres, density, molarMass, limit, factor, b, air;
  } cases[] = {{1000, 0.78, 144, 0.6, 4, 1, 86.87},
               {1000, 0.78, 144, 1.1, 4, 1, 47.38},
               {2000, 0.867, 92.14, 1.1, 10, 1, 411.54},
               {250, 0.78, 144, 0.9, 12, 0.7, 62.05}};
  for (const auto& c : cases) {
    const double vapour = safety::vapourVolume(c.millilitres * c.density, c.molarMass);
    CHECK(safety::airUnderExplosion(vapour, c.limit, c.factor, c.b) == near(c.air).margin(0.05));
  }
}

TEST_CASE("a gallon needs OSHA's air") {
  // 29 CFR 1910.94(c)(6)(ii): 4 (100 - LEL) V / LEL; the vapours of table G-11 are from memory.
  struct {
    double vapour, limit, air;
  } cases[] = {{23.2, 1.1, 8343.6}, {20.8, 0.8, 10316.8}, {22.4, 0.9, 9866.0}, {26.4, 1.0, 10454.4}};
  for (const auto& c : cases) CHECK(safety::airPerGallon(c.vapour, c.limit) == near(c.air).margin(1));
}

TEST_CASE("parts in a million become milligrams") {
  // mg/m3 = ppm M / 24.45; recomputed. The last: NIOSH's IDLH page of Stoddard solvent, 5000 ppm about 29
  // 500.
  struct {
    double ppm, molarMass, milligrams, tolerance;
  } cases[] = {
      {100, 144, 589.0, 0.5}, {500, 144, 2944.8, 0.5}, {50, 92.14, 188.4, 0.5}, {5000, 144, 29500, 100}};
  for (const auto& c : cases)
    CHECK(safety::milligramsPerCubicMetre(c.ppm, c.molarMass) == near(c.milligrams).margin(c.tolerance));
}

TEST_CASE("solvents of one mixture share the limit") {
  // The additive rule (secondary page); recomputed.
  struct {
    std::vector<std::pair<double, double>> parts;
    double index;
  } cases[] = {{{{50, 100}, {10, 20}}, 1.0},
               {{{30, 100}, {5, 50}, {100, 500}}, 0.6},
               {{{99, 100}}, 0.99},
               {{{60, 100}, {25, 50}}, 1.1}};
  for (const auto& c : cases) CHECK(safety::mixtureIndex(c.parts) == near(c.index).margin(0.0001));
}

TEST_CASE("the health limit asks for far more air than the fire limit") {
  // White spirit, 1 L/h: 350 mg/m3 (NIOSH REL of Stoddard solvent) against a quarter of 0.6 % (from memory).
  const double grams = 780;
  const double forHealth = safety::airUnderMassLimit(grams, 350, 5);
  CHECK(forHealth == near(11142.857).margin(0.01));  // 5 * 780 000 / 350
  CHECK(forHealth > 50 * safety::airUnderExplosion(safety::vapourVolume(grams, 144), 0.6, 4));
}
