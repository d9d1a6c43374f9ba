// A town for tests, drawn as text: letters and digits are map nodes, lines with '=' say the rest.
//
//   const mark::RawMap raw = draw_town(R"(
//         C
//     A   B   D
//   w1 ABD  highway=primary name=Mill_Street maxspeed="30 mph"
//   w2 BC   highway=residential
//   nB      highway=traffic_signals
//   w9 AC   railway=rail
//   r1 no_left_turn from=w1 via=B to=w2 except=psv
//   r2 -    from=w1 via=w3,w4 to=w2 restriction:motorcar=no_u_turn
//   r3 bus_route=w1,w2
//   f1 B    highway=bus_stop
//   f2 ACDA amenity=school
//   )");
//
// Drawing: every character but letters and digits is empty ground. One column is 25 m to the east,
// one row 25 m to the south (a second argument changes both); the top left is 54.30 N 2.60 E, out
// in the North Sea. Lines with '=' are no part of the drawing.
// Node ids: 'A'..'Z' are 1..26, 'a'..'z' 101..126, '0'..'9' 200..209. Way and relation ids are the
// numbers written. A value may stand in double quotes; in name, ref and maxspeed an underscore is a
// space. A way is a road (highway=…), a rail (railway=…) or a tram (railway=tram). A feature (f1) is one letter,
// or a line of several letters; its object is the node, or a way of that number. from, via and to name ways (w1) or
// nodes (B), several by commas.
// Rules: throws std::invalid_argument, quoting the line, for anything else.
#pragma once

#include <cstdint>
#include <string_view>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::test {

mark::RawMap draw_town(std::string_view drawing, double metres_per_character = 25);

/// The map id of a letter or digit.
std::int64_t osm_node(char letter);

}  // namespace loopwright::test
