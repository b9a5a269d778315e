#include "app/commands/commands.h"
#include "app/report/plan_text.h"
#include "schedule/plan.h"

#include <iostream>

namespace app {
namespace {

constexpr int done = 0, refused = 1;
constexpr std::chrono::days mostDays{366};

}  // namespace

int plan(const std::string& job, bool isJson, const Choices& choices) {
  const auto& [from, by] = choices.bounds;
  base::Diagnostics messages;
  if (from && by && *by < *from)
    messages.error({"--by"}, "", "'" + base::isoDate(*by) + "' is before '" + base::isoDate(*from) + "'",
                   "--from is the first day, --by the last");
  auto [shipped, x] = messages.ok() ? computeFile(job, choices, messages) : ComputedJob{};
  if (x && by && *by - from.value_or(x->c.job.start) > mostDays)
    messages.error({"--by"}, "", "'" + base::isoDate(*by) + "' is more than a year after the first day",
                   "plan a season at a time");
  std::cerr << base::format(messages);
  if (!x || !messages.ok()) return refused;
  const auto report = reportPlan(*x, shipped->content, choices.bounds);
  std::cout << (isJson ? planJson(report) : planText(report));
  return done;
}

}  // namespace app
