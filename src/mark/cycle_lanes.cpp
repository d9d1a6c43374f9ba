// A cycle lane on our side, beside which one drives and across which one turns.
//
// 1. The near side of whoever drives along the way is its left where one drives on the left; who
//    drives against it has the other one. cycleway:left (or right), else cycleway:both, else
//    cycleway for both sides must say lane (or buffered_lane, an old word). cycleway:lane or
//    cycleway:left:lane = exclusive or advisory says it too, and tells the line: solid or broken.
// 2. Not ours: opposite_lane (they come towards us), a lane whose cycleway:left:oneway=-1 says the
//    same, shared_lane and pictograms (no lane), share_busway (a bus lane), a lane on the far side
//    of a one-way street.
// 3. A track is no lane: it has its own kerb, and whoever drives past has nothing to do with it but
//    at a side road's mouth, which is a kind of its own (cycle_lane_mouths.cpp).
// Sources: OSM wiki, pages Key:cycleway and Key:cycleway:lane; Highway Code rule 140.
#include <array>
#include <string>

#include "run_rules.hpp"
#include "side_value.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

/// "cycleway:left:lane=advisory" when the tags tell a line; else empty.
std::string line_tag(const Tags& tags, std::string_view near) {
  constexpr std::array<std::string_view, 2> lines{"exclusive", "advisory"};
  const SideValue own = value_of_side(tags, {"cycleway:", ":lane"}, near);
  if (one_of(own.value, lines)) return tag_text(own.key, own.value);
  return one_of(tags.get("cycleway:lane"), lines) ? tag_text(tags, "cycleway:lane") : std::string();
}

std::string lane_tag(const Tags& tags, std::string_view near) {
  constexpr std::array<std::string_view, 2> lanes{"lane", "buffered_lane"};
  SideValue own = value_of_side(tags, {"cycleway:", ""}, near);
  if (own.value.empty()) own = {"cycleway", tags.get("cycleway")};
  const std::string line = line_tag(tags, near);
  if (one_of(own.value, lanes)) {
    const std::string tag = tag_text(own.key, own.value);
    return line.empty() ? tag : tag + " " + line;
  }
  return own.value.empty() || own.value == "yes" ? line : std::string();
}

/// What puts a lane on the near side of who drives this way; empty when nothing does.
std::string near_lane_tag(const Tags& tags, bool against, Side side) {
  const std::string_view near = (side == Side::left) != against ? "left" : "right";
  const SideValue direction = value_of_side(tags, {"cycleway:", ":oneway"}, near);
  if (direction.value == "-1" && !against) return {};
  return lane_tag(tags, near);
}

}  // namespace

RunFamily cycle_lane_runs(Draft& draft) {
  RunFamily family{Kind::cycle_lane, {}};
  const road::Roads roads = draft.roads();
  for (std::size_t row = 0; row < roads.stretch_count(); ++row) {
    const StretchId stretch{row};
    if (!roads.drivable(stretch)) continue;
    if (roads.piece(stretch).road_class == road::RoadClass::service) continue;
    const Tags& tags = draft.way_tags(stretch.piece());
    if (!has_key_with(tags, "cycleway")) continue;
    const std::string tag = near_lane_tag(tags, stretch.against(), draft.side());
    if (tag.empty()) continue;
    family.members.push_back(
        {stretch, Kind::cycle_lane, road::Confidence::certain, draft.text(tag)});
  }
  return family;
}

}  // namespace loopwright::mark
