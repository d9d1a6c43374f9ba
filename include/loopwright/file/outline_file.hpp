// An outline on the ground, as other programs write it: GeoJSON (.geojson, .json) or the polygon file of map extracts
// (.poly).
//
//   read_outline(load_text("town.poly", {"outline", ""}), "town.poly");   // rings of points
//
// Sources: RFC 7946 (Polygon and MultiPolygon, alone, as a Feature or in a collection of these; other geometries are
// refused); OpenStreetMap wiki, "Osmosis/Polygon Filter File Format". Holes are
// the second and further rings of a polygon there, and the sections marked with '!' here.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/base/ring.hpp"

namespace loopwright::file {

/// Each ring of three points at least. The ending of the name tells which format it is. Throws InputError naming the
/// file, where in it, and what was expected.
std::vector<Ring> read_outline(std::string_view text, std::string_view file_name);

}  // namespace loopwright::file
