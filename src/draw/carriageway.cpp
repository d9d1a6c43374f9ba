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
  return road::rank(piece.road_class) <= 2 ? 7.3 : road::rank(piece.road_class) <= 4 ? 6.7 : 5.5;
}

}  // namespace

Carriageway carriageway_of(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  Carriageway road;
  road.one_way = (piece.flags & (flag::one_way | flag::ring)) != 0;
  road.width_m = usual_m(piece, road.one_way);
  if (piece.lanes > 0) road.width_m = piece.lanes * lane_m(piece), road.from = WidthFrom::lanes;
  if (piece.width_m > 0) road.width_m = piece.width_m, road.from = WidthFrom::mapped;
  // A slip of the pen would fill the sheet, or be no road at all.
  road.width_m = std::clamp(road.width_m, 2.5, 30.0);
  const int lanes = piece.lanes;
  road.lanes = std::max(1, road.one_way ? lanes : lanes / 2);
  road.shares = !road.one_way && lanes == 1;
  road.odd = !road.one_way && lanes > 2 && lanes % 2 == 1;
  return road;
}

double lane_off_m(const Carriageway& road, int lane) {
  if (road.shares) return 0;
  const int across = road.one_way ? road.lanes : 2 * road.lanes + (road.odd ? 1 : 0);
  return road.width_m / 2 - road.width_m / across * (lane + 0.5);
}

}  // namespace loopwright::draw
