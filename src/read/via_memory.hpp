// What a driver must remember on the way to a turn that is banned, or a must, only for those who
// came by certain roads.
//
//   const ViaMemory memory(roads, ways_round_a_gap(roads));
//   if (memory.allows(state, t)) go_to(memory.next(state, t));
//
// Rules: roads.turn_rules with three or more stretches that always bind are taken; those with two need
// no memory and belong to the turn table. The roads must outlive this.
// Why copies of states: so that the search itself needs to know nothing of bans over ways.
#pragma once

#include <map>
#include <span>
#include <utility>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::read {

class ViaMemory {
 public:
  /// Besides the map's rules these paths of two or more stretches are never driven to their end.
  ViaMemory(const road::Roads& roads, std::span<const std::vector<StretchId>> also_banned);

  /// The stretch of each state beyond the plain ones, in their order.
  [[nodiscard]] const std::vector<StretchId>& copies() const { return copies_; }
  /// The state one is in after driving from a state on to a stretch.
  [[nodiscard]] StateId next(StateId from, StretchId to) const;
  /// False when a rule over ways forbids it.
  [[nodiscard]] bool allows(StateId from, StretchId to) const;

 private:
  static constexpr std::uint32_t none = 0xffffffffU;
  /// The beginning of some rule's path: its last stretch, and what else it may be the end of.
  struct Prefix {
    StretchId last;
    std::uint32_t depth = 1;
    std::uint32_t shorter = none;  ///< the longest proper ending of it that is a prefix too
    StateId state;
    std::vector<StretchId> banned, musts;
  };

  void learn(bool only, std::span<const StretchId> path);
  std::uint32_t grow(std::uint32_t prefix, StretchId stretch);
  void number_states();
  void link_shorter();
  [[nodiscard]] std::uint32_t grown(std::uint32_t prefix, StretchId stretch) const;
  [[nodiscard]] std::uint32_t prefix_of(StateId state) const;

  std::size_t plain_count_;
  std::vector<Prefix> prefixes_;
  std::map<std::pair<std::uint32_t, StretchId>, std::uint32_t> longer_;  // from `none`: the first
  std::vector<bool> begins_rule_;                                        // by stretch
  std::vector<StretchId> copies_;
  std::vector<std::uint32_t> prefix_of_copy_;
};

}  // namespace loopwright::read
