// What a plan only outlines and the generator draws: quarters of a town, whole towns, villages, lanes
// between them, and what stands along streets everywhere.
//
//   grow_quarter(county, {.name = "Alder", .style = Style::estate, .outline = …}, dice);
//
// Rules: called when the plan's own roads are joined; lines that are added here are joined to those
// and to each other already, share their Spots, and cross nothing that lies on their layer but at a
// shared Spot. Every draw of chance comes from the Dice that is handed in.
#pragma once

#include <string>
#include <vector>

#include "county/drawing.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {

enum class Style {
  terraces,   ///< tight parallel streets, cars both sides, back lanes
  crescents,  ///< wide curved streets with cul-de-sacs
  avenues,    ///< a loose bent grid
  works,      ///< few wide roads with dead ends and yards
  centre      ///< short narrow streets, some one-way
};

struct Quarter {
  std::string name{};  ///< names its street list and its places
  Style style = Style::avenues;
  std::vector<Spot> outline{};  ///< the first corner isn't repeated
  Tags tags{};                  ///< of all its streets
};
void grow_quarter(Drawing& county, const Quarter& quarter, Dice& dice);

struct Settlement {
  std::string name{};
  Spot middle{};
  double reach_m = 0;  ///< to the last houses
  Tags tags{};         ///< of all its streets
};
/// Streets on both sides of the roads that pass through, a green, a church, an inn.
void grow_village(Drawing& county, const Settlement& village, Dice& dice);
/// A centre, quarters of every style and the roads between, where no plan draws them.
void grow_town(Drawing& county, const Settlement& town, Dice& dice);

/// Country lanes over the ground within an outline that no street covers, farms and all.
void grow_lanes(Drawing& county, const Quarter& ground, Dice& dice);

/// Driveways, parking aisles, yards and farm tracks along the streets there are.
void grow_services(Drawing& county, Dice& dice);
/// Names for streets that have none, then house numbers and postcode-like codes, shops, bus stops.
void dress_streets(Drawing& county, Dice& dice);

}  // namespace loopwright::county
