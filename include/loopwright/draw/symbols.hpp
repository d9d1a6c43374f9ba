// A symbol for each kind of practice.
//
//   place(page, kind_symbol(road::Kind::zebra), {20, 30}, 0.5);   // 5 mm
//
// Rules: black ink on nothing, in a box of 10 by 10 mm, to be read when printed at 5 mm. Our own
// line: a way is thick and ends in a bar, roads and what stands beside them are thin; no arrows.
#pragma once

#include "loopwright/draw/picture.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::draw {

/// Side of the box a symbol is drawn in, in millimetres.
inline constexpr double symbol_mm = 10;

Picture kind_symbol(road::Kind kind);

}  // namespace loopwright::draw
