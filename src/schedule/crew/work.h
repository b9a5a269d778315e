// The estimate's labour as the crew meets it: what is done by all together, piece by piece, and the coats.
#pragma once

#include "schedule/site/rows.h"

#include <string>
#include <vector>

namespace schedule {

/// Hundredths of a minute of work.
using Effort = std::int64_t;

/// A piece of work that the whole crew does, and can lay down and take up again.
struct Piece {
  std::string task;
  std::size_t rank = 0;  // the task's place in the order of work
  Where deck;
  int part = 0, pass = 0;
  Effort exact = 0;  // of all together
  int minutes = 0;   // rounded
  base::Hours dryAfter;
  bool soilsWetCoats = false;
  bool isSanding = false;
};

/// One coat of a unit.
struct CoatWork {
  std::vector<Piece> before;   // clearing dust
  std::optional<Piece> extra;  // sanding where it comes later than it may
  bool needsPapers = false;    // for it: treated boards, and the crew has none
  std::string cutInTask, layTask, wipeTask;
  Effort cutIn = 0, lay = 0, wipe = 0;
};

/// What falls on a unit of its deck: by the boards.
struct Portion {
  base::Wide part = 1, whole = 1;
};

/// Boards laid one after another: first, first + 1, ... or downwards.
struct BoardRun {
  int first = 0, count = 0;
  bool isDown = false;
};

/// A deck, or a part of a large one: what is coated as one.
struct Unit {
  std::size_t deck = 0;
  int part = 0;
  Portion portion;
  const Row* row = nullptr;    // null: nothing to count
  std::vector<BoardRun> runs;  // in the order they are laid
  std::vector<std::vector<Piece>>
      blocks;                 // before the coats; each waits until the boards of the one before dry
  std::vector<Piece> taping;  // on the day of its first coat, or the afternoon before
  std::vector<CoatWork> coats;
  std::vector<Piece> after;

  /// Minutes that so many people take for the longest of its coats, with cutting in and wiping.
  int layMinutes(int people) const;
  /// Nothing where there are none to count.
  std::optional<BoardSpan> boards() const;
};

struct Work {
  std::vector<Unit> units;   // in the order of their coats
  std::vector<Piece> first;  // for the whole job, before all else
  std::vector<Piece> last;   // for the whole job, when the coats are done
};

/// All labour but the tasks of every day. parts[deck] is the number of parts it is laid in, at least 1.
Work workOf(const model::JobInputs& c, const model::Content& content, const model::Estimate& e,
            const AccessGraph& graph, const std::vector<std::optional<Row>>& rows,
            const std::vector<int>& parts);

/// From the boards farthest from the way out towards it. Where the way out lies amid the ends of boards, from
/// both sides, what holds it last.
std::vector<BoardRun> runsOf(const Row& row, std::size_t deck, const AccessGraph& graph);

int minutesOf(const std::vector<Piece>& pieces);

/// Rounded to five minutes so that together they take about as long as they do: what some are rounded up by
/// comes off a later one.
std::vector<Piece> evened(std::vector<Piece> pieces);

/// A piece with its minutes from the first one's start, and who does it.
struct SharedPiece {
  Piece piece;
  int from = 0, until = 0;
  std::vector<std::size_t> who;
};

/// One after another by all together, but what one person does in five minutes on one deck goes beside the
/// same on another.
std::vector<SharedPiece> sharedOut(const std::vector<Piece>& pieces, int people);

/// What all would do together, done by fewer.
std::vector<Piece> byFewer(std::vector<Piece> pieces, int all, int people);

/// Task by task, those of a deck's parts as one.
std::vector<Piece> byTask(std::vector<Piece> pieces);

/// Rounded up to five minutes.
int fives(Effort effort, int people);

}  // namespace schedule
