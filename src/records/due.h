// Whose maintenance coat falls due, and what it will take.
#pragma once

#include "model/plan.h"

namespace records {

/// The yearly visit that follows one job.
struct Visit {
  std::string file, ref, after;
  base::Date due{}, lastCoat{};
  std::string customer, phone, email;
  std::vector<std::string> address;  // of the site, else of the customer
  std::string region, product, colour;
  std::vector<std::string> batches;
  std::vector<std::string> areas;
  bool hasRecords = false;              // of any coat: the work was accepted and begun
  std::vector<std::string> openQuotes;  // numbers of the jobs without records that would replace it
  base::Volume litres;                  // what the last coats took, or are planned to take
  bool isRecorded = false;              // every last coat has its own litres
};

/// The visit of a job; nothing when it lays no coat. 'plan' holds at least its events.
std::optional<Visit> visitAfter(const std::string& file, const model::JobInputs& c, const model::Estimate& e,
                                const std::vector<model::ActualCoat>& actual, const model::Plan& plan);

/// Those due from one day to another, both included, by date. A job that a later one follows is left out: one
/// of the same customer that names it under 'after', or one for the same customer and address that coats all
/// its areas again. As long as the later one has no records it is only a quote, and stands beside the visit.
std::vector<Visit> dueBetween(std::vector<Visit> all, std::optional<base::Date> from, base::Date by);

}  // namespace records
