// Which parts of a map are shown again, enlarged.
#pragma once

#include <vector>

#include "draw/way_ink.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// A spot that should be seen larger, and how much that is worth.
struct Crowded {
  Spot spot;
  double worth = 1;
};

/// Frames of the same paper, at most three, that show what is most worth of `whole` larger.
std::vector<MapFrame> enlarged_parts(const MapFrame& whole, std::vector<Crowded> spots);

/// What of `whole`'s paper a part shows.
Box shown_by(const MapFrame& part, const MapFrame& whole);

}  // namespace loopwright::draw
