// The tag rules, one function a topic: tags in, facts out. Each is explained in its own .cpp, with
// the page or law it follows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

// --- access.cpp: may a learner's car drive here? -------------------------------------------------

/// The motor class of a way; empty when the highway value isn't one cars use (footway, track …).
std::optional<road::RoadClass> road_class_of(const Tags& tags);

/// A driveway, parking aisle, drive-through or emergency access: never driven, never a road.
bool is_minor_service(const Tags& tags);

/// From open to shut. `unsuited`: public and legal, but no place for a lesson (a motorway or a ford
/// when not built in, living streets, unsealed or unknown roads, tolls): seen and counted as an
/// exit, not driven.
enum class Access : std::uint8_t { yes, destination, unsuited, no };

/// A rule by the hour on one direction: whether a car may drive it then.
struct TimedAccess {
  road::Timed about = road::Timed::access;  ///< or a gate
  bool base = true;                         ///< may be driven when no clause of the text holds
  std::string text;                         ///< "no @ (Mo-Fr 08:00-09:00)"
  std::string who;                          ///< of a gate: who is let through, "bus;taxi"
  std::string source;
};

struct CarAccess {
  Access along = Access::yes, against = Access::yes;  ///< at the hours at which it is most open
  std::string tag;  ///< the tag that closes or limits it, at all hours or some; empty: nothing does
  std::vector<TimedAccess> timed_along, timed_against;  ///< each must let the car through
  std::string who;  ///< of a road shut to cars at all hours: who is let in, "bus;taxi"
};

/// What an area is built with beside the roads that suit any lesson.
struct BuiltWith {
  bool motorways = false, fords = false;
};

/// The access tree motorcar / motor_vehicle / vehicle / access with its directions and conditions,
/// oneway in all its spellings, implied one-ways, service kinds, surfaces and fords.
/// Rules: only `yes` may be driven, at the hours of its rules; a direction shut by one-way alone is
/// `no` without a tag.
CarAccess car_access(const Tags& tags, road::RoadClass road_class, BuiltWith with);

/// The piece flags of that: no_access when shut both ways, destination_only when that is the best.
std::uint32_t access_flags(const CarAccess& access);

struct OneWay {
  bool along = true, against = true;  ///< directions traffic may take
  bool one_way = false;
  std::string tag;
};
OneWay one_way_of(const Tags& tags, road::RoadClass road_class);

enum class Barrier : std::uint8_t { none, passable, wall };
/// A node on the way: a gate, a bollard …; access tags on it outrank the kind of barrier. A ford is
/// a wall unless the area is built with fords.
Barrier barrier_of(const Tags& tags, BuiltWith with = {});

// --- node_kinds.cpp: what a map node's tags say a driver meets there ----------------------------

/// Bits of road::node_flag, all but wall and dead_end. A way is cut at every node that has one. Pedestrian lights tagged as
/// highway=traffic_signals have both signal bits.
std::uint32_t node_flags_of(const Tags& tags);

/// True for one word of traffic_calming that one crosses slowly; islands and narrowings aren't.
bool is_hump(std::string_view calming);

/// False when a node with the zebra bit is only "marked", without saying how.
bool zebra_is_certain(const Tags& tags);

// --- tram_rails.cpp ------------------------------------------------------------------------------

/// Map nodes where the rails of a tram cross a road instead of running along it, ascending. A way
/// is cut there too.
std::vector<std::int64_t> tram_crossings(const RawMap& raw);

// --- features.cpp --------------------------------------------------------------------------------

/// True for what is kept of the things beside the roads: addresses, bus stops, schools, car parks
/// and bays, gates and entrances, hazards, and everything named that people go to or steer by.
bool is_feature(const Tags& tags);

/// True when the point lies inside the feature's lines (even-odd rule); never for a node.
bool contains(const RawFeature& feature, Point point);

/// Metres from a point to the feature's lines, or to the node itself.
double distance_m(const RawFeature& feature, Point point);

// --- speed_limits.cpp ----------------------------------------------------------------------------

struct BothLimits {
  road::LimitFact along, against;
};
/// The whole cascade; texts of the sources go into the draft. Bare numbers in Great Britain are
/// km/h by the documentation and reported as odd.
BothLimits limits_of(Draft& draft, PieceId piece);

