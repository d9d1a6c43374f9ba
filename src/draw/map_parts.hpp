// Which parts of a map are shown again, enlarged.
#pragma once

#include <vector>

#include "draw/way_ink.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// Frames of the same paper that show these spots of `whole` larger, the most of them first; none when
/// they can't be shown at least half as large again.
std::vector<MapFrame> enlarged_parts(const MapFrame& whole, std::vector<Spot> spots);

/// What of `whole`'s paper a part shows.
Box shown_by(const MapFrame& part, const MapFrame& whole);

}  // namespace loopwright::draw
