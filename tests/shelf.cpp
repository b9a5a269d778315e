// Things made once and shared.
#include "base/shelf.h"

#include <catch2/catch.hpp>

#include <stdexcept>
#include <string>

TEST_CASE("a thing on a shelf is made for the first who asks and shared with the next") {
  base::Shelf<std::string, int> shelf;
  int made = 0;
  const auto make = [&] { return ++made; };
  const auto one = shelf.take("a", make);
  CHECK(shelf.take("a", make) == one);
  CHECK(*shelf.take("b", make) == 2);
  CHECK(made == 2);
}

TEST_CASE("a thing that could not be made is tried again") {
  base::Shelf<std::string, int> shelf;
  CHECK_THROWS(shelf.take("a", []() -> int { throw std::runtime_error("no"); }));
  CHECK(*shelf.take("a", [] { return 7; }) == 7);
}

TEST_CASE("a full shelf begins anew and harms nobody who took something") {
  base::Shelf<int, int> shelf(2);
  const auto first = shelf.take(1, [] { return 10; });
  shelf.take(2, [] { return 20; });
  shelf.take(3, [] { return 30; });
  CHECK(*first == 10);
  CHECK(*shelf.take(1, [] { return 11; }) == 11);
}
