// Roads that leave a place close to each other, moved apart so that each is seen.
#pragma once

#include <vector>

namespace loopwright::draw {

/// Angles of roads counted round a place from the one the car comes by, 0 to 360, in the order they
/// are met. At least `gap` apart and from 0 and 360 (less when there are too many); one that lies
/// before the one met earlier is put behind it.
std::vector<double> spread(std::vector<double> angles, double gap);

}  // namespace loopwright::draw
