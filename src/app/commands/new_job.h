// 'planksheaf new': a job to fill in.
#pragma once

#include "app/pack/shipped.h"

namespace app {

struct NewJobOrder {
  std::string file;
  std::string region;    // empty = the firm's
  std::string customer;  // of the firm's book; empty = a made-up one
  std::string product = "tern-oil";
  std::string number;  // 'next' = the next free one of the firm's jobs
  Choices choices;     // only the firm counts
};

/// Writes a commented job with the place, season and units of a region; never over a file that is there.
/// Returns the program's exit status.
int newJob(const NewJobOrder& order);

}  // namespace app
