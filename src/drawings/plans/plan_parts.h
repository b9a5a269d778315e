// The parts of a deck plan, in the order they are drawn. Each takes its room on the sheet.
#pragma once

#include "drawings/plans/plan_sheet.h"

namespace drawings {

/// Fills, boards, treads, cut-outs and edges. The boards are drawn every n-th only when they would come
/// closer than 0.45 mm.
void drawDecks(PlanSheet& sheet, const std::vector<model::Deck>& decks, bool isKey);

/// Boards, treads, cut-outs and the edge of one deck, without its fill.
void drawDeckLines(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, bool isKey);

/// Name and size of each cut-out, in it or beside it.
void nameCutOuts(PlanSheet& sheet, const std::vector<model::Deck>& decks);

/// Letter, name and area of each deck on its boards, where they have room. Returns the places in
/// PlanSheet::placed of those that have none.
std::vector<std::size_t> nameDecksInside(PlanSheet& sheet, const std::vector<model::Deck>& decks,
                                         const model::Estimate& estimate, bool isKey);
/// The names of the others beside them, with a leader.
void nameDecksOutside(PlanSheet& sheet, const std::vector<std::size_t>& which,
                      const std::vector<model::Deck>& decks, const model::Estimate& estimate, bool isKey);

/// Sizes of each deck: dimension lines around it, what they leave out beside its edges; those that find no
/// room are left out. 'mayGrow' is false where single edges have to do with the room within the drawing.
void dimensionDecks(PlanSheet& sheet, bool mayGrow);

/// The scales a plan is drawn to, largest first.
std::vector<std::int64_t> scalesOf(const Pen& pen);

/// Scale bar with its caption.
void drawScale(PlanSheet& sheet, Dim width);

/// The north arrow, in a corner that is free; nothing (false) when there is none and it may only stand in a
/// corner.
bool drawNorth(PlanSheet& sheet, int degrees, bool onlyInCorner);

/// What lies beside a deck, as the job tells it: walls as thick bars, water as waves, a drop as teeth, each
/// with its word where it has room. 'north' as in model::Site; nothing = at the top.
void drawEdges(PlanSheet& sheet, const PlacedDeck& placed, const model::Deck& deck, std::optional<int> north);

/// What the job draws around the decks: 'by' moves it on the sheet. Room for what of it lies on a rim.
void makeRoomAround(PlanSheet& sheet, const std::vector<model::Around>& around, model::Place by,
                    const Rect& rim);
/// In soft tones under all that is drawn so far, as far as it is visible, each with its word where that has
/// room.
void drawAround(PlanSheet& sheet, const std::vector<model::Around>& around, model::Place by,
                const Rect& visible);
/// 'around: house, water' for those who hear the plan; empty where nothing is told.
std::string aroundText(const Pen& pen, const std::vector<model::Around>& around);

/// Lines in the note style below everything.
void writeNotes(PlanSheet& sheet, Dim width);

}  // namespace drawings
