// Method: a flat map round the middle of the loop. Over the tens of kilometres of a lesson the
// differences to a true projection are below a thousandth (cosine of the latitude), less than a line's
// width on paper.
#include <algorithm>
#include <cassert>
#include <limits>
#include <optional>

#include "draw/drive_shape.hpp"
#include "draw/lines.hpp"
#include "loopwright/base/point_between.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {
namespace {

// Room beside the way for numbers and names, and below the map for its scale; ours.
constexpr double margin = 9, foot = 16;
// A loop round one block is not drawn larger than a street atlas would: 1:2500, ours.
constexpr double most_mm_per_m = 0.4;

/// Units of 1e-7 degree; east of 180 degrees where the way crosses that meridian.
struct Bounds {
  std::int64_t south = std::numeric_limits<std::int64_t>::max(), north = -south;
  std::int64_t west = south, east = -south;
};

Bounds bounds_of(const road::Roads& roads, const wish::Loop& loop) {
  Bounds bounds;
  std::optional<Point> first;
  for (const auto& shape : drive_shapes(roads, loop))
    for (const Point at : shape.points) {
      if (!first) first = at;
      const std::int64_t lat = at.lat_e7, lon = lon_beside_e7(at, *first);
      bounds.south = std::min(bounds.south, lat), bounds.north = std::max(bounds.north, lat);
      bounds.west = std::min(bounds.west, lon), bounds.east = std::max(bounds.east, lon);
    }
  return bounds;
}

/// A point so many degrees from another, or as many the other way where the earth's degrees end.
Point moved(Point from, double lat, double lon) {
  return point_from_degrees(from.lat() + (from.lat() + lat > 90 ? -lat : lat),
                            from.lon() + (from.lon() + lon > 180 ? -lon : lon));
}

}  // namespace

Spot MapFrame::spot_of(Point point) const {
  return {
      at.x + static_cast<double>(lon_difference_e7(middle, point)) * 1e-7 * m_per_lon * mm_per_m,
      at.y - (point.lat() - middle.lat()) * m_per_lat * mm_per_m};
}

MapFrame frame_of(const road::Roads& roads, const wish::Loop& loop, const OverviewAsked& asked) {
  assert(asked.width >= 60 && asked.height >= 60);
  constexpr double degrees = 0.01;
  const Bounds bounds = bounds_of(roads, loop);
  MapFrame frame;
  frame.middle = point_of_turn(bounds.south + (bounds.north - bounds.south) / 2,
                               bounds.west + (bounds.east - bounds.west) / 2);
  frame.m_per_lat = distance_m(frame.middle, moved(frame.middle, degrees, 0)) / degrees;
  frame.m_per_lon = distance_m(frame.middle, moved(frame.middle, 0, degrees)) / degrees;
  frame.map = {0, 0, asked.width, asked.height - foot};
  frame.at = {frame.map.width / 2, frame.map.height / 2};
  const double wide = static_cast<double>(bounds.east - bounds.west) * 1e-7 * frame.m_per_lon;
  const double high = static_cast<double>(bounds.north - bounds.south) * 1e-7 * frame.m_per_lat;
  frame.mm_per_m = std::min({most_mm_per_m, (frame.map.width - 2 * margin) / std::max(wide, 1.0),
                             (frame.map.height - 2 * margin) / std::max(high, 1.0)});
  return frame;
}

}  // namespace loopwright::draw
