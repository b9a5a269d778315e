// Things made once and shared.
#include "base/cache.h"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <string>

TEST_CASE("a thing on a shelf is made for the first who asks and shared with the next") {
  base::Cache<std::string, int> shelf;
  int made = 0;
  const auto make = [&] { return ++made; };
  const auto one = shelf.getOrMake("a", make);
  CHECK(shelf.getOrMake("a", make) == one);
  CHECK(*shelf.getOrMake("b", make) == 2);
  CHECK(made == 2);
}

TEST_CASE("a thing that could not be made is tried again") {
  base::Cache<std::string, int> shelf;
  CHECK_THROWS(shelf.getOrMake("a", []() -> int { throw std::runtime_error("no"); }));
  CHECK(*shelf.getOrMake("a", [] { return 7; }) == 7);
}

TEST_CASE("a full shelf begins anew and harms nobody who took something") {
  base::Cache<int, int> shelf(2);
  const auto first = shelf.getOrMake(1, [] { return 10; });
  shelf.getOrMake(2, [] { return 20; });
  shelf.getOrMake(3, [] { return 30; });
  CHECK(*first == 10);
  CHECK(*shelf.getOrMake(1, [] { return 11; }) == 11);
}
