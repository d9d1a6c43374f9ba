// What the small shapes beside the rows are made of.
#pragma once

#include <vector>

#include "draw/scene.hpp"

namespace loopwright::draw {

// In tenths of half the shape: millimetres at 22 mm.
namespace shape_mm {
inline constexpr double reach = 10, road_wide = 2.6, lane_wide = 1.4, way_wide = 1.3, bar_wide = 4;
}  // namespace shape_mm
/// Roads closer than this can't be told apart in a glance (ours).
inline constexpr double gap_deg = 24;

/// Pale roads, then the way, in tenths around the middle; put into the picture at the end.
struct Shape {
  struct Road {
    Line line;
    double width = shape_mm::road_wide;
  };
  std::vector<Road> roads;
  Picture under;  ///< between the roads and the way
  Line way;
};

/// The shape in the middle of a picture of that size. Roads are pale with a fine edge, which a bad
/// printer still shows.
Picture drawn(const Shape& shape, Size size);

/// How wide an arm is drawn: service and private roads are thin.
double width_of(const SceneArm& arm);

/// How far round from the bottom, clockwise or, where one drives on the right, the other way.
double round_deg(double place_deg, double sense);

/// A ring or a mini: its arms straight, where they lie round the middle, spread.
Shape ring_shape(const Scene& scene);

}  // namespace loopwright::draw
