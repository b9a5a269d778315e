// Runs a property over random cases of a fixed seed, so that a failure comes again.
#pragma once

#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <sstream>

/// 'tryOnce' draws one case and asserts with RC_ASSERT; a failure is reported with the case that failed.
template <class TryOnce>
void holdsAlways(int cases, TryOnce tryOnce) {
  rc::detail::TestParams params;
  params.seed = 20270316;
  params.maxSuccess = cases;
  const rc::detail::TestResult result =
      rc::detail::checkTestable(tryOnce, rc::detail::TestMetadata(), params);
  std::ostringstream text;
  rc::detail::printResultMessage(result, text);
  INFO(text.str());
  CHECK(result.is<rc::detail::SuccessResult>());
}
