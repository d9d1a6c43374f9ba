// A drawing in the making: what the steps that draw a plan share and its readers needn't see.
//
// Steps, each in a file of its own, called in this order by draw(): draw_lines, join, put_rounds, (growth),
// put_late, resolve_turns.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "county/drawing.hpp"
#include "county/line_grid.hpp"
#include "county/plan.hpp"

namespace loopwright::county {

/// The light on a ring that holds back those who drive round, just before an entry at this angle.
struct RingLight {
  std::size_t ring = 0;  ///< index into the county's rings
  double angle = 0;
};

struct Draft {
  Drawing county;
  std::vector<int> numbers;                  ///< line of the plan, by line of the county as drawn
  std::map<std::string, std::size_t> rings;  ///< by the plan's name
  std::vector<RingLight> lights;
};

/// Notes what can't be drawn, with the line of the plan that says it.
void trouble(Draft& draft, int number, const std::string& why);
/// What a road is called in a trouble: its name, else its class.
std::string called(const Line& line);
/// "12.5,-3", as a plan writes it.
std::string written(Spot place);

/// Rings, roads and tracks, each for itself; their ends not yet joined.
void draw_lines(Draft& draft, const Plan& plan);
/// Ends are moved onto roads, roads that cross share points, rails and water cross where they may.
void join(Draft& draft, const Plan& plan);
/// Junctions that the plan makes roundabouts.
void put_rounds(Draft& draft, const Plan& plan);
/// Signs, lights, controls of junctions, bus stops, houses.
void put_late(Draft& draft, const Plan& plan);
/// Cuts the roads where a ban needs it; bans and bus routes.
void resolve_turns(Draft& draft, const Plan& plan);

/// The junction nearest to a place, at most join_m off: a point of two roads or rings.
std::optional<Spot> junction_near(const Drawing& county, const LineGrid& grid, Spot place);
/// All roads, service roads and rings by where they lie.
LineGrid grid_of_roads(const Drawing& county);
bool for_cars(LineKind kind);

}  // namespace loopwright::county
