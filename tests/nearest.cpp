#include "base/nearest.h"

#include <catch2/catch.hpp>

TEST_CASE("a slip of the finger finds the word that was meant") {
  const std::vector<std::string> timbers = {"oak", "kwila", "larch", "radiata pine"};
  CHECK(base::nearest("oka", timbers) == "oak");
  CHECK(base::nearest("kwilla", timbers) == "kwila");
  CHECK(base::nearest("lrach", timbers) == "larch");
  CHECK(base::nearest("radiata pin", timbers) == "radiata pine");
}

TEST_CASE("a word far from every candidate finds nothing") {
  CHECK(base::nearest("concrete", {"oak", "kwila"}).empty());
  CHECK(base::nearest("x", {"y"}).empty());
  CHECK(base::nearest("oak", {}).empty());
  CHECK(base::nearest(std::string(100'000, 'a'), {std::string(100'000, 'a')}).empty());
}
