#include "county/draw_other.hpp"

#include "county/draw.hpp"
#include "county/other_plan.hpp"
#include "county/plan.hpp"
#include "loopwright/base/dice.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::county {

Drawing draw_other(const Plot& plot, std::uint64_t seed) {
  constexpr int most_tries = 20;
  const std::string name = "county " + std::to_string(plot.number);
  Dice dice(Dice(seed).next() ^ static_cast<std::uint64_t>(plot.number));
  std::string why;
  for (int i = 0; i < most_tries; ++i) {
    const std::uint64_t chance = dice.next();
    Drawing county = draw(read_plan(other_plan(plot, chance), name), chance);
    if (county.troubles.empty()) return county;
    why = county.troubles.front();
  }
  throw InputError(name + ": no plan in " + std::to_string(most_tries) +
                   " can be drawn; the last one's " + why + "; try another --seed");
}

}  // namespace loopwright::county
