// A county while it is drawn: lines, what stands at points of them, and what lies beside.
//
//   Drawing county;  county.lines.push_back({.kind = LineKind::road, .points = …, .tags = …});
//
// Rules: two lines meet where they hold an equal Spot and nowhere else; the order of everything is
// the order of drawing, so that one plan and seed give the same bytes.
#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <unordered_map>
#include <variant>
#include <vector>

#include "county/spot.hpp"

namespace loopwright::county {

using Tags = std::map<std::string, std::string>;

enum class LineKind { ring, road, service, rail, tram, water, outline };

/// What stands at an end of a line, and how the end is meant.
enum class End {
  meets,           ///< joins another line, which must be within reach
  give_way,        ///< joins, with a give-way sign before the end
  stop,            ///< joins, with a stop sign
  signals,         ///< joins, with a light that faces whoever arrives
  turning_circle,  ///< a dead end to turn round in
  closed,          ///< a dead end without one
  edge             ///< leads off the map
};

struct Line {
  LineKind kind = LineKind::road;
  std::vector<Spot> points{};
  Tags tags{};
  std::array<End, 2> ends{End::meets, End::meets};  ///< at the first and the last point
  int layer = 0;
  bool grown = false;     ///< by the generator, not drawn in the plan
  std::string quarter{};  ///< name of what grew it; empty for the plan
};

/// A roundabout of the plan; its line is lines[line].
struct Ring {
  std::string name{};
  Spot centre{};
  double radius_m = 0;
  bool signals = false;
  std::size_t line = 0;
};

struct Lone {  ///< a point on no line: a shop, a house number, a bus stop
  Spot at{};
  Tags tags{};
};

struct Area {                   ///< a closed outline: a school's grounds, a car park
  std::vector<Spot> corners{};  ///< the first isn't repeated
  Tags tags{};
};

struct Member {
  std::variant<std::size_t, Spot> what;  ///< a line by index, or a point
  std::string role{};
};
struct Relation {
  std::vector<Member> members{};
  Tags tags{};
};

/// A height that the ground has: a hill by its summit, or a flat by its floor.
struct Hill {
  Spot summit{};
  double height_m = 0;
  double reach_m = 0;  ///< where it has fallen to e^-1 of its height
};

struct Drawing {
  double origin_lat = 0;
  double origin_lon = 0;
  std::vector<Line> lines{};
  std::vector<Ring> rings{};
  std::unordered_map<Spot, Tags, SpotHash> node_tags{};
  std::vector<Lone> lone{};
  std::vector<Area> areas{};
  std::vector<Relation> relations{};
  std::vector<Hill> hills{};
  std::vector<std::string> troubles{};  ///< what the plan says that can't be drawn, a line each
};

}  // namespace loopwright::county
