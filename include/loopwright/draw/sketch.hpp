// A junction of a loop as it lies: the small shape beside a row of the sheet, and the picture for
// the briefing at the kerb.
//
//   row_shape(roads, loop, {row.stretch, row.exit}, {26, 22});
//   for (At at : worth_sketching(roads, loop)) page.push_back(briefing_sketch(roads, loop, at, {title, size, words}));
//
// Rules: the car comes from the bottom; the way is thick ink and ends in a bar. The loop is resolved.
// Everything comes from the road graph; what it doesn't hold (widths not mapped, the angle of a
// railway, lane arrows) is drawn as is usual and said to be so in words.
// Why two pictures: the row is read in a glance and may bend the truth for clearness (roads that lie
// close are spread, a small ring is drawn large); the briefing is to scale.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "loopwright/base/region.hpp"
#include "loopwright/draw/picture.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::draw {

/// A place of a loop: between the end of one stretch and the beginning of another.
struct At {
  std::size_t entry = 0, exit = 0;  ///< indices into loop.stretches; entry < exit
  friend bool operator==(const At&, const At&) = default;
};

/// Millimetres.
struct Size {
  double width = 0, height = 0;
};

/// The shape beside a row; about 26 by 22 mm reads well. It has no words.
Picture row_shape(const road::Roads& roads, const wish::Loop& loop, At at, Size size);

/// Pulling up, where cars keep to `driving`, at that kerb: a line that swings to it, P beside it.
Picture pull_up_shape(Side driving, Side kerb, Size size);
/// Setting off from the near kerb.
Picture set_off_shape(Side driving, Size size);

struct SketchAsked {
  std::string title;
  Size size;  ///< about 92 by 125 mm, a quarter of an A4 sheet; at least 80 by 100, or 120 by 80
  const say::Words& words;
  std::string note =
      {};  ///< below the picture, what its numbers mean beside those of the title; empty: nothing
};

/// The picture for the briefing: roads to scale with edges and lines, the way through its lane,
/// exits as signs count them, who has priority and where to look, the title above and words below, or beside it
/// on a sheet that is wider than high.
Picture briefing_sketch(const road::Roads& roads, const wish::Loop& loop, At at,
                        const SketchAsked& asked);

/// The places of a loop that deserve a picture: roundabouts, minis, lights, crossroads, staggered
/// junctions, level crossings, lanes that merge, slip roads. The same way through the same place
/// once; the hardest first, then in driving order. None of what the instructor drives.
std::vector<At> worth_sketching(const road::Roads& roads, const wish::Loop& loop);

}  // namespace loopwright::draw
