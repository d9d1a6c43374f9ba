// Drives that are made up whole, so that what a recorder saw of them can be held to where the car really was.
//
//   const SimulatedDrive drive = simulated(roads, {.seed = 7, .minutes = 20});
//   const auto fixes = recorded(drive, {.sigma_m = 10, .every_s = 5});
//
// The way: quickest ways between points picked at random 400 to 1800 m apart, as a lesson loop goes from one thing to
// practise to the next; before each a sixth of the smaller roads is shut, so that the way is seldom the quickest. None
// turns round at a dead end (an end of ten metres is below any noise), but one in the middle of a road when asked to.
// The car: room pace's speeds, times 0.85 to 1.15 by stretch, 1.2 m/s² up and 1.5 down, slow round corners, and at each
// junction a wait drawn at random (a share of them none, else exponential with the table's likely delay as its mean).
// The recorder: the position north and east is off by a first-order Gauss-Markov error (time constant 30 s, three
// quarters of the variance) and a white one (a quarter). sigma_m is the standard deviation along each of the two. From
// memory: receivers' errors are usually modelled so, with time constants from tens of seconds to minutes; no source.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/trace/match.hpp"
#include "loopwright/trace/recording.hpp"

namespace loopwright::test {

struct SimulatedDrive {
  std::vector<trace::Leg> legs;    ///< the truth
  std::vector<trace::Stop> stops;  ///< of 10 s and more
  std::vector<trace::Fix> path;    ///< where the car was, every half second
};

struct SimulationAsk {
  std::uint64_t seed = 1;
  double minutes = 20;
  double start_s = 1'795'878'000;  ///< 28 November 2026, 15:00 UTC
  bool turn_round = false;         ///< turns round in the road once, somewhere quiet
};
SimulatedDrive simulated(const road::Roads& roads, const SimulationAsk& ask);

struct RecorderAsk {
  std::uint64_t seed = 1;
  double sigma_m = 10;
  double every_s = 5;
  double dropout_every_s = 600;  ///< a minute without fixes in each such time; 0: never
};
std::vector<trace::Fix> recorded(const SimulatedDrive& drive, const RecorderAsk& ask);

/// How far a match is off the truth.
struct Compared {
  double driven_m = 0;
  double added_m = 0;   ///< matched, but not driven
  double missed_m = 0;  ///< driven, but not matched
  int passes = 0, found = 0, invented = 0;
  Compared& operator+=(const Compared& more);
  /// Wrong road as Newson and Krumm count it: what is added and what is missed, of what was driven.
  [[nodiscard]] double wrong_share() const { return (added_m + missed_m) / driven_m; }
  [[nodiscard]] double found_share() const { return static_cast<double>(found) / passes; }
};
/// Stretches by their direction, each as long as it was driven; passes by kind, movement, exit and place.
Compared compared_with(const road::Roads& roads, const SimulatedDrive& drive,
                       const trace::Match& match);

}  // namespace loopwright::test
