// The annotated road graph of an area: plain columns, const after loading, shared by threads.
//
//   for (const Turn& t : roads.turns_from(state)) go(t.to);
//
// The graph is: nodes (junctions and points that matter), pieces (parts of one OSM way between two
// nodes), stretches (a piece driven one way; StretchId), states (a stretch plus what turn bans
// over several ways must remember) and turns (legal moves from the end of one state into the next).
// The first 2 × pieces states are the stretches themselves, same numbers; copies follow.
// Rules: `Tables` owns vectors (while building, and in tests), `Roads` views the same columns in a
// mapped file. Nodes and ways lie along a curve through the map (by_id.hpp), a way's pieces in its order; chances by entry.
// Why: one definition of the columns (Columns) keeps the writer, the reader and the tests in step.
// No third-party header may be included here.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/base/region.hpp"
#include "loopwright/road/kerb.hpp"
#include "loopwright/road/kind.hpp"
#include "loopwright/road/limit.hpp"

namespace loopwright::road {

enum class RoadClass : std::uint8_t {
  motorway, trunk, primary, secondary, tertiary, unclassified, residential, living_street, service,
  motorway_link, trunk_link, primary_link, secondary_link, tertiary_link, road
};
std::string_view name(RoadClass road_class);
/// Importance: 0 motorway … 5 unclassified and residential … 7 service; a link counts as its road.
int rank(RoadClass road_class);

namespace node_flag {
inline constexpr std::uint32_t wall = 1U << 0;           ///< a barrier no car passes
inline constexpr std::uint32_t signals = 1U << 1;        ///< highway=traffic_signals
inline constexpr std::uint32_t signal_crossing = 1U << 2;
inline constexpr std::uint32_t zebra = 1U << 3;
inline constexpr std::uint32_t level_crossing = 1U << 4;
inline constexpr std::uint32_t mini_roundabout = 1U << 5;
inline constexpr std::uint32_t give_way = 1U << 6;
inline constexpr std::uint32_t stop = 1U << 7;
inline constexpr std::uint32_t dead_end = 1U << 8;       ///< one piece only ends here, or a wall
inline constexpr std::uint32_t calming = 1U << 9;        ///< a hump, cushion, table …
inline constexpr std::uint32_t pinch_point = 1U << 10;   ///< a choker or chicane: room for one
inline constexpr std::uint32_t ford = 1U << 11;
inline constexpr std::uint32_t tram_crossing = 1U << 12; ///< rails of a tram cross the road
inline constexpr std::uint32_t advanced_stop = 1U << 13; ///< an advanced stop line for cyclists
inline constexpr std::uint32_t box_junction = 1U << 14;
inline constexpr std::uint32_t passing_place = 1U << 15;
}  // namespace node_flag

struct Node {
  std::int64_t osm_id = 0;
  Point at;
  std::uint32_t flags = 0;
  std::uint32_t row_by_id = 0;  ///< of row i the row of the i-th node by id; kept and asked by by_id.hpp alone
};

namespace piece_flag {
inline constexpr std::uint32_t ring = 1U << 0;          ///< part of a roundabout
inline constexpr std::uint32_t dual = 1U << 1;          ///< one side of a dual carriageway
inline constexpr std::uint32_t dual_inferred = 1U << 2;
inline constexpr std::uint32_t one_way = 1U << 3;
inline constexpr std::uint32_t bridge = 1U << 4;
inline constexpr std::uint32_t tunnel = 1U << 5;
inline constexpr std::uint32_t lit = 1U << 6;
inline constexpr std::uint32_t bus_route = 1U << 7;     ///< a bus route relation runs here
inline constexpr std::uint32_t destination_only = 1U << 8;  ///< not for driving through
inline constexpr std::uint32_t no_access = 1U << 9;     ///< private or shut to cars, at all hours
inline constexpr std::uint32_t winding = 1U << 10;      ///< bends make the limit unreachable
inline constexpr std::uint32_t humps = 1U << 11;        ///< traffic calming that slows
inline constexpr std::uint32_t parked_both = 1U << 12;  ///< cars parked on both sides
inline constexpr std::uint32_t quiet = 1U << 13;        ///< quiet residential street (DEVELOPERS.md)
inline constexpr std::uint32_t minor_service = 1U << 14;  ///< driveway, parking aisle …: seen, never driven
inline constexpr std::uint32_t gradient_certain = 1U << 15;  ///< the gradient is the tag's number
}  // namespace piece_flag

struct Piece {
  std::int64_t way = 0;          ///< OSM way id
  NodeId a, b;                   ///< first and last node, in the way's node order
  std::uint32_t from_index = 0;  ///< positions of a and b in the way's node list
  std::uint32_t to_index = 0;
  std::uint32_t shape_first = 0;  ///< points from a to b, both included
  std::uint32_t shape_count = 0;
  TextId name, ref;
  double length_m = 0;
  float width_m = 0;          ///< carriageway kerb to kerb; 0: not mapped
  float usable_width_m = 0;   ///< what parked cars leave; 0: not known
  TextId width_source;        ///< "width=4.5", "parking:both=lane" …; empty when not known
  TextId access_source;       ///< the tag that closes or limits it, when one does
  std::uint32_t flags = 0;
  RoadClass road_class = RoadClass::road;
  std::uint8_t lanes = 0;     ///< total, 0: not mapped
  std::int16_t gradient_tenths = 0;  ///< tenths of a per cent, up along the way positive; 0: level or not known
  TextId gradient_source;     ///< "incline=8%", "elevation grid"; empty when not known
  std::uint32_t row_by_id = 0;  ///< of row i the first piece of the i-th way by id, none beyond the last; by_id.hpp alone
};

namespace stretch_flag {
inline constexpr std::uint32_t drivable = 1U << 0;  ///< a learner may drive it, through, this way
inline constexpr std::uint32_t cut_off = 1U << 1;   ///< legal, but can't be driven into and out of
inline constexpr std::uint32_t timed = 1U << 2;     ///< has rows in timed_rules; drivable at some hours
}  // namespace stretch_flag

struct Stretch {
  LimitFact limit;
  std::uint32_t flags = 0;
  std::uint64_t runs = 0;  ///< bits of the stretch-like kinds it belongs to
};

/// What a driver must deal with when moving from one stretch to the next; decides the delay.
enum class Control : std::uint8_t {
  none,            ///< the road goes on
  priority,        ///< keeps priority, or turns off on the near side
  across,          ///< turns off across oncoming traffic
  give_way_near,   ///< emerges to the near side (left in Britain)
  give_way_far,    ///< emerges across traffic, or ahead at a crossroads
  stop_near, stop_far,
  signals, signal_crossing, zebra,
  mini_roundabout, roundabout, multi_lane_roundabout, signal_roundabout,
  level_crossing, turn_round, barrier
};
inline constexpr std::size_t control_count = static_cast<std::size_t>(Control::barrier) + 1;
std::string_view name(Control control);

struct Turn {
  StateId to;
  std::int16_t angle_deg = 0;  ///< change of heading, positive to the right
  Control control = Control::none;
  std::uint8_t reserved = 0;
};

/// One roundabout, one mini, one signalled junction …, or one connected run of a stretch-like kind.
struct Place {
  OsmObject source;          ///< the object that says so, the smallest id when several
  Point at;                  ///< its middle
  Kind kind = Kind::roundabout;
  std::uint8_t lanes = 0;    ///< most lanes on the ring, 0: not mapped
  std::uint16_t arms = 0;    ///< roads that meet here; only the public ones where no rows are kept
  std::uint32_t arm_first = 0;  ///< into arms: a ring or mini has that many rows there
  TextId name;
  float diameter_m = 0;      ///< rings only
  float length_m = 0;        ///< runs only: road in it, one way counted once
  std::uint32_t reserved = 0;
};

/// A road that meets a roundabout or mini, in the order in which the ring is driven.
struct Arm {
  PlaceId place;
  std::uint16_t bearing_deg = 0;  ///< from the middle of the place
  std::uint8_t is_public = 0;     ///< counted as an exit by the signs
  std::uint8_t can_leave = 0;     ///< traffic may leave the place by it
  StretchId in, out;              ///< towards the place and away from it; none when one-way
};

/// A small path worth practising: from an entry, through a place, out by an exit.
/// Junction-like: path = entry, what is inside the place, exit. Stretch-like: path = the first
/// stretches of a run, from an entry into it, long enough to count; exit = the last of them.
struct Chance {
  PlaceId place;
  StretchId entry, exit;
  std::uint32_t path_first = 0;  ///< into chance_path
  std::uint32_t path_count = 0;
  Kind kind = Kind::roundabout;
  Movement movement = Movement::none;
  std::uint8_t exit_number = 0;  ///< as the signs count; 0: none
  std::uint8_t hardness = 1;     ///< 1 to 5
  Confidence confidence = Confidence::certain;
  std::uint8_t reserved[3] = {};
  TextId tag;                    ///< "junction=roundabout"
  OsmObject source;
};

/// One stretch-like fact of one stretch. Ordered by stretch, then kind.
struct RunFact {
  StretchId stretch;
  PlaceId place;  ///< the connected run it belongs to
  TextId tag;
  Kind kind = Kind::narrow_road;
  Confidence confidence = Confidence::certain;
  std::uint8_t hardness = 1;
  std::uint8_t reserved = 0;
};

/// A turn restriction that binds a learner's car, resolved to stretches: the path from, via …, to.
/// `only`: whoever drives the path but its last stretch must take that last one.
struct TurnRule {
  std::int64_t relation = 0;
  std::uint32_t path_first = 0;  ///< into rule_path
  std::uint32_t path_count = 0;  ///< at least 2
  TextId text;                   ///< "restriction=no_right_turn"
  TextId condition;              ///< when it binds (hours::Timetable); empty: always
  std::uint8_t only = 0;
  std::uint8_t reserved[7] = {};
};

/// What of a stretch depends on the hour.
enum class Timed : std::uint8_t {
  access,  ///< whether a learner may drive it: "yes" or "no"
  limit,   ///< the speed limit: "20 mph"
  gate     ///< access, where buses are let through: a bus gate or bus-only street
};

/// A rule with hours on a stretch, put into one conditional text as it binds a learner's car; what
/// never binds one is left out. Each row of access and gate must let the car through. Ordered by
/// stretch, then about.
struct TimedRule {
  StretchId stretch;
  TextId base;    ///< what holds when no clause does: "yes", "no", "30 mph"; empty limit: not mapped
  TextId text;    ///< "no @ (Mo-Fr 08:00-09:00)": values as of `about` (hours::Conditional)
  TextId who;     ///< of a gate: who is let through, "bus;taxi"; else empty
  TextId source;  ///< the tag as mapped: "motor_vehicle:conditional=no @ (…)"
  Timed about = Timed::access;
  std::uint8_t reserved[3] = {};
};

/// Why a tag with conditions gives a learner's car no rule by the hour.
enum class Idle : std::uint8_t {
  others,  ///< it binds others than cars: lorries, bicycles, weights, residents
  same,    ///< for a learner's car it is the same at all hours: shut, or open
  unread   ///< the program reads no such tag, or not there: look for the sign
};

/// A tag with conditions of which a learner's car has no TimedRule, BusLane or TurnRule. Only for
/// lists of what is mapped: no search, time or proof may hang on it. Ordered by stretch, then source.
struct IdleRule {
  OsmObject source;   ///< the way; a point of it or a turn restriction, when the tag is theirs
  StretchId stretch;  ///< a stretch of that road, one for each piece; of a restriction where it begins
  TextId tag;         ///< as mapped: "bicycle:conditional=no @ (Mo-Su 11:00-17:00)"
  Idle why = Idle::others;
  std::uint8_t reserved[7] = {};
};

enum class LaneSide : std::uint8_t { unknown, left, right };
enum class LaneDirection : std::uint8_t { along, against, unknown };  ///< of the way

struct BusLane {
  PieceId piece;
  LaneDirection direction = LaneDirection::unknown;  ///< in which its buses drive
  LaneSide side = LaneSide::unknown;                 ///< of the carriageway, seen as they drive
  std::uint8_t contraflow = 0;                       ///< runs against the other traffic
  std::uint8_t doubtful = 0;                         ///< its tags contradict each other
  std::uint8_t lane = 0;     ///< from the left as its buses drive, from 1; 0: not known
  std::uint8_t lanes = 0;    ///< so many lanes in its direction; 0: not known
  std::uint8_t reserved[2] = {};
  TextId hours;   ///< when it is in force (hours::Timetable); empty: hours not mapped
  TextId who;     ///< who may use it, as mapped: "bus;taxi;bicycle"
  TextId doubt;   ///< what contradicts what; empty unless doubtful
  TextId source;  ///< "lanes:bus:conditional=1 @ (…)"
};

/// Where the signs on a stretch lead, as mapped; for following them.
struct SignedTo {
  StretchId stretch;
  TextId destination, ref;  ///< "Orlham;Stavely", "A41"; either may be empty
};

/// The lanes of a stretch in the order and direction of driving, as mapped.
struct LaneMarks {
  StretchId stretch;
  TextId arrows;   ///< turn:lanes from left to right, "left|through;right"; bus lanes are among them
  TextId source;   ///< "turn:lanes:forward=left|through;right", or of the number alone "lanes=4"
  std::uint8_t count = 0;    ///< lanes cars may use; 0: not known. Bus lanes aren't counted
  std::uint8_t certain = 0;  ///< the number is a tag of this direction, not half of a total
  std::uint8_t reserved[2] = {};
};

/// What one can point at from a car. Names of the rows landmark.* in src/rules/words.txt.
enum class LandmarkKind : std::uint8_t {
  church, mosque, synagogue, temple, pub, school, petrol_station, supermarket, shop, station,
  hospital, fire_station, library
};
std::string_view name(LandmarkKind kind);

/// Something beside the roads by which a driver can be shown a corner, named or not. Ordered by cell.
struct Landmark {
  std::uint64_t cell = 0;  ///< grid_cell(at)
  Point at;                ///< its middle
  TextId name;             ///< empty when it has none
  float reach_m = 0;       ///< from its middle to its farthest wall or fence; 0 for a point
  LandmarkKind kind = LandmarkKind::church;
  std::uint8_t reserved[7] = {};
};

/// One address. Ordered by street, then number as text.
struct Address {
  TextId street, number, postcode;  ///< any but one may be empty
  Point at;
};

/// A place that has a name: a village, a pub, a school, a church …
struct NamedSpot {
  OsmObject source;
  Point at;
  TextId name;
  TextId what;  ///< "amenity=pub"
};

/// One piece in one cell of the snapping grid, ordered by cell.
struct GridEntry {
  std::uint64_t cell = 0;
  PieceId piece;
  std::uint32_t reserved = 0;
};

template <template <class> class Array>
struct Columns {
  Array<Node> nodes;
  Array<Piece> pieces;
  Array<Stretch> stretches;           ///< 2 × pieces
  Array<Point> shape;
  Array<std::uint32_t> node_first;    ///< nodes + 1, into node_out
  Array<StretchId> node_out;          ///< every stretch that leaves a node, drivable or not
  Array<StretchId> copies;            ///< the stretch of each state after the first 2 × pieces
  Array<std::uint32_t> turn_first;    ///< states + 1, into turns
  Array<Turn> turns;
  Array<Place> places;
  Array<Arm> arms;
  Array<Chance> chances;              ///< by entry, place, exit
  Array<StretchId> chance_path;
  Array<RunFact> run_facts;
  Array<std::uint32_t> place_node_first;  ///< places + 1, into place_nodes
  Array<NodeId> place_nodes;              ///< nodes of junction-like places
  Array<std::uint32_t> place_piece_first; ///< places + 1, into place_pieces
  Array<PieceId> place_pieces;            ///< pieces inside them, or of a run
  Array<TurnRule> turn_rules;
  Array<StretchId> rule_path;
  Array<TimedRule> timed_rules;       ///< by stretch
  Array<IdleRule> idle_rules;         ///< by stretch
  Array<BusLane> bus_lanes;           ///< by piece
  Array<PullUp> pull_ups;
  Array<KerbBan> kerb_bans;           ///< by stretch
  Array<SignedTo> signs;              ///< by stretch
  Array<LaneMarks> lane_marks;        ///< by stretch; only where lanes are mapped
  Array<Landmark> landmarks;          ///< by cell
  Array<Address> addresses;
  Array<NamedSpot> named_spots;       ///< by source
  Array<char> place_index;            ///< what room place looks names up in; made by it
  Array<GridEntry> grid;
  Array<std::uint32_t> text_first;    ///< texts + 1, into text_bytes
  Array<char> text_bytes;
};

/// Calls f(name, column) for every column, in file order. For the store and for tests.
template <class C, class F>
void for_each_column(C& c, F&& f) {
  f("nodes", c.nodes), f("pieces", c.pieces), f("stretches", c.stretches), f("shape", c.shape);
  f("node_first", c.node_first), f("node_out", c.node_out), f("copies", c.copies);
  f("turn_first", c.turn_first), f("turns", c.turns), f("places", c.places), f("arms", c.arms);
  f("chances", c.chances), f("chance_path", c.chance_path), f("run_facts", c.run_facts);
  f("place_node_first", c.place_node_first), f("place_nodes", c.place_nodes);
  f("place_piece_first", c.place_piece_first), f("place_pieces", c.place_pieces);
  f("turn_rules", c.turn_rules), f("rule_path", c.rule_path), f("timed_rules", c.timed_rules);
  f("idle_rules", c.idle_rules);
  f("bus_lanes", c.bus_lanes), f("pull_ups", c.pull_ups);
  f("kerb_bans", c.kerb_bans), f("signs", c.signs);
  f("lane_marks", c.lane_marks), f("landmarks", c.landmarks);
  f("addresses", c.addresses), f("named_spots", c.named_spots), f("place_index", c.place_index);
  f("grid", c.grid), f("text_first", c.text_first);
  f("text_bytes", c.text_bytes);
}

template <class T>
using Owned = std::vector<T>;
template <class T>
using View = std::span<const T>;

/// The columns while they are being filled.
using Tables = Columns<Owned>;

/// What an area file says of itself.
struct AreaInfo {
  std::string id;             ///< hash of the content, hex
  Region region;
  std::string map_timestamp;  ///< newest data, ISO 8601 UTC; empty when the extract doesn't tell
  std::string source_file;    ///< name of the extract, without folders
  std::string zone;           ///< IANA time zone, "Europe/London"
  bool motorways = false;     ///< built with motorways
  bool fords = false;         ///< built with fords
};

/// The limits of the area's region, knowing the age of its map.
LimitLaw law_of(const AreaInfo& info);

/// The graph as everyone reads it. Cheap to copy; the columns must outlive it.
class Roads : public Columns<View> {
 public:
  Roads() = default;
  Roads(const Columns<View>& columns, AreaInfo about)
      : Columns<View>(columns), about_(std::move(about)) {}

