// The site of a plan as JSON: areas, their boards and the ways between them.
#pragma once

#include "model/plan.h"
#include "schedule/site/rows.h"

#include <nlohmann/json.hpp>

namespace app {

class SiteJson {
 public:
  /// 'job' outlives this.
  explicit SiteJson(const model::Job& job);
  nlohmann::ordered_json areas(const schedule::AccessGraph& graph) const;
  /// Corners of a strip on the site's plan.
  nlohmann::ordered_json outlineOf(const model::BoardStrip& strip) const;

 private:
  const model::Job& job_;
  std::vector<std::optional<schedule::Row>> rows_;
};

}  // namespace app
