// The estimate's labour as the crew meets it: a chain of pieces for each deck, its coats, and what is done
// for the whole job.
#pragma once

#include "model/plan.h"

#include <string>
#include <vector>

namespace schedule {

/// A piece of work that the crew can lay down and take up again.
struct Piece {
  std::string task;
  std::size_t rank = 0;  // the task's place in the order of work
  std::optional<std::size_t> deck;
  int pass = 0;
  int minutes = 0;  // of the whole crew
  base::Hours dryAfter;
  bool soilsWetCoats = false;
};

/// One task of one coat.
struct CoatTask {
  std::string task;
  int minutes = 0;
  bool isWet = false;  // lays product: the coat starts with the first of these and ends with the last
  bool soilsWetCoats = false;
};

/// coats[n] is coat n + 1, its tasks in order.
struct DeckCoats {
  std::size_t deck = 0;
  std::vector<std::vector<CoatTask>> coats;
  std::vector<CoatTask> sanding;  // before coat n + 1 where its window is missed; may be shorter than 'coats'

  int minutes(std::size_t coat) const;
};

/// All work on one deck, in order.
struct Chain {
  std::size_t deck = 0;
  std::vector<Piece> before;  // the coats
  DeckCoats coats;
  std::vector<Piece> after;
};

struct Work {
  std::vector<Chain> chains;  // by deck; only decks with work
  std::vector<Piece> whole;   // for the whole job, each a step between the pieces ranked before and after it
  std::optional<std::size_t> firstCoatRank;
};

/// All labour but the tasks of every day, which the calendar takes off.
Work workOf(const model::Estimate& e, const model::Content& content, const model::Crew& crew);

}  // namespace schedule
