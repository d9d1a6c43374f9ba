// The overview map: the whole loop on the roads around it on one page, and enlarged what lies too
// close for its numbers.
//
//   for (const Picture& page : overview(roads, loop, {186, 250, {{3, "2"}, {7, "3"}}}, words)) …
//
// Look: roads not taken are pale, as wide as they matter. The way is thick ink that begins thin and
// swells, again and again, in the direction one drives, so that no arrow is needed; it opens to hold
// a number just before the junction the number belongs to. Roads driven both ways are two lines, each
// on the side one drives on. The way begins and ends with a bar at the corners next to the door: the
// stretches that hold the door are not drawn (DEVELOPERS.md, never a pupil's door).
// Rules: the loop is resolved; millimetres as in picture.hpp; north is up. Words are 9 pt or more, but
// street names along roads 7.5: they are looked up while parked, never read while moving, and at
// 9 pt every third street of a town would go without.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "loopwright/draw/picture.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::draw {

/// What is written into the way just before the end of a stretch: the number of a card's row.
struct Numbered {
  std::size_t stretch = 0;  ///< index into the loop's stretches
  std::string text;         ///< at most three digits or letters
};

struct OverviewAsked {
  double width = 186, height = 250;    ///< of the page's box in millimetres; each at least 60
  std::vector<Numbered> numbers = {};  ///< in driving order
  std::string credit = {};             ///< printed at the foot; empty: the caller prints it
};

/// Where points of the earth lie on a map's paper.
struct MapFrame {
  Point middle;          ///< of the map
  Spot at;               ///< where that is on the paper
  double mm_per_m = 0;   ///< scale
  double m_per_lat = 0;  ///< metres in a degree of latitude, at the middle
  double m_per_lon = 0;  ///< and of longitude
  Box map;               ///< part of the paper that shows roads; the foot is below it
  [[nodiscard]] Spot spot_of(Point point) const;
};

/// The frame that overview() uses: the loop with some ground around it, as large as it fits.
MapFrame frame_of(const road::Roads& roads, const wish::Loop& loop, const OverviewAsked& asked);

/// The first page shows all of the loop. Numbers that find no room in it, or none at their junction,
/// stand on further pages, each an enlarged part that the first page frames and names "A", "B", "C".
/// What finds none in the way there either stands beside its junction; of a drive that comes through
/// the same streets again and again some are left out. Numbers of stretch 0 are written beside the bar at the start.
std::vector<Picture> overview(const road::Roads& roads, const wish::Loop& loop,
                              const OverviewAsked& asked, const say::Words& words);

}  // namespace loopwright::draw
