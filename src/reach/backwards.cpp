// A move into a state comes from a stretch that ends where the state's begins: one leaving that node, turned
// round, or a copy of it.
#include <algorithm>
#include <numeric>

#include "loopwright/reach/reach.hpp"

namespace loopwright::reach {

std::vector<StateId> states_of(const road::Roads& roads, StretchId stretch) {
  std::vector<StateId> states{StateId{stretch.index()}};
  for (std::size_t copy = 0; copy < roads.copies.size(); ++copy)
    if (roads.copies[copy] == stretch) states.emplace_back(roads.stretch_count() + copy);
  return states;
}

StretchCopies::StretchCopies(const road::Roads& roads) {
  for (std::size_t copy = 0; copy < roads.copies.size(); ++copy)
    states_.emplace_back(roads.stretch_count() + copy);
  std::stable_sort(states_.begin(), states_.end(),
                   [&](StateId a, StateId b) { return roads.stretch_of(a) < roads.stretch_of(b); });
  for (const StateId state : states_) stretches_.push_back(roads.stretch_of(state));
}

std::span<const StateId> StretchCopies::of(StretchId stretch) const {
  const auto [begin, end] = std::equal_range(stretches_.begin(), stretches_.end(), stretch);
  return std::span(states_).subspan(static_cast<std::size_t>(begin - stretches_.begin()),
                                    static_cast<std::size_t>(end - begin));
}

Backwards::Backwards(const road::Roads& roads)
    : roads_(roads),
      copies_(roads),
      first_(roads.state_count(), 0),
      end_(roads.state_count(), 0),
      moves_(1) {}  // so that no state's rows end at 0

void Backwards::add_moves(StretchId before, StateId s) const {
  const auto add_from = [&](StateId from) {
    for (std::uint32_t row = roads_.turn_first[from.index()];
         row < roads_.turn_first[from.index() + 1]; ++row)
      if (roads_.turns[row].to == s) moves_.push_back({from, row});
  };
  add_from(StateId{before.index()});
  for (const StateId copy : copies_.of(before)) add_from(copy);
}

std::pair<std::uint32_t, std::uint32_t> Backwards::rows_into(StateId s) const {
  if (end_[s.index()] == 0) {
    const auto first = static_cast<std::uint32_t>(moves_.size());
    for (const StretchId away : roads_.leaving(roads_.from_node(roads_.stretch_of(s))))
      add_moves(StretchId(away.piece(), !away.against()), s);
    std::sort(moves_.begin() + first, moves_.end(),
              [](const Move& a, const Move& b) { return a.from < b.from; });
    first_.at(s.index()) = first;
    end_.at(s.index()) = static_cast<std::uint32_t>(moves_.size());
  }
  return {first_[s.index()], end_[s.index()]};
}

std::span<const Backwards::Move> Backwards::into(StateId s) const {
  const auto [first, end] = rows_into(s);
  return std::span<const Move>(moves_).subspan(first, end - first);
}

}  // namespace loopwright::reach
