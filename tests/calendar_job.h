// Jobs in a few lines, planned with the content that comes with the program, and their calendars in words.
#pragma once

#include "app/pack/compute.h"
#include "estimate/estimate.h"
#include "input/read.h"
#include "model/lookup.h"
#include "schedule/plan.h"
#include "schedule/site/walks.h"

#include <catch2/catch.hpp>

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

inline Planned planned(const Wish& w) {
  const std::string text =
      "ref: S-1\nquoted: 2027-03-02\ncustomer: {name: Inga Thorley}\nsite: {region: nz, timezone: "
      "Pacific/Auckland, exposure: sheltered" +
      w.site + "}\nstart: " + w.start + "\nproduct: " + w.product + "\nareas:\n" + w.areas +
      "work: " + w.work + "\n" + (w.work.find("sand") != std::string::npos ? "sanding: [60, 80]\n" : "") +
      "crew: " + w.crew + "\nfirm: firm\nprice: {deposit: 0 %}\n" + w.more;
  Planned p;
  base::Diagnostics messages;
  p.c.job = input::readJob(text, "job.yaml", content(), messages);
  for (const auto& m : messages.all()) FAIL(base::format(m));
  p.c.product = &content().products.at(p.c.job.product);
  p.c.region = &content().regions.at("nz");
  p.e = estimate::makeEstimate(p.c, content());
  p.plan = schedule::makePlan(p.c, content(), p.e, messages);
  for (const auto& m : messages.all()) p.said += base::format(m);
  return p;
}

}  // namespace calendar
