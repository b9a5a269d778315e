// Words that every page of the day plan uses.
#pragma once

#include "sheets/facts/day_parts.h"

namespace sheets {

/// 'A Landing', not broken after the letter.
std::string deckName(const model::JobResult& x, std::size_t deck);
/// '08:30–10:15', '8:30–10:15 am'
std::string span(int from, int until, const Formatter& w);
/// 'A, C'; in the order of the areas.
std::string deckLetters(std::vector<std::size_t> decks, const char* between);
/// Tasks of a day with their minutes, in its order; those done once for the whole job only where there is
/// nothing else.
std::vector<std::pair<std::string, int>> tasksOf(const Day& day, const model::JobResult& x);
/// From arrival to home, in minutes of the clock.
model::ClockSpan onSite(const Day& day);
/// From the first who rests to the last; nothing on a day without a break.
std::optional<model::ClockSpan> breakOf(const Day& day, const model::JobResult& x);
/// Of whole steps of Words::volumeStep().
std::string litresText(std::int64_t steps, const Formatter& w);

/// How the boards of a coat are counted off: '4 strips of 13 boards, the last of 1'. Empty without boards,
/// and where the strips differ: the plan shows them.
std::string stripsText(const DayCoat& coat, const model::JobResult& x, const Formatter& w);

/// Whole degrees: '18 °C'. A range is '11 to 19 °C', one degree where both round to it.
std::string degreesText(double celsius, const Formatter& w);
std::string degreesText(double least, double most, const Formatter& w);

}  // namespace sheets
