// Data for streams, packed.
#pragma once

#include <string>
#include <string_view>

namespace pdf {

/// How hard to look for what repeats: what is written once a file quickly, what is made once a process well.
enum class Effort { Quick = 1, Thorough = 7 };  // 8 and 9 take three times as long for a tenth less

/// Data for a FlateDecode stream.
std::string deflated(std::string_view data, Effort effort = Effort::Quick);

}  // namespace pdf
