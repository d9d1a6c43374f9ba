// The strip map: the drive as one ribbon, straightened, in columns side by side.
//
//   for (const Picture& page : strip_map(roads, loop, {186, 260, rows, marks}, words)) …
//
// Look: it is read from the foot of the left column upwards, then from the foot of the next one. Why
// upwards: what lies ahead on the road lies ahead on the paper, and left and right are where they are
// through the windscreen; read downwards every kerb and every turn would have to be turned round in
// the head. The ribbon is the road, the ink in it our way; at each row it opens for the junction as
// it lies, where the way leaves by its bar and begins anew above it.
// Rules: the loop is resolved. Lengths are to one scale as far as words leave room: ticks stand each
// quarter of a mile (500 m where signs use kilometres), closer or wider as the ribbon is squeezed or
// stretched, and two slanted strokes mark where a long piece is cut short. All words are 9 pt or more.
// The stretches that hold the door are not drawn (DEVELOPERS.md).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "loopwright/draw/picture.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::draw {

/// A row of the card: what is said at a place.
struct StripRow {
  std::size_t entry = 0;  ///< index into the loop's stretches: due at its end
  std::size_t exit = 0;   ///< the stretch one leaves by; not above `entry`: there is no junction
  std::string number;     ///< at most three digits or letters
  std::string say;
};

/// What else lies on the way.
enum class StripSign : std::uint8_t {
  words,         ///< text beside the ribbon, no more
  pass,          ///< the way opens
  hazard,        ///< a bar on either edge of the road
  limit,         ///< text is the number, in a ring
  pull_up_left,  ///< P at that kerb
  pull_up_right,
  level_crossing,  ///< rails across
};

struct StripMark {
  std::size_t stretch = 0;  ///< index into the loop's stretches
  double at_m = 0;          ///< of the stretch, from where it is entered
  std::string text;
  StripSign sign = StripSign::words;
};

struct StripAsked {
  double width = 186, height = 260;  ///< of each page's box in millimetres; at least 56 by 90
  std::vector<StripRow> rows = {};   ///< in driving order
  std::vector<StripMark> marks = {};
};

/// Pages of the size asked for; at least one. Words that don't fit a column are broken into lines.
std::vector<Picture> strip_map(const road::Roads& roads, const wish::Loop& loop,
                               const StripAsked& asked, const say::Words& words);

}  // namespace loopwright::draw
