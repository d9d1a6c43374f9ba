// 1. amenity=parking with parking=layby, street_side or lane, open to all, on a line or area of its
//    own.
// 2. The nearest road within the table's metres of its middle; the lay-by's points are dropped on
//    that road, and the part between the first and the last is the place.
// 3. It serves whoever has it on the near side: the side of the line it lies on says which stretch.
//    Motorways, rings, bridges and tunnels have none.
// Source: OSM wiki, page Tag:amenity=parking; Highway Code rule 243 (a parking place excepts).
#include "lay_bys.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "pull_up_rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace piece_flag = road::piece_flag;

bool is_lay_by(const Tags& tags) {
  constexpr std::array<std::string_view, 3> beside{"layby", "street_side", "lane"};
  constexpr std::array<std::string_view, 4> open{"", "yes", "permissive", "public"};
  return tags.is("amenity", "parking") && one_of(tags.get("parking"), beside) &&
         one_of(tags.get("access"), open);
}

bool can_have_one(const road::Roads& roads, PieceId piece) {
  constexpr std::uint32_t no_place = piece_flag::ring | piece_flag::bridge | piece_flag::tunnel;
  const road::Piece& row = roads.pieces[piece.index()];
  return row.road_class > road::RoadClass::motorway && row.road_class < road::RoadClass::service &&
         (row.flags & no_place) == 0;  // and no link
}

struct Beside {
  PieceId piece;
  Foot foot;
};

Beside nearest_road(const road::Roads& roads, Point at, double within_m) {
  Beside best;
  best.foot.off_m = within_m;
  for (const PieceId piece : road::pieces_near(roads, at, within_m)) {
    if (!can_have_one(roads, piece)) continue;
    const Foot foot = nearest_on_line(roads.shape_of(piece), at);
    if (foot.off_m < best.foot.off_m) best = {piece, foot};
  }
  return best;
}

/// True when the point lies to the left of the line, as its points run.
bool is_left_of(std::span<const Point> line, const Foot& foot, Point at) {
  constexpr double ahead_m = 3;
  const double heading = bearing_deg(point_along(line, foot.along_m - ahead_m),
                                     point_along(line, foot.along_m + ahead_m));
  return heading_change_deg(heading, bearing_deg(foot.at, at)) < 0;
}

}  // namespace

void add_lay_bys(Draft& draft, const road::Roads& roads, std::vector<road::PullUp>& found) {
  const PullUpRules rules;
  for (const RawFeature& feature : draft.raw.features) {
    if (!is_lay_by(feature.tags) || feature.lines.empty()) continue;
    const Beside beside = nearest_road(roads, feature.at, rules.at("lay-by beside"));
    if (!beside.piece.known()) continue;
    const auto shape = roads.shape_of(beside.piece);
    double from_m = beside.foot.along_m, to_m = from_m;
    for (const std::vector<Point>& line : feature.lines)
      for (const Point at : line) {
        const double along_m = nearest_on_line(shape, at).along_m;
        from_m = std::min(from_m, along_m), to_m = std::max(to_m, along_m);
      }
    const bool left = is_left_of(shape, beside.foot, feature.at);
    const StretchId stretch{beside.piece, left != (draft.side() == Side::left)};
    if (!roads.drivable(stretch) || to_m - from_m < rules.at("least length")) continue;
    const double length_m = roads.pieces[beside.piece.index()].length_m;
    road::PullUp place;
    place.stretch = stretch;
    place.from_m = static_cast<float>(stretch.against() ? length_m - to_m : from_m);
    place.to_m = static_cast<float>(stretch.against() ? length_m - from_m : to_m);
    place.why = draft.text("a place to park is mapped here: " + tag_text(feature.tags, "parking"));
    place.hours = draft.text("");
    place.flags = road::pull_up_flag::lay_by;
    const std::string_view fee = feature.tags.get("fee");
    if (!fee.empty() && fee != "no") place.flags |= road::pull_up_flag::fee;
    found.push_back(place);
  }
}

}  // namespace loopwright::mark
