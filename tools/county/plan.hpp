// What a plan says, read from a text a person can write.
//
//   const Plan plan = read_plan(text, "maps/quillham.plan");
//
// One command a line; '#' starts a comment. A word with '=' is a tag, one without is the name of a
// set of tags; double quotes hold words together
// (a quote within them is \\"). Points are metres east and north of the origin.
//   origin LAT LON                      where 0,0 lies
//   set NAME tags…                      a name for some tags
//   ring NAME X,Y RADIUS tags…          a roundabout, driven clockwise; signals=yes: lights hold back
//                                       those who drive round
//   road NAME CLASS points… tags…       points: X,Y  @ring  @ring^ (forks round an island);
//                                       name '-' for none; bent smoothly through its points
//   dual NAME CLASS points… tags…       both carriageways, driven on the left; an end X,Y is where
//                                       they part, or with first=edge or last=edge they stay apart
//   rail TRACKS points… tags…           one or two tracks
//   tram points… tags…                  a track that may cross any road
//   tram NAME tags…                     rails in all roads of that name
//   water NAME WIDTH points… tags…      a river, or a stream under 5 m
//   crossing X,Y tags…                  the level crossing there, or the ford; rails and rivers
//                                       may cross no road of their layer elsewhere
//   at X,Y tags…                        tags on the nearest road, at a point of its own
//   junction X,Y tags…                  tags on the nearest junction
//   round X,Y RADIUS tags…              the nearest junction becomes a roundabout
//   ban KIND FROM VIA TO tags…          a turn restriction; FROM and TO lie on the roads meant; VIA
//                                       is a junction, or X,Y~ on the road between two; hours="…";
//                                       slip=junction: over the road and its first junction
//   bus REF names…                      a bus route along the roads of these names
//   area points… tags…                  a closed outline      spot X,Y tags…    a lone node
//   houses NAME STEP tags…              numbers along the streets of that name, odd ones on the left,
//                                       STEP metres from one to the next on the same side
//   stop NAME X,Y bus                   a bus stop on the left of who drives from the nearest road's
//                                       first point; stop NAME X,Y back   on the other side
//   hill X,Y HEIGHT REACH               ground that rises so many metres, and falls to a third of it
//                                       REACH metres off; incline=auto on a road: as the ground has it
//   quarter NAME STYLE corners… tags…   streets to grow: terraces crescents avenues works centre
//   infill NAME STYLE corners… tags…    streets in the gaps between those that are drawn there
//   town NAME X,Y REACH tags…           a town to grow        village NAME X,Y REACH tags…
//   lanes NAME corners… tags…           country lanes to grow
//   trap NUMBER X,Y words…              for people: what is easily read wrongly there
// Tags first=… and last=… of a road say what stands at its ends: give_way stop signals
// turning_circle closed edge; without, it joins the road within 30 m.
//
// Rules: what can't be read is an InputError with the number of its line.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "county/drawing.hpp"
#include "county/grow.hpp"

namespace loopwright::county {

/// A point of a road: a place, or a roundabout of the plan.
struct PlanPoint {
  Spot at{};
  std::string ring{};   ///< empty: a place
  bool forked = false;  ///< round a splitter island
};

struct PlanRing {
  int number = 0;  ///< line of the plan, as in all that follows
  std::string name{};
  Spot centre{};
  double radius_m = 0;
  bool signals = false;
  Tags tags{};
};
struct PlanRoad {
  int number = 0;
  bool dual = false;
  std::vector<PlanPoint> points{};
  std::array<End, 2> ends{End::meets, End::meets};
  Tags tags{};
};
struct PlanTrack {
  int number = 0;
  LineKind kind = LineKind::rail;  ///< rail, tram or water
  int tracks = 1;
  std::vector<Spot> points{};
  std::string along{};  ///< name of the roads it runs in, instead of points; empty for none
  Tags tags{};
};
using PlanLine = std::variant<PlanRing, PlanRoad, PlanTrack>;

/// Tags at a place: a level crossing or ford, a sign on a road, the control of a junction, a lone node.
struct PlanTags {
  int number = 0;
  Spot at{};
  Tags tags{};
};
struct PlanSign : PlanTags {};
struct PlanControl : PlanTags {};
struct PlanHouses {
  int number = 0;
  std::string street{};
  double step_m = 0;
  Tags tags{};
};
struct PlanStop {
  int number = 0;
  std::string name{};
  Spot at{};
  bool back = false;
};
using PlanLate = std::variant<PlanSign, PlanControl, PlanHouses, PlanStop>;

/// A junction that becomes a roundabout.
struct PlanRound {
  int number = 0;
  Spot at{};
  double radius_m = 0;
  Tags tags{};
};

struct PlanBan {
  int number = 0;
  std::string kind{};
  Spot from{};
  Spot via{};
  bool over_road = false;      ///< via a road between two junctions
  bool with_junction = false;  ///< and via the first of them: a mapper's slip
  Spot to{};
  Tags tags{};
};
struct PlanBus {
  int number = 0;
  std::string ref{};
  std::vector<std::string> streets{};
};

enum class Grow { quarter, infill, town, village, lanes };
struct PlanGrowth {
  int number = 0;
  Grow what = Grow::quarter;
  Quarter ground{};         ///< of quarter, infill and lanes
  Settlement settlement{};  ///< of town and village
};

/// A place where the map is easily read wrongly.
struct PlanTrap {
  int number = 0;
  int trap = 0;  ///< its number among the traps
  Spot at{};
  std::string what{};
};

struct Plan {
  std::string file{};  ///< as it is called in messages
  double origin_lat = 0;
  double origin_lon = 0;
  std::vector<PlanLine> lines{};
  std::vector<PlanTags> crossings{};
  std::vector<PlanRound> rounds{};
  std::vector<PlanLate> late{};
  std::vector<PlanBan> bans{};
  std::vector<PlanBus> buses{};
  std::vector<Area> areas{};
  std::vector<Lone> lone{};
  std::vector<Hill> hills{};
  std::vector<PlanGrowth> growth{};
  std::vector<PlanTrap> traps{};
};

/// Throws InputError.
Plan read_plan(std::string_view text, const std::string& file);

}  // namespace loopwright::county
