// Crossing cyclists who go on while we turn: a cycle lane or track that runs on across the mouth of
// a side road.
//
// 1. At a T-junction whose minor arm is known: the side of the main road on which the side road
//    lies. When both halves of the main road have a cycle lane or track there, every turn into the
//    side road or out of it crosses it. One half alone: it may end or begin here, nothing is said.
//    cycleway:left, :right and :both, and cycleway for both sides (on a one-way road: the near side;
//    opposite_*: the far one). A track drawn as a way of its own (separate) is only inferred to run
//    on across the mouth.
// 2. Or a crossing for cyclists within 15 m (ours: a car's length or three) up the side road:
//    highway=crossing with bicycle=designated, or a toucan.
// Shared and bus lanes are no lane of the cyclists'. Sources: OSM wiki, pages Key:cycleway,
// Tag:highway=crossing; Highway Code rules H3 and 183.
#include <algorithm>
#include <array>

#include "approach.hpp"
#include "junction_kinds.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double up_the_mouth_m = 15;

enum class Flank : std::uint8_t { left, right };  ///< of the way, in its node order

/// What says that cyclists cross the mouth.
struct Crossed {
  std::string tag;
  OsmObject source;
  Confidence confidence = Confidence::certain;
};

/// The flank that a plain cycleway tag of a one-way road means.
bool plain_means(std::string_view value, Flank flank, const OneWay& one_way, Side side) {
  if (!one_way.one_way) return true;
  const bool near_is_left = (side == Side::left) == one_way.along;
  const bool near = (flank == Flank::left) == near_is_left;
  return value.starts_with("opposite") ? !near : near;
}

/// The tag that gives a road a cycle lane or track on one flank.
std::optional<Crossed> cycle_lane(const Draft& draft, PieceId piece, Flank flank) {
  constexpr std::array<std::string_view, 5> lanes = {"lane", "track", "opposite_lane",
                                                     "opposite_track", "separate"};
  const Tags& tags = draft.way_tags(piece);
  const road::Piece& row = draft.tables.pieces[piece.index()];
  const std::string_view own = flank == Flank::left ? "cycleway:left" : "cycleway:right";
  for (const std::string_view key :
       {own, std::string_view("cycleway:both"), std::string_view("cycleway")}) {
    if (!tags.has(key)) continue;
    const std::string_view value = tags.get(key);
    if (!one_of(value, lanes)) return std::nullopt;
    const OneWay one_way = one_way_of(tags, row.road_class);
    if (key == "cycleway" && !plain_means(value, flank, one_way, draft.side())) return std::nullopt;
    return Crossed{tag_text(tags, key), way_object(row.way),
                   value == "separate" ? Confidence::inferred : Confidence::certain};
  }
  return std::nullopt;
}

class MouthFinder {
 public:
  MouthFinder(const Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  [[nodiscard]] std::optional<Crossed> at(const PlainJunction& junction) const {
    if (auto lane = lane_past(junction)) return lane;
    for (const ArmPart& part : junction.arms[*junction.minor()].parts) {
      if (auto crossing = crossing_on(part.away)) return crossing;
    }
    return std::nullopt;
  }

 private:
  [[nodiscard]] std::optional<Crossed> lane_past(const PlainJunction& junction) const {
    const std::size_t minor = *junction.minor();
    const StretchId a = junction.arms[(minor + 1) % 3].parts.front().away;
    const StretchId b = junction.arms[(minor + 2) % 3].parts.front().away;
    const StretchId side_road = junction.arms[minor].parts.front().away;
    // Driving from a over the junction into b, the side road lies left or right of the way on.
    const double heading = draft_.bearing_out_deg(a) + 180;
    const bool on_left = heading_change_deg(heading, draft_.bearing_out_deg(side_road)) <
                         heading_change_deg(heading, draft_.bearing_out_deg(b));
    auto first = cycle_lane(draft_, a.piece(), flank_of(a.back(), on_left));
    const auto second = cycle_lane(draft_, b.piece(), flank_of(b, on_left));
    if (!first || !second) return std::nullopt;
    if (second->confidence != Confidence::certain) first->confidence = second->confidence;
    return first;
  }

  static Flank flank_of(StretchId driven, bool left) {
    return left != driven.against() ? Flank::left : Flank::right;
  }

  static bool is_for_cyclists(const Tags& tags) {
    return tags.is("highway", "crossing") &&
           (tags.is("bicycle", "designated") || tags.is("crossing_ref", "toucan") ||
            tags.is("crossing", "toucan"));
  }

  /// A cycle crossing on the first metres of the way that a stretch leads along.
  [[nodiscard]] std::optional<Crossed> crossing_on(StretchId away) const {
    const road::Piece& piece = roads_.piece(away);
    const RawWay& way = draft_.way(away.piece());
    const std::uint32_t from = away.against() ? piece.to_index : piece.from_index;
    const std::uint32_t to = away.against() ? piece.from_index : piece.to_index;
    const Point start = roads_.nodes[roads_.from_node(away).index()].at;
    for (std::uint32_t i = from; i != to;) {
      away.against() ? --i : ++i;
      const RawNode* node = draft_.raw.find_node(way.nodes[i]);
      if (node == nullptr || distance_m(start, node->at) > up_the_mouth_m) break;
      const Tags& tags = draft_.raw.tags_of_node(node->id);
      if (!is_for_cyclists(tags)) continue;
      const bool toucan = !tags.is("bicycle", "designated");
      const std::string_view key = tags.is("crossing", "toucan") ? "crossing" : "crossing_ref";
      return Crossed{toucan ? tag_text(tags, key) : "bicycle=designated",
                     OsmObject{node->id, ObjectType::node, {}}, Confidence::certain};
    }
    return std::nullopt;
  }

  const Draft& draft_;
  const road::Roads& roads_;
};

}  // namespace

void mark_cycle_lane_mouths(Draft& draft, const road::Roads& roads, Junctions junctions) {
  const MouthFinder finder(draft, roads);
  for (const PlainJunction& junction : junctions) {
    const auto crossed = junction.minor() ? finder.at(junction) : std::nullopt;
    if (!crossed) continue;
    std::vector<TeeTurn> turns = turns_out_of(roads, junction);
    for (TeeTurn& turn : turns_into(roads, junction)) turns.push_back(std::move(turn));
    if (turns.empty()) continue;
    const PlaceId place = add_junction_place(draft, roads, junction, Kind::cycle_lane_mouth);
    for (const TeeTurn& turn : turns) {
      add_passing(draft, place, turn.path,
                  {.movement = turn.movement,
                   .confidence = crossed->confidence,
                   .tag = crossed->tag,
                   .source = crossed->source});
    }
  }
}

}  // namespace loopwright::mark
