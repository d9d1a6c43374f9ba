#include "find/turn_bans.hpp"

namespace loopwright::find {

TurnBans::TurnBans(const road::Roads& roads, reach::Costs& costs)
    : roads_(roads), costs_(costs), copies_(roads) {}

template <class Wanted>
void TurnBans::shut_if(StretchId from, Wanted wanted) {
  const auto shut_from = [&](StateId state) {
    for (std::uint32_t row = roads_.turn_first[state.index()];
         row < roads_.turn_first[state.index() + 1]; ++row)
      if (wanted(roads_.stretch_of(roads_.turns[row].to))) costs_.ban(row);
  };
  shut_from(StateId{from.index()});
  for (const StateId copy : copies_.of(from)) shut_from(copy);
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
