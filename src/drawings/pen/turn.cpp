#include "drawings/pen/turn.h"

namespace drawings {

Turn turnBy(int degrees) {
  degrees = (degrees % 360 + 360) % 360;
  const auto part = [](base::Wide product) {
    return base::divide(product, Turn::unit, base::Round::HalfEven);
  };
  Turn t;
  for (int quarter = 0; quarter < degrees / 90; ++quarter) t = {-t.sin, t.cos};
  // One degree at a time, at most 89 times: wrong by less than a ten-millionth.
  constexpr std::int64_t cosOne = 999'847'695, sinOne = 17'452'406;
  for (int i = 0; i < degrees % 90; ++i)
    t = {part(base::Wide{t.cos} * cosOne - base::Wide{t.sin} * sinOne),
         part(base::Wide{t.sin} * cosOne + base::Wide{t.cos} * sinOne)};
  return t;
}

}  // namespace drawings
