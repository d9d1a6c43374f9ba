// Looking things up in the raw map.
//
// Tags are packed one behind the other, each with its lengths before it; an object has few, so a
// scan is quicker than any index, and a million nodes cost one string each. Nodes and node tags are
// ordered by id: binary search.
#include "loopwright/mark/raw_map.hpp"

#include <algorithm>
#include <limits>

namespace loopwright::mark {

Tags::Tags(std::initializer_list<std::pair<std::string_view, std::string_view>> pairs) {
  for (const auto& [key, value] : pairs) add(key, value);
}

void Tags::add(std::string_view key, std::string_view value) {
  constexpr std::size_t longest = std::numeric_limits<Length>::max();
  mask_ |= bit_of(key.substr(0, longest));
  if (key.substr(0, longest).ends_with(":conditional")) mask_ |= conditions_bit;
  const Length lengths[2] = {static_cast<Length>(std::min(key.size(), longest)),
                             static_cast<Length>(std::min(value.size(), longest))};
  packed_.append(reinterpret_cast<const char*>(lengths), sizeof lengths);
  packed_.append(key.substr(0, longest)).append(value.substr(0, longest));
}

std::string_view Tags::find(std::string_view key) const {
  for (std::size_t at = 0; at < packed_.size();) {
    const Pair pair = pair_at(at);
    if (pair.key == key) return pair.value;
    at = pair.end;
  }
  return {};
}

const RawNode* RawMap::find_node(std::int64_t id) const {
  const auto at = std::ranges::lower_bound(nodes, id, {}, &RawNode::id);
  return at != nodes.end() && at->id == id ? &*at : nullptr;
}

const Tags& RawMap::tags_of_node(std::int64_t id) const {
  static const Tags none;
  const auto at =
      std::ranges::lower_bound(node_tags, id, {}, [](const auto& row) { return row.first; });
  return at != node_tags.end() && at->first == id ? at->second : none;
}

}  // namespace loopwright::mark
