// The copies of a stretch are looked up by hash; rows of turns are marked one by one.
#include "find/turn_bans.hpp"

namespace loopwright::find {

TurnBans::TurnBans(const road::Roads& roads, reach::Costs& costs) : roads_(roads), costs_(costs) {
  costs_.turn_banned.resize(roads.turns.size(), 0);
  for (std::size_t copy = 0; copy < roads.copies.size(); ++copy)
    copies_.emplace(roads.copies[copy], StateId{roads.stretch_count() + copy});
}

template <class Wanted>
void TurnBans::shut_if(StretchId from, Wanted wanted) {
  const auto shut_from = [&](StateId state) {
    for (std::uint32_t row = roads_.turn_first[state.index()];
         row < roads_.turn_first[state.index() + 1]; ++row)
      if (wanted(roads_.stretch_of(roads_.turns[row].to))) costs_.turn_banned[row] = 1;
  };
  shut_from(StateId{from.index()});
  const auto [begin, end] = copies_.equal_range(from);
  for (auto it = begin; it != end; ++it) shut_from(it->second);
}

void TurnBans::shut(StretchId from, StretchId to) {
  shut_if(from, [&](StretchId next) { return next == to; });
}

void TurnBans::shut_all_from(StretchId from) {
  shut_if(from, [](StretchId) { return true; });
}

void TurnBans::shut_all_but(StretchId from, StretchId to) {
  shut_if(from, [&](StretchId next) { return next != to; });
}

}  // namespace loopwright::find
