// Where the road has room for one, and one has to wait for the other.
//
// 1. traffic_calming=choker or chicane on a node or a way; priority=forward or backward on either;
//    and a bridge of one lane (lanes=1) or under 4 m between wider roads. On a lane that is as
//    narrow before and behind, the bridge is nothing new: that is single-track road.
// 2. Only on two-way road: on a one-way street nobody comes the other way. Not where lights or
//    oneway=alternating let the two sides through in turn; lights within 60 m on the same road
//    (ours) that face whoever comes to it are taken for that, counted in the report.
// 3. A chance for each way through that meets one, with who goes first: by priority, seen from
//    whoever drives it. Without the tag nobody has priority, or nobody mapped it.
// Sources: OSM wiki, pages Tag:traffic_calming=choker and Key:priority; 4 m is a car and a lorry's
// least (MAP-TAGS, narrow roads).
#include <algorithm>
#include <optional>
#include <string>

#include "approach.hpp"
#include "facing.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/by_id.hpp"
#include "series.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double lights_within_m = 60, one_lane_under_m = 4;

/// "traffic_calming=choker", "priority=forward"; empty when the tags say neither.
std::string pinch_tag(const Tags& tags) {
  for (const std::string_view calming : split(tags.get("traffic_calming"), ';')) {
    if (calming == "choker" || calming == "chicane") return tag_text("traffic_calming", calming);
  }
  return tags.is("priority", "forward") || tags.is("priority", "backward")
             ? tag_text(tags, "priority")
             : std::string();
}

/// "lanes=1" or "width=3.5" of a road for one; empty when it is wider or not mapped.
std::string one_lane_tag(const Tags& tags) {
  if (tags.is("lanes", "1")) return "lanes=1";
  const std::optional<double> width = read_width(tags.get("width"));
  return width && *width < one_lane_under_m ? tag_text(tags, "width") : std::string();
}

bool is_two_way(const road::Roads& roads, PieceId piece) {
  return (roads.pieces[piece.index()].flags & road::piece_flag::one_way) == 0;
}

class PinchPoints {
 public:
  explicit PinchPoints(Draft& draft)
      : draft_(draft),
        roads_(draft.roads()),
        rule_{road::node_flag::pinch_point,
              [this](PieceId piece) { return !tag_of(piece).empty(); }} {}
  void mark() {
    for (const Spot& spot : series_of(roads_, things_on_road(roads_, rule_), {})) add(spot);
  }

 private:
  [[nodiscard]] std::string tag_of(PieceId piece) const;
  [[nodiscard]] bool is_narrow_bridge(PieceId piece) const;
  [[nodiscard]] bool goes_on_wider(StretchId stretch) const;
  [[nodiscard]] bool is_controlled(const Spot& spot) const;
  [[nodiscard]] std::string told_by(const MetThing& met) const;
  void add(const Spot& spot);

  Draft& draft_;
  road::Roads roads_;
  ThingRule rule_;
};

/// True when the road that goes on isn't known to be for one.
bool PinchPoints::goes_on_wider(StretchId stretch) const {
  const StretchId next = straight_on(roads_, stretch);
  return !next.known() || one_lane_tag(draft_.way_tags(next.piece())).empty();
}

bool PinchPoints::is_narrow_bridge(PieceId piece) const {
  const bool bridge = (roads_.pieces[piece.index()].flags & road::piece_flag::bridge) != 0;
  if (!bridge || one_lane_tag(draft_.way_tags(piece)).empty()) return false;
  const auto parts = road::whole_way(roads_.pieces, piece);
  return goes_on_wider({roads_.id_of(parts.back()), false}) ||
         goes_on_wider({roads_.id_of(parts.front()), true});
}

std::string PinchPoints::tag_of(PieceId piece) const {
  if (!is_two_way(roads_, piece)) return {};
  const Tags& tags = draft_.way_tags(piece);
  if (std::string tag = pinch_tag(tags); !tag.empty()) return tag;
  return is_narrow_bridge(piece) ? tag_text(tags, "bridge") + " " + one_lane_tag(tags)
                                 : std::string();
}

/// Step 2: taken in turn, by lights.
bool PinchPoints::is_controlled(const Spot& spot) const {
  const auto alternating = [&](PieceId piece) {
    return draft_.way_tags(piece).is("oneway", "alternating");
  };
  if (std::ranges::any_of(spot.inside, alternating)) return true;
  for (const NodeId node : spot.nodes) {
    if ((roads_.nodes[node.index()].flags & road::node_flag::signals) != 0) return true;
    for (const StretchId away : roads_.leaving(node)) {
      if (spot.holds(away.piece())) continue;
      const auto lights = met_before(roads_, away, lights_within_m, road::node_flag::signals);
      const auto holds_us = [&](const Met& light) {
        return faces(draft_, roads_, light.arriving, Sign::light);
      };
      if (std::ranges::any_of(lights, holds_us)) return true;
    }
  }
  return false;
}

/// What says so and who goes first; empty on a one-way street.
std::string PinchPoints::told_by(const MetThing& met) const {
  if (!is_two_way(roads_, met.on.piece())) return {};
  const Tags& tags =
      met.node.known() ? draft_.node_tags(met.node) : draft_.way_tags(met.on.piece());
  std::string text = met.node.known() ? pinch_tag(tags) : tag_of(met.on.piece());
  const std::string priority = tag_text(tags, "priority");
  const std::optional<bool> along = along_the_way(met);
  const bool forward = tags.is("priority", "forward");
  if (!along || !(forward || tags.is("priority", "backward"))) {
    return text + " (priority not mapped)";
  }
  if (text != priority) text += " " + priority;
  return text + (forward == *along ? " (ours)" : " (oncoming traffic's)");
}

void PinchPoints::add(const Spot& spot) {
  if (is_controlled(spot)) {
    draft_.report.count("pinch points taken in turn by lights");
    return;
  }
  road::Place place;
  place.kind = road::Kind::pinch_point;
  place.source = spot.inside.empty() ? node_object(roads_, spot.nodes.front())
                                     : way_object(roads_.pieces[spot.inside.front().index()].way);
  place.at = middle_of(roads_, spot.nodes);
  const PlaceId id = draft_.add_place(place, spot.nodes, spot.inside);
  for (const Path& path : ways_through(roads_, spot)) {
    for (const MetThing& met : things_met(roads_, rule_, path)) {
      const std::string tag = told_by(met);
      if (tag.empty()) continue;
      const OsmObject source =
          met.node.known() ? node_object(roads_, met.node) : way_object(roads_.piece(met.on).way);
      add_passing(draft_, id, path, {.tag = tag, .source = source});
      break;
    }
  }
}

}  // namespace

void mark_pinch_points(Draft& draft) {
  PinchPoints(draft).mark();
}

}  // namespace loopwright::mark
