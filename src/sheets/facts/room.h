// How much a crew's document says: what it leaves out stands in the risk assessment.
#pragma once

namespace sheets {

enum class Room { Full, Fewer, Few, Fewest, Least };

/// Of the safety leaf: what is read first, in front, and the steps of the tasks on its back.
struct LeafRoom {
  Room front = Room::Full, back = Room::Full;
};

}  // namespace sheets
