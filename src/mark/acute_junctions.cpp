// Turning by 120 degrees or more at a T- or Y-junction, out of the minor arm or into it.
//
// 1. Each turn of a junction with a minor arm (plain_junctions.cpp) is measured twice: at the node,
//    and between the roads 30 to 60 m out. Both must be sharp: a road that swings round before it
//    meets the other is plain there, and the legs round a traffic island are sharp only there.
// 2. Slip roads are left out: nobody turns back out of one.
// Inferred, since only the lines say so. Source of the angle: the trade's own use of "acute" (a
// turn beyond 120 degrees); no law or guidance draws the line.
#include <cmath>

#include "junction_kinds.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

constexpr double sharp_from_deg = 120;

bool is_sharp(const road::Roads& roads, const Path& path) {
  if (std::abs(turn_deg(roads, path)) < sharp_from_deg) return false;
  const double wide = heading_change_deg(bearing_of_arm(roads, path.front().back()) + 180,
                                         bearing_of_arm(roads, path.back()));
  return std::abs(wide) >= sharp_from_deg;
}

bool is_slip(const road::Roads& roads, StretchId stretch) {
  return road::name(roads.piece(stretch).road_class).ends_with("_link");
}

std::vector<TeeTurn> sharp_turns(const road::Roads& roads, const PlainJunction& junction) {
  std::vector<TeeTurn> turns = turns_out_of(roads, junction);
  for (TeeTurn& turn : turns_into(roads, junction)) turns.push_back(std::move(turn));
  std::erase_if(turns, [&](const TeeTurn& turn) {
    return is_slip(roads, turn.path.front()) || is_slip(roads, turn.path.back()) ||
           !is_sharp(roads, turn.path);
  });
  return turns;
}

}  // namespace

void mark_acute_junctions(Draft& draft, const road::Roads& roads, Junctions junctions) {
  for (const PlainJunction& junction : junctions) {
    if (!junction.minor()) continue;
    const auto turns = sharp_turns(roads, junction);
    if (turns.empty()) continue;
    const PlaceId place = add_junction_place(draft, roads, junction, Kind::acute_junction);
    for (const TeeTurn& turn : turns) {
      add_passing(draft, place, turn.path,
                  {.movement = turn.movement,
                   .confidence = road::Confidence::inferred,
                   .tag = "roads meet at 60 degrees or less",
                   .source = node_object(roads, junction.node)});
    }
  }
}

}  // namespace loopwright::mark
