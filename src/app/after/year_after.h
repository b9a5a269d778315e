// The commands for the time after a job. All return the program's exit status, as those in commands.h.
#pragma once

#include "app/pack/compute.h"

#include <string>

namespace app {

enum class ListForm { Table, Json, Csv };

struct DueOrder {
  std::string folder;
  std::optional<base::Date> from;
  base::Date by{};
  std::optional<base::Date> today;  // nothing = by the clock
  ListForm form = ListForm::Table;
  bool byPlace = false;  // in rounds, as a table only
  std::string letters;   // folder for reminders; empty = none
  Choices choices;       // only the firm counts
};

/// Lists whose maintenance falls due, who has a quote, who is booked and who declined, from every job below a
/// folder. Broken jobs are told, the others listed.
int due(const DueOrder& order);

struct AgainOrder {
  std::string job;
  base::Date start{};
  std::optional<base::Share> raise;  // of the last job's prices
  std::optional<base::Date> quoted;  // nothing = four weeks before the start
  std::string file;                  // where to; empty = beside the job, named after its new number
  Choices choices;                   // only the firm counts
};

/// Writes next year's job: a wash and one maintenance coat, with what the last coats drank. Says what differs
/// from the last.
int again(const AgainOrder& order);

/// Learns spreading rates from every recorded job below a folder and writes them to a file, over older rates
/// but nothing else; to standard output when 'file' is empty.
int rates(const std::string& folder, const std::string& file, const Choices& choices);

}  // namespace app
