// Numbers that are compared with those of a table.
#pragma once

#include <catch2/catch.hpp>

/// That number but for what doubles lose; '.margin(0.5)' allows half of one more or less, and nothing
/// besides: Catch's Approx adds a relative 1.2e-5 to every margin, 29 days of a Julian day.
inline Approx near(double number) { return Approx(number).epsilon(0).margin(1e-9); }
