// A row goes back on the one before when both are the same part of the same way, driven contrariwise.
#include "loopwright/wish/turn_round.hpp"

#include <algorithm>

#include "loopwright/wish/parts.hpp"

namespace loopwright::wish {

bool wants_turning_round(const Wish& wish) {
  constexpr road::Kind turning = road::Kind::turn_in_road;
  return std::ranges::find(wish.welcome, turning) != wish.welcome.end() ||
         std::ranges::any_of(all_wants(wish),
                             [](const Want& want) { return want.kind == turning; });
}

bool welcomes_practice(const Wish& wish) {
  return std::ranges::any_of(wish.welcome,
                             [](road::Kind kind) { return kind != road::Kind::turn_in_road; });
}

bool may_turn_round(const Wish& wish, const road::Roads& roads, StretchId back) {
  if (!wish.through.empty()) return true;
  const road::RoadClass road_class = roads.piece(back).road_class;
  return road_class >= road::RoadClass::unclassified &&
         road_class <= road::RoadClass::living_street && wants_turning_round(wish);
}

std::vector<std::size_t> turns_round(const Loop& loop) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 1; row < loop.stretches.size(); ++row) {
    const LoopStretch& before = loop.stretches[row - 1];
    const LoopStretch& here = loop.stretches[row];
    if (before.way == here.way && before.against != here.against &&
        before.from_index == here.to_index && before.to_index == here.from_index)
      rows.push_back(row);
  }
  return rows;
}

}  // namespace loopwright::wish