// --- widths.cpp ----------------------------------------------------------------------------------

/// Metres of a width text: "4.5", "4.5 m", "12'6\"", "16 ft"; empty when it can't be read.
std::optional<double> read_width(std::string_view text);

struct Widths {
  double width_m = 0;   ///< kerb to kerb, 0 when not mapped
  double usable_m = 0;  ///< after parked cars, 0 when not known
  bool parked_both = false;
  bool narrow = false;        ///< two cars don't fit (usable under 4.8 m, lanes=1, narrow=yes …)
  bool single_track = false;  ///< one car wide, for both directions
  bool certain = false;       ///< from width or lanes tags, not from parking or class
  std::string tag;            ///< what says so
};
Widths widths_of(const Tags& tags, road::RoadClass road_class, bool one_way);

// --- bus_lanes.cpp -------------------------------------------------------------------------------

struct BusLaneFact {
  road::LaneDirection direction = road::LaneDirection::unknown;
  road::LaneSide side = road::LaneSide::unknown;
  bool contraflow = false;
  bool alone = false;      ///< its doubt is settled when another family of tags has the lane too
  std::uint8_t lane = 0;   ///< from the left as its buses drive, from 1; 0: not known
  std::uint8_t lanes = 0;  ///< so many lanes in its direction; 0: not known
  std::string hours;       ///< for hours::Timetable; empty: not mapped
  std::string who;         ///< who may use it, as mapped: "bus;taxi"
  std::string doubt;       ///< what contradicts what; empty when nothing does
  std::string source;      ///< key=value
  [[nodiscard]] bool doubtful() const { return !doubt.empty(); }
};
/// All three tagging families joined.
std::vector<BusLaneFact> bus_lanes_of(const Tags& tags, const OneWay& one_way, Side side);

// --- places: each appends to the draft, in this order --------------------------------------------

void mark_piece_facts(Draft& draft);  ///< limits, widths, flags, bus lanes of every piece
void mark_gradients(Draft& draft);    ///< how steep, by tag or elevation grid; needs the flags
void mark_roundabouts(Draft& draft);  ///< rings from ways, arms merged, exits numbered
void mark_minis(Draft& draft);
void mark_signals(Draft& draft);    ///< signalled junctions and signal crossings, clustered
void mark_crossings(Draft& draft);  ///< zebras
void mark_level_crossings(Draft& draft);
void mark_junctions(Draft& draft);     ///< emerging, turning off, crossroads
void mark_calming(Draft& draft);       ///< humps, a series on one street as one place
void mark_pinch_points(Draft& draft);  ///< chokers, chicanes, one-lane bridges; needs the signals
void mark_fords(Draft& draft);
void mark_tram_crossings(Draft& draft);
void mark_limit_changes(Draft& draft);
void mark_runs(Draft& draft);        ///< narrow, 20 zones, one-way, dual, bus lanes …
void mark_bus_stops(Draft& draft);   ///< beside the road, by side
void mark_pull_ups(Draft& draft);    ///< where one may stop; needs the runs and gradients
void mark_kerb_bans(Draft& draft);   ///< where parking is forbidden; needs which may be driven
void mark_manoeuvres(Draft& draft);  ///< where to stop and practise; needs the pull-up places
/// What each turn must deal with, for the times; graph is draft.roads().
void mark_controls(Draft& draft, const road::Roads& graph);
void mark_addresses(Draft& draft);       ///< addresses, and what has a name
void mark_lane_marks(Draft& draft);      ///< lanes and their arrows; needs which may be driven
void mark_landmarks(Draft& draft);       ///< what a corner can be shown by
void report_unread_hours(Draft& draft);  ///< which hours can't be read; needs the pull-up places
void mark_idle_rules(Draft& draft);  ///< conditions that never change for a car; after bus lanes,
                                     ///< pull-up places and kerb bans
void count_coverage(Draft& draft);   ///< for the report: how much the map tells of which streets

/// All of the above in order, then draft.finish().
void mark_all(Draft& draft);

}  // namespace loopwright::mark
