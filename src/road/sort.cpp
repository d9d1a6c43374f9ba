#include "loopwright/road/sort.hpp"

namespace loopwright::road {

std::string_view sort_of(const Roads& roads, StretchId stretch) {
  const Piece& piece = roads.piece(stretch);
  if (piece.road_class == RoadClass::motorway) return "motorway";
  if ((piece.flags & (piece_flag::dual | piece_flag::dual_inferred)) != 0)
    return "dual carriageway";
  if ((roads.stretch(stretch).runs & bit(Kind::country_road)) != 0) return "country";
  return (piece.flags & piece_flag::quiet) != 0 ? "quiet" : "town";
}

}  // namespace loopwright::road
