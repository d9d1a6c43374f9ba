// What a learner may drive is taken by traffic. Else the tags are read again: one-way first, then
// whether cars are kept out of this direction only (a road closed in both is someone's own road,
// and its own traffic uses it).
#include "public_road.hpp"

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

bool is_public(const road::Piece& piece) {
  constexpr std::uint32_t closed = road::piece_flag::no_access | road::piece_flag::minor_service;
  return piece.road_class != road::RoadClass::service && (piece.flags & closed) == 0;
}

bool traffic_takes(const Draft& draft, StretchId stretch) {
  constexpr std::uint32_t driven = road::stretch_flag::drivable | road::stretch_flag::cut_off;
  if ((draft.tables.stretches[stretch.index()].flags & driven) != 0) return true;
  const Tags& tags = draft.way_tags(stretch.piece());
  const road::RoadClass road_class = draft.tables.pieces[stretch.piece().index()].road_class;
  const OneWay one_way = one_way_of(tags, road_class);
  if (stretch.against() ? !one_way.against : !one_way.along) return false;
  const CarAccess cars = car_access(tags, road_class, {.motorways = true, .fords = true});
  const Access here = stretch.against() ? cars.against : cars.along;
  const Access back = stretch.against() ? cars.along : cars.against;
  return here != Access::no || back == Access::no;
}

}  // namespace loopwright::mark
