// Tarjan's algorithm (SIAM J. Comput. 1:2, 1972), with a stack of its own instead of recursion:
// chains of stretches are longer than a call stack may be deep.
//
// 1. Number states in the order they are first met; `low` is the smallest number known to be
//    reachable from a state while it is open.
// 2. A state whose `low` stays its own number closes a component: all states opened since.
// Why not Boost.Graph: it is for room reach alone (DEVELOPERS.md).
#include "components.hpp"

#include <algorithm>

namespace loopwright::read {
namespace {

constexpr std::uint32_t unset = 0xffffffffU;

class Tarjan {
 public:
  explicit Tarjan(const road::Roads& roads)
      : roads_(roads),
        number_(roads.state_count(), unset),
        low_(roads.state_count(), unset),
        component_(roads.state_count(), unset) {}

  std::vector<std::uint32_t> run() {
    for (std::uint32_t s = 0; s < number_.size(); ++s) {
      if (number_[s] != unset) continue;
      enter(s);
      while (!path_.empty()) step();
    }
    return std::move(component_);
  }

 private:
  struct Visit {
    std::uint32_t state, next_turn;
  };

  void enter(std::uint32_t state) {
    number_[state] = low_[state] = met_++;
    open_.push_back(state);
    path_.push_back({state, roads_.turn_first[state]});
  }

  void step() {
    Visit& visit = path_.back();
    if (visit.next_turn == roads_.turn_first[visit.state + 1]) return leave();
    const std::uint32_t to = roads_.turns[visit.next_turn++].to.value;
    if (number_[to] == unset) {
      enter(to);
    } else if (component_[to] == unset) {
      low_[visit.state] = std::min(low_[visit.state], number_[to]);
    }
  }

  void leave() {
    const std::uint32_t state = path_.back().state;
    path_.pop_back();
    if (!path_.empty()) {
      const std::uint32_t parent = path_.back().state;
      low_[parent] = std::min(low_[parent], low_[state]);
    }
    if (low_[state] != number_[state]) return;
    std::uint32_t member = unset;
    do {
      member = open_.back();
      open_.pop_back();
      component_[member] = components_;
    } while (member != state);
    ++components_;
  }

  const road::Roads& roads_;
  std::vector<std::uint32_t> number_, low_, component_, open_;
  std::vector<Visit> path_;
  std::uint32_t met_ = 0, components_ = 0;
};

}  // namespace

std::vector<std::uint32_t> strong_components(const road::Roads& roads) {
  return Tarjan(roads).run();
}

}  // namespace loopwright::read
