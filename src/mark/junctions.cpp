// 1. Three arms, one of which gives way (plain_junctions.cpp, priority.cpp): coming out of it is
//    emerging, going into it from the others is turning off, left or right.
// 2. Turning off into a road where two cars don't fit, at its mouth or within 30 m of it (ours), is
//    turning into a narrow mouth: the same place, its chance of the special kind. As sure as both
//    who gives way and the width are.
// 3. Four arms: a crossroads, in every legal movement. Certain when its signs are mapped.
// 4. Emerging and turning off are two places at one node, so that each is counted by itself. So are
//    the acute and staggered forms and the cycle lanes across a mouth.
#include <algorithm>
#include <string>

#include "approach.hpp"
#include "junction_kinds.hpp"
#include "loopwright/mark/rules.hpp"
#include "piece_widths.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr double mouth_m = 30;

class JunctionMarker {
 public:
  JunctionMarker(Draft& draft, const road::Roads& roads)
      : draft_(draft), roads_(roads), widths_(draft) {}

  void mark_tee(const PlainJunction& junction, Kind kind);
  void mark_crossroads(const PlainJunction& junction);

 private:
  /// What says that the mouth of a road is narrow; nothing when it isn't.
  struct NarrowMouth {
    Widths widths;
    OsmObject source;
  };
  [[nodiscard]] std::optional<NarrowMouth> narrow_mouth(StretchId exit);

  Draft& draft_;
  const road::Roads& roads_;
  PieceWidths widths_;
};

std::optional<JunctionMarker::NarrowMouth> JunctionMarker::narrow_mouth(StretchId exit) {
  double metres = 0;
  for (StretchId s = exit; s.known() && metres < mouth_m;) {
    const Widths& widths = widths_.of(s.piece());
    if (widths.narrow) return NarrowMouth{widths, way_object(roads_.piece(s).way)};
    metres += roads_.piece(s).length_m;
    if (road_ends(roads_, roads_.to_node(s)) != 2) break;
    s = straight_on(roads_, s);
  }
  return std::nullopt;
}

void JunctionMarker::mark_tee(const PlainJunction& junction, Kind kind) {
  const auto turns =
      kind == Kind::emerge ? turns_out_of(roads_, junction) : turns_into(roads_, junction);
  if (turns.empty()) return;
  const ArmRule& rule = junction.rules[*junction.minor()];
  const std::string tag = rule.tag();
  const PlaceId place = add_junction_place(draft_, roads_, junction, kind);
  for (const TeeTurn& turn : turns) {
    const auto narrow = kind == Kind::turn_off ? narrow_mouth(turn.path.back()) : std::nullopt;
    Claim claim{.movement = turn.movement,
                .confidence = rule.confidence,
                .tag = tag,
                .source = rule.source};
    if (narrow) {
      claim.kind = Kind::narrow_mouth;
      if (!narrow->widths.certain) claim.confidence = road::Confidence::inferred;
      claim.tag = narrow->widths.tag;
      claim.source = narrow->source;
    }
    add_passing(draft_, place, turn.path, claim);
  }
}

/// A sign that settles the priorities, else that four roads meet.
ArmRule reason_for_crossroads(const road::Roads& roads, const PlainJunction& junction) {
  for (const ArmRule& rule : junction.rules) {
    if (rule.yields() && rule.confidence == road::Confidence::certain) return rule;
  }
  return {Yield::unknown,
          road::Confidence::inferred,
          Telling::four_roads_meet,
          {},
          {},
          node_object(roads, junction.node)};
}

void JunctionMarker::mark_crossroads(const PlainJunction& junction) {
  const ArmRule reason = reason_for_crossroads(roads_, junction);
  const std::string tag = reason.tag();
  const PlaceId place = add_junction_place(draft_, roads_, junction, Kind::crossroads);
  for (const JunctionArm& from : junction.arms) {
    for (const JunctionArm& to : junction.arms) {
      if (&from == &to) continue;
      for (const Path& path : turns_between(roads_, from, to)) {
        add_passing(draft_, place, path,
                    {.movement = turn_movement(turn_deg(roads_, path)),
                     .confidence = reason.confidence,
                     .tag = tag,
                     .source = reason.source});
      }
    }
  }
}

}  // namespace

void mark_junctions(Draft& draft) {
  const road::Roads graph = draft.roads();
  const std::vector<PlainJunction> junctions = plain_junctions(draft, graph);
  JunctionMarker marker(draft, graph);
  for (const PlainJunction& junction : junctions) {
    if (junction.minor()) {
      marker.mark_tee(junction, Kind::emerge);
      marker.mark_tee(junction, Kind::turn_off);
    } else if (junction.arms.size() == 4) {
      marker.mark_crossroads(junction);
    }
  }
  mark_acute_junctions(draft, graph, junctions);
  mark_staggered_junctions(draft, graph, junctions);
  mark_cycle_lane_mouths(draft, graph, junctions);
  mark_stop_lines(draft);
  mark_advanced_stop_lines(draft);
  mark_box_junctions(draft);
  mark_lane_merges(draft);
}

}  // namespace loopwright::mark
