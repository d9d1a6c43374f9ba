// 1. A way through lights that turns left or right, where turn:lanes before the junction gives that
//    turn a lane of its own (its only arrows point there) while another lane goes elsewhere: the
//    driver must be in the right lane early.
// 2. The arrows are those met last before the first junction of the cluster.
// Where all lanes turn the same way there is nothing to choose, and where lanes share arrows there
// is no filter. Whether the lane has a green arrow of its own isn't mapped.
// Source: OSM wiki, page Key:turn; Highway Code rule 177 (green filter arrow).
#include <algorithm>
#include <array>

#include "lane_counts.hpp"
#include "lit_ways.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;
using Arrows = std::vector<std::string_view>;

bool points(std::string_view arrow, Movement movement) {
  constexpr std::array<std::string_view, 3> left = {"left", "slight_left", "sharp_left"};
  constexpr std::array<std::string_view, 3> right = {"right", "slight_right", "sharp_right"};
  return one_of(arrow, movement == Movement::left ? left : right);
}

bool only_points(const Arrows& arrows, Movement movement) {
  return std::ranges::all_of(arrows, [&](std::string_view a) { return points(a, movement); });
}

bool has_own_lane(const LaneArrows& arrows, Movement movement) {
  const auto own = std::ranges::count_if(
      arrows.lanes, [&](const Arrows& lane) { return only_points(lane, movement); });
  return own > 0 && own < static_cast<std::ptrdiff_t>(arrows.lanes.size());
}

PlaceId add_lane_place(Draft& draft, const road::Roads& roads, const Spot& spot, OsmObject way) {
  road::Place place;
  place.kind = road::Kind::filter_lane;
  place.source = way;
  place.at = middle_of(roads, spot.nodes);
  place.name = draft.text({});
  return draft.add_place(place, spot.nodes, spot.inside);
}

}  // namespace

void mark_filter_lanes(Draft& draft, const road::Roads& roads, const Spot& spot,
                       std::span<const LitWay> ways) {
  PlaceId place;
  for (const LitWay& way : ways) {
    if (way.movement != Movement::left && way.movement != Movement::right) continue;
    const auto arrows = arrows_before_junction(draft, roads, way.path);
    if (!arrows || !has_own_lane(*arrows, way.movement)) continue;
    if (!place.known()) place = add_lane_place(draft, roads, spot, arrows->source);
    add_passing(draft, place, way.path,
                {.movement = way.movement, .tag = arrows->tag, .source = arrows->source});
  }
}

}  // namespace loopwright::mark
