// Jobs in a few lines, planned with the content that comes with the program, and their calendars in words.
#pragma once

#include "app/pack/compute.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "model/lookup.h"
#include "schedule/site/walks.h"
#include "schedule/plan.h"

#include <catch2/catch.hpp>
#include <set>

namespace calendar {

inline const model::Content& content() {
  static const app::Shipped shipped = app::readShipped({});
  return shipped.content;
}

/// A deck of 140 mm boards, 5 mm apart, that was oiled before; 'more' are further keys in braces' style.
inline std::string deck(const std::string& name, const std::string& size, const std::string& more = "") {
  return "  - {name: " + name + ", shape: {rectangle: [" + size +
         "]}, boards: {width: 140 mm, gap: 5 mm, thickness: 32 mm}, joists: 450 mm, fixings: {kind: screws}, "
         "timber: kwila, state: oiled" +
         (more.empty() ? "" : ", " + more) + "}\n";
}

struct Wish {
  std::string areas;
  std::string crew = "{people: 2, hours: 07:30-16:00, breaks: 30 min, names: [Ada, Ben]}";
  std::string work = "[oil]";
  std::string start = "2027-03-16";  // a Tuesday
  std::string product = "tern-oil";
  std::string site = "";  // further keys; without a place neither sun nor weather are judged
  std::string more = "";
};

struct Planned {
  model::JobInputs c;
  model::Estimate e;
  model::Plan plan;
  std::string said;
};

/// 'air' of each hour from the start's midnight on, for so many days; none = no forecast.
inline Planned planned(const Wish& w, const std::function<model::Air(int)>& air = {}, int days = 0) {
  const std::string text =
      "ref: S-1\nquoted: 2027-03-02\ncustomer: {name: Inga Thorley}\nsite: {region: nz, timezone: "
      "Pacific/Auckland, exposure: sheltered" +
      w.site + "}\nstart: " + w.start + "\nproduct: " + w.product + "\nareas:\n" + w.areas +
      "work: " + w.work + "\n" + (w.work.find("sand") != std::string::npos ? "sanding: [60, 80]\n" : "") +
      "crew: " + w.crew + "\nbrand: firm.yaml\nprice: {deposit: 0 %}\n" + w.more;
  Planned p;
  base::Diagnostics messages;
  p.c.job = input::readJob(text, "job.yaml", content(), messages);
  for (const auto& m : messages.all()) FAIL(base::format(m));
  p.c.product = &content().products.at(p.c.job.product);
  p.c.region = &content().regions.at("nz");
  for (int hour = 0; hour < days * 24; ++hour)
    p.c.job.forecast.steps.push_back({base::plusMinutes({p.c.job.start, 0}, hour * 60), air(hour)});
  if (days > 0) p.c.job.forecast.stepMinutes = 60;
  p.e = estimate::makeEstimate(p.c, content());
  p.plan = schedule::makePlan(p.c, content(), p.e, messages);
  for (const auto& m : messages.all()) p.said += base::format(m);
  return p;
}

/// 'Tue 16 07:30-12:30: mask Deck 08:00, oil Deck (coat 1) 08:30' for each day, each task where it begins.
inline std::vector<std::string> told(const Planned& p) {
  constexpr const char* names[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  std::vector<std::string> days;
  for (const auto& day : p.plan.onSite) {
    std::string line = std::string(names[std::chrono::weekday{day.date}.c_encoding()]) + " " +
                       base::isoDate(day.date).substr(8) + " " + base::isoClock(day.arrive.minutes) + "-" +
                       base::isoClock(day.home.minutes) + ":";
    std::set<std::string> seen;
    for (const auto& s : p.plan.shifts) {
      if (s.start.day != day.date) continue;
      const auto& task = model::taskOf(content(), s.task);
      std::string what = " " + task.name + (s.deck ? " " + p.c.job.areas[*s.deck].name : "");
      if (s.part > 0) what += "/" + std::to_string(s.part);
      if (task.isPerCoat || task.isForLateCoat) what += " " + std::to_string(s.pass);
      if (seen.insert(what).second) line += what + " " + base::isoClock(s.start.minutes) + ",";
    }
    line.pop_back();
    days.push_back(line);
  }
  return days;
}

using Lines = std::vector<std::string>;

}  // namespace calendar
