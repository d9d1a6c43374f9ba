// Looking things up in the raw map.
//
// Tags are packed as key NUL value NUL …; an object has few, so a scan is quicker than any index
// and a million nodes cost one string each. Nodes and node tags are ordered by id: binary search.
#include "loopwright/mark/raw_map.hpp"

#include <algorithm>
#include <cassert>

namespace loopwright::mark {

Tags::Tags(std::initializer_list<std::pair<std::string_view, std::string_view>> pairs) {
  for (const auto& [key, value] : pairs) add(key, value);
}

void Tags::add(std::string_view key, std::string_view value) {
  assert(key.find('\0') == std::string_view::npos && value.find('\0') == std::string_view::npos);
  packed_.append(key).push_back('\0');
  packed_.append(value).push_back('\0');
}

std::string_view Tags::get(std::string_view key) const {
  for (std::size_t at = 0; at < packed_.size();) {
    const std::string_view found(packed_.c_str() + at);
    const std::string_view value(packed_.c_str() + at + found.size() + 1);
    if (found == key) return value;
    at += found.size() + value.size() + 2;
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
