// In which languages a job's documents are told.
#pragma once

#include "app/pack/compute.h"

namespace app {

/// The language of the job's region, whose sheets rule over translations: 'en' of 'en-NZ'.
std::string rulingLanguage(const model::JobResult& x);

/// The languages a document is asked for in, the main one first: by the command line, else by the job, else
/// its region's.
std::vector<std::string> languagesOf(const std::string& document, const model::JobResult& x,
                                     const Choices& choices);

/// A job in a language: itself where it is in that already, else a copy; null (and messages) when there is no
/// such language or its file has mistakes. Must outlive neither the job nor what is shipped.
std::shared_ptr<const model::JobResult> localized(const model::JobResult& x, const Shipped& shipped,
                                                  const std::string& language, base::Diagnostics& messages);

}  // namespace app
