// A job's text becomes the text of next year's: a wash and one maintenance coat.
#pragma once

#include "base/date.h"

#include <optional>
#include <string>
#include <vector>

namespace input {

/// What is new in next year's job.
struct NextYear {
  struct Area {
    std::string state;  // as the boards are now: 'oiled' or 'film'
    std::string rate;   // '11.28 m2/L', for the coat; empty = the product's table
    std::string why;    // a comment beside the rate; may be empty
  };
  std::string ref, after;
  base::Date quoted{}, start{};
  std::string raise;  // '4 %', of all prices; empty = as before
  // Paths from the new file; empty = as they are.
  std::string firm, spreadingRates, schema;  // the last for the editor's line
  std::vector<Area> areas;                   // one for each of the job's
  std::vector<std::string> about;            // comments at the top
};

struct NextYearsJob {
  std::string text;
  std::vector<std::string> promises;  // 'price.discount: 5 %': what became a comment
};

/// The text of a good job, edited in place: customer, site, decks, crew, prices and comments stay; records,
/// answers, tins, test patches, rates and sanding go. What was promised or noted for last year's work becomes
/// a comment: title and lines of the quote, stages, options, a discount, the decks' notes, the way in.
NextYearsJob nextYearsJob(const std::string& text, const NextYear& next);

}  // namespace input
