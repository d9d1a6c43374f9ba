// Widths that aren't mapped: lanes of 3.65 m on bigger roads and 3 m on streets (3.65 m is the lane of
// the Design Manual for Roads and Bridges, CD 127; Manual for Streets draws 5.5 m for two lanes);
// without lanes as is usual for the class. Ours where neither says a number; the picture says so.
#include "draw/carriageway.hpp"

#include <algorithm>

namespace loopwright::draw {
namespace {

namespace flag = road::piece_flag;
using road::RoadClass;

double lane_m(const road::Piece& piece) {
  return road::rank(piece.road_class) <= 3 ? 3.65 : 3.0;
}

double usual_m(const road::Piece& piece, bool one_way) {
  if ((piece.flags & flag::ring) != 0) return 6;
  if (one_way) return (piece.flags & (flag::dual | flag::dual_inferred)) != 0 ? 7.3 : 4;
  if (piece.road_class == RoadClass::service) return 4;
  if (road::rank(piece.road_class) <= 2) return 7.3;
  return road::rank(piece.road_class) <= 4 ? 6.7 : 5.5;
}

/// Lanes in the direction of a stretch by what is mapped of it alone, bus lanes among them; 0: nothing.
int lanes_told(const road::Roads& roads, StretchId stretch) {
  const auto marks = roads.lane_marks_of(stretch);
  if (marks.empty()) return 0;
  const std::string_view arrows = roads.text(marks.front().arrows);
  if (!arrows.empty()) return static_cast<int>(std::count(arrows.begin(), arrows.end(), '|')) + 1;
  if (marks.front().count == 0) return 0;
  const auto ours = stretch.against() ? road::LaneDirection::against : road::LaneDirection::along;
  const auto buses = roads.bus_lanes_of(stretch.piece());
  return marks.front().count +
         static_cast<int>(std::count_if(buses.begin(), buses.end(), [&](const road::BusLane& bus) {
           return bus.direction == ours;
         }));
}

/// Parts the lanes of a road in both directions, a total among them.
void part_lanes(const road::Roads& roads, StretchId stretch, int total, Carriageway& road) {
  const int ahead = lanes_told(roads, stretch), back = lanes_told(roads, stretch.back());
  road.lanes = ahead > 0 ? ahead : std::max(1, back > 0 ? total - back : total / 2);
  road.back = back > 0 ? back : std::max(1, total - road.lanes);
}

}  // namespace

Carriageway carriageway_of(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  Carriageway road;
  road.one_way = (piece.flags & (flag::one_way | flag::ring)) != 0;
  road.shares = !road.one_way && piece.lanes == 1;
  if (road.one_way) {
    road.lanes = std::max({1, static_cast<int>(piece.lanes), lanes_told(roads, stretch)});
    road.back = 0;
  } else {
    part_lanes(roads, stretch, piece.lanes, road);
  }
  road.width_m = usual_m(piece, road.one_way);
  if (piece.lanes > 0) road.width_m = road.across() * lane_m(piece), road.from = WidthFrom::lanes;
  if (piece.width_m > 0) road.width_m = piece.width_m, road.from = WidthFrom::mapped;
  // A slip of the pen would fill the sheet, or be no road at all.
  road.width_m = std::clamp(road.width_m, 2.5, 30.0);
  return road;
}

double lane_off_m(const Carriageway& road, int lane) {
  if (road.shares) return 0;
  return road.width_m / 2 - road.width_m / road.across() * (lane + 0.5);
}

}  // namespace loopwright::draw
