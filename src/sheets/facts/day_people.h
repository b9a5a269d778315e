// Who does what on a day: a row for each person, and the same work told once for everybody.
#pragma once

#include "sheets/facts/day_parts.h"

namespace sheets {

/// What one person does from one minute of the clock to another.
struct PersonRun {
  int from = 0, until = 0;
  std::string verb;    // 'lays'
  std::string words;   // 'lays 1–8'
  bool isWork = true;  // false: rests and waits
  bool isTold = true;  // in words; waiting and packing down show as bars alone
};

struct PersonRow {
  std::string name;
  std::vector<PersonRun> runs;  // from arrival to home, without gaps
};

/// A row for each of the crew. Steps that take turns in a few minutes are one run: 'cuts in, lays 2–7'.
std::vector<PersonRow> peopleOf(const Day& day, const model::JobResult& x, const Formatter& w);

/// What the rows say in words: first what all do alike, 'All three' '07:30 set up, 07:40 clear dust A', then
/// each from there on, '08:30 lays 1–8, 10:50 wipes 1–4, 13:15 home'.
struct PersonText {
  std::string name, text;
};
std::vector<PersonText> rowTexts(const std::vector<PersonRow>& rows, const model::JobResult& x,
                                 const Formatter& w);

/// '08:30 lays 1–8' where the text of its person says it; else empty.
std::string noteText(const PersonRun& run, const PersonText& text, const Formatter& w);

/// A piece of work of a day without a coat: time, what, the letters of the areas, who.
struct WorkLine {
  int from = 0, until = 0;
  std::string what, where, who;
};
std::vector<WorkLine> workLines(const Day& day, const model::JobResult& x, const Formatter& w);

/// '1–4, 6' in the order of their numbers.
std::string numberRanges(std::vector<int> numbers, const Formatter& w);

/// 'all three', 'Mara and Tem': first names where no two of the crew share one.
std::string whoText(const std::vector<std::size_t>& who, const model::JobResult& x, const Formatter& w);

}  // namespace sheets
