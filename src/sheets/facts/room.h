// How much a crew's document says: what it leaves out stands in the risk assessment.
#pragma once

namespace sheets {

enum class Room { Full, Fewer, Few, Fewest };

}  // namespace sheets
