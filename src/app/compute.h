// A job file becomes everything that is computed from it.
#pragma once

#include "app/looks.h"
#include "base/diagnostic.h"
#include "model/plan.h"
#include "pdf/write.h"

#include <optional>
#include <string>

namespace app {

/// What comes with the program, read once.
struct Shipped {
  std::string contentFolder;
  Looks looks;
  model::Content content;
};

/// Choices of the command line that change a job.
struct Choices {
  std::optional<model::Paper> paper;
  std::string brandFile;  // replaces the job's
  pdf::Variant variant = pdf::Variant::A2b;
  std::string theme;  // name of a theme; replaces the brand's
  std::string looks;  // the firm's own templates and themes, before the shipped ones
};

struct Computation {
  model::Case c;
  model::Estimate estimate;
  model::Plan plan;
  model::Price price;
};

/// Reads the shipped content. Throws std::runtime_error with all messages when it has mistakes.
Shipped readShipped(const Choices& choices);

/// Reads a job ('-' is standard input) and computes it; nothing when there were errors.
std::optional<Computation> compute(const std::string& file, const Shipped& shipped, const Choices& choices,
                                   base::Diagnostics& messages);

}  // namespace app
