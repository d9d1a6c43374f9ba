// One street, walked from its start until it meets something, has no room left or is long enough.
//
//   if (auto way = trace(ground, manner, start, dice)) lay(ground, *way, line);
//
// Rules: what trace gives can be laid: it crosses nothing but where it joins, meets other streets at
// 60 to 120 degrees, keeps its distance from other junctions and from streets beside it. Only lay
// changes the county.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <vector>

#include "county/grow_ground.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {

/// How streets of a patch run. Two directions: along the grain and across it.
struct Manner {
  std::span<const Spot> within;
  std::function<double(Spot)> grain;  ///< angle of the grain at a place
  double along_gap_m = 80;            ///< between streets that run along the grain
  double across_gap_m = 170;          ///< between those that run across it
  double follow = 0.5;        ///< share of what it is off its direction that a step takes back
  double wobble = 0.05;       ///< largest chance turn of a step, radians
  double bow = 0.0;           ///< largest steady turn of a step, radians
  std::optional<Spot> aim{};  ///< what is followed, instead of the grain
  double step_m = 20;
  double shortest_m = 50;
  double longest_m = 600;
  double join = 0.9;      ///< chance to join a street ahead that may be joined
  double cross = 0.1;     ///< chance to go on across it
  double keep_m = 26;     ///< from other junctions
  double close_m = 22;    ///< from what it mustn't touch
  bool may_close = true;  ///< may end without meeting anything
  int rank = 1;           ///< joins no road less important than this
  bool fast = false;      ///< may join roads of the national limit
  double bridge = 0;      ///< chance to go over rails and water rather than to stop
  double level = 0;       ///< chance to cross a single track at the level, when it doesn't go over
};

struct Start {
  std::size_t line = 0;  ///< Ground::no_line: a place where no line is
  Spot at;
  double heading = 0;
};

struct Joint {
  std::size_t line = 0;
  Spot at;
};

struct Trace {
  std::vector<Spot> points;
  std::vector<Joint> joints;           ///< of points, the start's among them
  std::vector<std::size_t> bridges{};  ///< the points at which a bridge begins; it ends at the next
  std::vector<Spot> crossings{};       ///< level crossings, joints as well
  bool closed = false;                 ///< ends at nothing
};

std::optional<Trace> trace(const Ground& ground, const Manner& manner, const Start& start,
                           Dice& dice);

/// Puts the shared Spots into the other lines, and adds the line with the trace's points and ends.
std::size_t lay(Ground& ground, const Trace& way, Line line);

/// Whether a street of that rank may end at a line.
bool joinable(const Line& line, int rank, bool fast);
/// Whether a way at one heading meets a line of another at 60 to 120 degrees.
bool square_on(double heading, double line_angle);
/// Points without those that stand less than 0.4 m off the straight between their neighbours.
std::vector<Spot> without_straight(const std::vector<Spot>& points, const std::vector<Joint>& keep);

}  // namespace loopwright::county
