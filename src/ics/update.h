// A calendar file that takes the place of an older one.
#pragma once

#include "ics/calendar.h"

namespace ics {

/// The bytes of the new file; 'before' are those of the older, or empty. So that a calendar that read the
/// older follows (RFC 5545, 3.8.7.4; RFC 5546 (2009), 2.1.5): an event that is no longer as it was gets a
/// higher SEQUENCE, and one that is gone stays in the file as cancelled, where its UID begins with 'own'. The
/// same events over their own file give the same bytes.
std::string writeOver(const std::string& before, const std::string& own, std::vector<Event> events,
                      base::Date stamp);

}  // namespace ics
