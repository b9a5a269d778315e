// Runs a property over random cases of a fixed seed, so that a failure comes again.
#pragma once

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>
#include <initializer_list>
#include <sstream>

/// 'RANDOM_TIMES=4 RANDOM_SEED=7 build/tests [plan]' tries four times as many cases, and others.
inline int fromEnvironment(const char* name, int usual) {
  const char* value = std::getenv(name);
  return value ? std::atoi(value) : usual;
}

/// 'tryOnce' draws one case and asserts with RC_ASSERT; a failure is reported with the case that failed.
/// 'kinds' are tags that it sets with RC_CLASSIFY: each must hold for a twentieth of the cases or more ('-s'
/// prints how they are spread), so that no property rests on cases that never come.
template <class TryOnce>
void holdsAlways(int cases, TryOnce tryOnce, std::initializer_list<const char*> kinds = {}) {
  rc::detail::TestParams params;
  params.seed = static_cast<std::uint64_t>(fromEnvironment("RANDOM_SEED", 20270316));
  params.maxSuccess = cases * fromEnvironment("RANDOM_TIMES", 1);
  const rc::detail::TestResult result =
      rc::detail::checkTestable(tryOnce, rc::detail::TestMetadata(), params);
  std::ostringstream text;
  rc::detail::printResultMessage(result, text);
  INFO(text.str());
  rc::detail::SuccessResult success;
  REQUIRE(result.match(success));
  for (const char* kind : kinds) {
    int count = 0;
    for (const auto& [tags, n] : success.distribution)
      if (std::find(tags.begin(), tags.end(), rc::toString(std::string(kind))) != tags.end()) count += n;
    INFO(kind);
    CHECK(count * 20 >= params.maxSuccess);
  }
}
