// A county's ground as a standard elevation tile.
//
//   write_heights(county, "out/heights");   // out/heights/N54E002.hgt
//
// Rules: the tile of one degree in which the county's origin lies, 1201 by 1201 heights 3 arc seconds
// apart, big-endian 16-bit whole metres, rows from north to south, columns from west to east; the
// name is that of its south-west corner. Source: the SRTM topography documentation (NASA, 2005),
// "3 arc second" sampling.
#pragma once

#include <filesystem>
#include <string>

#include "county/drawing.hpp"

namespace loopwright::county {

/// "N54E002.hgt" for a place in degrees.
std::string tile_name(double lat, double lon);

/// Makes the folder when it isn't there; returns the file. Throws InputError.
std::filesystem::path write_heights(const Drawing& county, const std::filesystem::path& folder);

}  // namespace loopwright::county
