// The stretches a turn restriction over whole ways leads along.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::read {

using StretchPath = std::vector<StretchId>;

/// Stretches of a way that leave a node: none, one, or two where the way goes on (or is a loop).
std::vector<StretchId> stretches_leaving(const road::Roads& roads, std::int64_t way, NodeId node);

/// Every walk from the end of way `from` along the via ways, in the order given or the reverse, to
/// the beginning of `to`; when there are several, only those that may be driven. Nothing where there are too many to look at: closed
/// ways named again and again can be driven round in more ways than anybody meant.
/// Rules: all ways have pieces; via isn't empty.
std::optional<std::vector<StretchPath>> via_walks(const road::Roads& roads, std::int64_t from,
                                                  std::span<const std::int64_t> via,
                                                  std::int64_t to);

}  // namespace loopwright::read
