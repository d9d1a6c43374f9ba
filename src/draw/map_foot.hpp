// What a reader needs to read the map: its scale, north, and how the way shows its direction.
#pragma once

#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

/// A length that the scale bar shows.
struct ScaleLength {
  double metres = 0;
  const char* key = "";   ///< of its words
  std::size_t count = 0;  ///< in them
};
/// The longest round length that takes at most `most_mm`; in yards and miles where signs do.
ScaleLength scale_length(const MapFrame& frame, SpeedUnit unit, double most_mm);

struct FootWords {
  const say::Words& words;
  std::string credit;   ///< empty: none
  std::string no_room;  ///< "2, 3": numbers that stand nowhere; empty: none
  std::string
      start_part;  ///< "A": the part that names the start, when this sheet doesn't; empty: none
};

/// Draws the foot below the map.
void draw_foot(Picture& page, const MapFrame& frame, SpeedUnit unit, const FootWords& said);

}  // namespace loopwright::draw
