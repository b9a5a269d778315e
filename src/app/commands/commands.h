// What each command does. All return the program's exit status: 0 done, 1 a job was refused, 2 broken
// surroundings.
#pragma once

#include "app/pack/pack.h"

namespace app {

/// Makes the pack of every job and writes each when it is made; refuses a job with mistakes as a whole, and
/// jobs of one number, and goes on with the others.
int pack(const PackOrder& order);

/// Reads, computes and sets every document of every job, writes nothing and lists every mistake.
int check(const PackOrder& order);

enum class FiguresForm { Plain, Json, Csv, Explain };
int figures(const std::string& job, FiguresForm form, const Choices& choices);

/// The calendar day by day, with the hours fit for coating and why the others are not.
int plan(const std::string& job, bool isJson, const Choices& choices);

/// Every name a template may use, with its value in this job: those of the customer's documents, then what
/// the crew's and the office's have besides.
int facts(const std::string& job, const Choices& choices);

}  // namespace app
