// Bends of a road too sharp for a speed.
//
//   const double radius = least_radius_m(26.8);   // 60 mph: 330 m
//   share_bending(road_line(draft, roads, piece, lengthening_for_bends(radius)), radius) >= 0.5;
//
// Rules: private to mark.
#pragma once

#include "road_line.hpp"

namespace loopwright::mark {

/// The radius below which a bend can't be driven in comfort at a speed.
double least_radius_m(double metres_per_second);

/// How much road beyond a piece's ends its bends are judged with.
Lengthening lengthening_for_bends(double radius_m);

/// The part of the piece that lies in bends sharper than the radius, or between two of them that
/// are at most 200 m apart: 0 to 1.
double share_bending(const RoadLine& line, double radius_m);

}  // namespace loopwright::mark
