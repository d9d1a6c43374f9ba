// The main roads of a county that a seed draws, cut where they cross its river and its railway.
//
//   const std::string lines = plan_lines(road, barriers, dice);
#pragma once

#include <array>
#include <string>
#include <vector>

#include "county/drawing.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {

struct OtherRoad {
  std::string name;  ///< as a plan writes it, quotes and all
  std::string highway;
  std::string tags;  ///< of all its parts
  std::vector<Spot> points;
  std::array<std::string, 2> rings{};  ///< "@north^" in the place of its first or last point
  std::array<std::string, 2> ends{};   ///< "give_way", "edge" …; empty: joins
};

/// A line that roads cross by a bridge, or a railway also on the level.
struct Barrier {
  std::vector<Spot> curve;
  bool rail = false;
};

/// The road as lines of a plan, with bridges, and crossing commands where it stays on the level.
std::string plan_lines(const OtherRoad& road, const std::vector<Barrier>& barriers, Dice& dice);

/// "12.5,-3 4,5": places as a plan writes them.
std::string plan_points(const std::vector<Spot>& points);

}  // namespace loopwright::county
