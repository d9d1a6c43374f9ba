// The prefixes of all rule paths form a tree; a state remembers the longest of them that what was
// driven ends with (the automaton of Aho and Corasick, CACM 18:6, 1975).
//
// 1. Each rule path but its last stretch is grown into the tree, one prefix a stretch.
// 2. Prefixes of one stretch are the plain states; each longer one is a copy of its last stretch.
// 3. `shorter` of a prefix is found from that of its parent, in order of depth.
// 4. A no_ rule bans its last stretch after its whole prefix. An only_ rule holds from the moment
//    its first via stretch is driven: whoever came that way must follow it to its end (the
//    strict reading; leaving early would be legal only by a looser one).
//    Rules with a condition bind only at some hours, and are left out.
// 5. What holds after a prefix holds after every prefix that ends with it.
#include "via_memory.hpp"

#include <algorithm>
#include <cassert>

namespace loopwright::read {
namespace {

bool contains(const std::vector<StretchId>& stretches, StretchId asked) {
  return std::ranges::find(stretches, asked) != stretches.end();
}

}  // namespace

ViaMemory::ViaMemory(const road::Roads& roads, std::span<const std::vector<StretchId>> also_banned)
    : plain_count_(roads.stretch_count()), begins_rule_(roads.stretch_count(), false) {
  for (const road::TurnRule& rule : roads.turn_rules) {
    if (rule.path_count > 2 && roads.text(rule.condition).empty())
      learn(rule.only != 0, roads.path_of(rule));
  }
  for (const std::vector<StretchId>& path : also_banned) learn(false, path);
  number_states();
  link_shorter();
}

std::uint32_t ViaMemory::grown(std::uint32_t prefix, StretchId stretch) const {
  const auto found = longer_.find({prefix, stretch});
  return found == longer_.end() ? none : found->second;
}

std::uint32_t ViaMemory::grow(std::uint32_t prefix, StretchId stretch) {
  const auto [place, is_new] =
      longer_.try_emplace({prefix, stretch}, static_cast<std::uint32_t>(prefixes_.size()));
  if (is_new) {
    Prefix longer;
    longer.last = stretch;
    longer.depth = prefix == none ? 1 : prefixes_[prefix].depth + 1;
    prefixes_.push_back(longer);
  }
  return place->second;
}

void ViaMemory::learn(bool only, std::span<const StretchId> path) {
  begins_rule_[path[0].index()] = true;
  std::uint32_t prefix = grow(none, path[0]);
  for (std::size_t i = 1; i + 1 < path.size(); ++i) {
    prefix = grow(prefix, path[i]);
    if (only) prefixes_[prefix].musts.push_back(path[i + 1]);
  }
  if (!only) prefixes_[prefix].banned.push_back(path.back());
}

void ViaMemory::number_states() {
  for (std::uint32_t p = 0; p < prefixes_.size(); ++p) {
    Prefix& prefix = prefixes_[p];
    if (prefix.depth == 1) {
      prefix.state = StateId{prefix.last.index()};
    } else {
      prefix.state = StateId{plain_count_ + copies_.size()};
      copies_.push_back(prefix.last);
      prefix_of_copy_.push_back(p);
    }
  }
}

void ViaMemory::link_shorter() {
  // Parents come before their children in prefixes_, but a shorter prefix may come later: by depth.
  std::vector<std::pair<std::uint32_t, std::pair<std::uint32_t, StretchId>>> by_depth;
  for (const auto& [step, child] : longer_) by_depth.push_back({child, step});
  std::ranges::stable_sort(by_depth, {},
                           [&](const auto& row) { return prefixes_[row.first].depth; });
  for (const auto& [child, step] : by_depth) {
    const auto [parent, stretch] = step;
    if (parent == none) continue;
    std::uint32_t ending = prefixes_[parent].shorter;
    while (ending != none && grown(ending, stretch) == none) ending = prefixes_[ending].shorter;
    prefixes_[child].shorter = grown(ending, stretch);
  }
}

std::uint32_t ViaMemory::prefix_of(StateId state) const {
  if (state.index() >= plain_count_) return prefix_of_copy_[state.index() - plain_count_];
  const StretchId stretch{state.index()};
  return begins_rule_[stretch.index()] ? grown(none, stretch) : none;
}

StateId ViaMemory::next(StateId from, StretchId to) const {
  assert(to.index() < plain_count_);
  for (std::uint32_t p = prefix_of(from); p != none; p = prefixes_[p].shorter) {
    if (const std::uint32_t longer = grown(p, to); longer != none) return prefixes_[longer].state;
  }
  return StateId{to.index()};
}

bool ViaMemory::allows(StateId from, StretchId to) const {
  for (std::uint32_t p = prefix_of(from); p != none; p = prefixes_[p].shorter) {
    const Prefix& prefix = prefixes_[p];
    if (contains(prefix.banned, to)) return false;
    if (std::ranges::any_of(prefix.musts, [to](StretchId must) { return must != to; }))
      return false;
  }
  return true;
}

}  // namespace loopwright::read
