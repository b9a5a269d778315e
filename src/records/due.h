// Whose maintenance coat falls due and what it will take, who has a quote, who is booked, who declined.
#pragma once

#include "model/plan.h"

namespace records {

/// A visit ahead: the yearly one after a job that is done, or the work of one that is not.
struct Visit {
  std::string file, ref, after;
  model::Progress progress = model::Progress::Done;
  base::Date due{};       // of the yearly visit; of a job that is not done, its start
  base::Date lastCoat{};  // of a job that is done
  base::Date quoted{}, validUntil{};
  std::optional<base::Date> accepted, declined;
  std::string customer, phone, email;
  std::vector<std::string> address;  // of the site, else of the customer
  std::string region, product, colour;
  std::vector<std::string> batches;
  std::vector<std::string> areas;
  base::Volume litres;      // what the last coats took; of a job that is not done, what all its coats take
  bool isRecorded = false;  // every last coat has its own litres
  bool laysCoat = true;
};

/// The visit after a job, or of it; nothing when it is done and lays no coat. 'plan' holds at least the
/// events of a job that is done.
std::optional<Visit> visitAfter(const std::string& file, const model::JobInputs& c, const model::Estimate& e,
                                const std::vector<model::ActualCoat>& actual, const model::Plan& plan);

/// Those between two days, both included: whom to write to first, then who has a quote, who is booked and
/// who declined; each by date.
///
/// A job follows an earlier one of the same customer that it names under 'after', or whose areas it coats
/// again at the same address; a job without a coat follows only others without. It takes the place of the
/// yearly visit after that, whatever became of it: a visit that was declined is listed as declined, and falls
/// due again a year after the start it was quoted for. It takes the place of a quote that was not accepted
/// unless it was declined itself, and of a job that was accepted once it is done. It is listed with the days
/// from the visit it took the place of, the quote or the answer to its start.
std::vector<Visit> dueBetween(std::vector<Visit> all, std::optional<base::Date> from, base::Date by);

}  // namespace records
