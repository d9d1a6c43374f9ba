// Which parts of a map are shown again, enlarged.
#pragma once

#include <optional>
#include <vector>

#include "draw/way_ink.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// A spot that should be seen larger, and how much that is worth.
struct Crowded {
  Spot spot;
  double worth = 1;
};

/// A frame of the same paper that shows a part of a sheet larger.
struct Part {
  MapFrame frame;
  double worth = 0;  ///< of the spots that it was made for
};

/// The part of `sheet` that is most worth a page; none when nothing is.
std::optional<Part> best_part(const MapFrame& sheet, const std::vector<Crowded>& spots);

/// What of `whole`'s paper a part shows.
Box shown_by(const MapFrame& part, const MapFrame& whole);

}  // namespace loopwright::draw