  [[nodiscard]] const AreaInfo& info() const { return about_; }
  [[nodiscard]] std::size_t stretch_count() const { return stretches.size(); }
  [[nodiscard]] std::size_t state_count() const { return stretches.size() + copies.size(); }

  [[nodiscard]] StretchId stretch_of(StateId s) const {
    return s.index() < stretches.size() ? StretchId{s.index()} : copies[s.index() - stretches.size()];
  }
  [[nodiscard]] const Piece& piece(StretchId s) const { return pieces[s.piece().index()]; }
  [[nodiscard]] const Stretch& stretch(StretchId s) const { return stretches[s.index()]; }
  [[nodiscard]] bool drivable(StretchId s) const {
    return (stretch(s).flags & stretch_flag::drivable) != 0;
  }
  [[nodiscard]] NodeId from_node(StretchId s) const {
    return s.against() ? piece(s).b : piece(s).a;
  }
  [[nodiscard]] NodeId to_node(StretchId s) const { return s.against() ? piece(s).a : piece(s).b; }
  [[nodiscard]] std::span<const Turn> turns_from(StateId s) const {
    return turns.subspan(turn_first[s.index()], turn_first[s.index() + 1] - turn_first[s.index()]);
  }
  [[nodiscard]] std::span<const StretchId> leaving(NodeId n) const {
    return node_out.subspan(node_first[n.index()], node_first[n.index() + 1] - node_first[n.index()]);
  }
  [[nodiscard]] std::span<const Point> shape_of(PieceId p) const {
    const Piece& piece = pieces[p.index()];
    return shape.subspan(piece.shape_first, piece.shape_count);
  }
  [[nodiscard]] std::span<const StretchId> path_of(const Chance& c) const {
    return chance_path.subspan(c.path_first, c.path_count);
  }
  [[nodiscard]] std::span<const StretchId> path_of(const TurnRule& r) const {
    return rule_path.subspan(r.path_first, r.path_count);
  }
  [[nodiscard]] std::span<const NodeId> nodes_of(PlaceId p) const {
    return place_nodes.subspan(place_node_first[p.index()],
                               place_node_first[p.index() + 1] - place_node_first[p.index()]);
  }
  [[nodiscard]] std::span<const PieceId> pieces_of(PlaceId p) const {
    return place_pieces.subspan(place_piece_first[p.index()],
                                place_piece_first[p.index() + 1] - place_piece_first[p.index()]);
  }
  [[nodiscard]] std::string_view text(TextId t) const {
    if (!t.known()) return {};
    return {text_bytes.data() + text_first[t.index()],
            text_first[t.index() + 1] - text_first[t.index()]};
  }
  /// Chances that begin with this stretch.
  [[nodiscard]] std::span<const Chance> chances_from(StretchId entry) const;
  /// Stretch-like facts of this stretch.
  [[nodiscard]] std::span<const RunFact> run_facts_of(StretchId s) const;
  [[nodiscard]] std::span<const BusLane> bus_lanes_of(PieceId p) const;
  [[nodiscard]] std::span<const TimedRule> timed_rules_of(StretchId s) const;
  [[nodiscard]] std::span<const PullUp> pull_ups_of(StretchId s) const;
  /// None or one.
  [[nodiscard]] std::span<const KerbBan> kerb_bans_of(StretchId s) const;
  [[nodiscard]] std::span<const SignedTo> signs_of(StretchId s) const;
  /// None or one.
  [[nodiscard]] std::span<const LaneMarks> lane_marks_of(StretchId s) const;
  /// Landmarks of one cell of the grid.
  [[nodiscard]] std::span<const Landmark> landmarks_in(std::uint64_t cell) const;
  /// Pieces of one OSM way, in its order.
  [[nodiscard]] std::span<const Piece> pieces_of_way(std::int64_t way) const;
  /// The node of an OSM id; none when it isn't one of the graph's.
  [[nodiscard]] NodeId find_node(std::int64_t osm_id) const;
  /// Row of a piece that came out of one of this class's spans.
  [[nodiscard]] PieceId id_of(const Piece& piece) const {
    return PieceId{static_cast<std::size_t>(&piece - pieces.data())};
  }

 private:
  AreaInfo about_;
};

/// A Roads over tables in memory (for building and tests). The tables must outlive it.
Roads view_of(const Tables& tables, AreaInfo info);

/// Compass bearing at the start of a stretch, from its first metres (up to 15) of shape.
double bearing_out_deg(const Roads& roads, StretchId stretch);
/// Compass bearing at the end of a stretch, from its last metres of shape.
double bearing_in_deg(const Roads& roads, StretchId stretch);

/// Cell of the snapping grid that holds a point: cells of 1/200 degree each way.
std::uint64_t grid_cell(Point at);
/// Every cell a shape may touch, ascending, each once: where the grid lists its piece.
std::vector<std::uint64_t> grid_cells_of(std::span<const Point> shape);
/// Pieces whose shape may come within `radius_m` of a point: ascending, each once.
std::vector<PieceId> pieces_near(const Roads& roads, Point at, double radius_m);

}  // namespace loopwright::road
