// The area round some spots, and lines that fill it.
#pragma once

#include <vector>

#include "draw/lines.hpp"

namespace loopwright::draw {

/// The corners of the smallest area without dents that holds all spots; fewer than three when they lie
/// on one line.
Line hull_of(Line spots);

/// Lines of a course (degrees, clockwise from up) inside an area without dents, `apart` from each other.
std::vector<Line> hatching(const Line& corners, double course_deg, double apart);

}  // namespace loopwright::draw
