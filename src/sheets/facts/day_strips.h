// The strips of a day in words: for each coat when every strip is cut in, laid and wiped, and what it takes.
#pragma once

#include "sheets/facts/day_parts.h"

namespace sheets {

/// '14' '13:41' '0.6' '13:30' '15:05'; the last two empty where there is no such step.
struct StripText {
  std::string number, lay, amount, cutIn, wipe;
};

/// A coat of a deck on one day.
struct CoatText {
  const DayCoat* coat = nullptr;
  std::string name;   // 'A Landing', with its coat where the deck has two on that day
  std::string note;   // '6 strips of 4 to 9 boards; stop at the end of a strip, the rest on Wed 31 Mar'
  std::string steps;  // 'wipe 1–4 11:35–12:10 from the ground'
  std::vector<StripText> strips;
};

/// All coats of a day in the order they are laid; 'day' outlives the result.
std::vector<CoatText> coatTexts(const Day& day, const model::JobResult& x, const Formatter& w);

/// The coats of a day in pieces that a page can hold, whole decks each: places in Day::coats.
std::vector<std::vector<std::size_t>> pagesOfCoats(const Day& day);

}  // namespace sheets
