// Which roads a recorded drive took: its fixes matched to the turn graph.
//
//   const Match match = match_to_roads(roads, recording.fixes);
//   for (const Run& run : match.runs) for (const Leg& leg : run.legs) use(leg.state, leg.enter_s);
//
// Method: a hidden Markov model after P. Newson and J. Krumm, "Hidden Markov Map Matching Through Noise and
// Sparseness", ACM SIGSPATIAL GIS 2009: how likely a fix is from a place on a road falls with its distance as a normal
// distribution does; how likely a way between two fixes is falls exponentially with the difference of its length and
// the straight distance; Viterbi's algorithm finds the likeliest chain. Ways use legal turns only. Ours besides: a car
// may turn round in the road anywhere, at a price, since learners practise that; both widths are taken from the drive.
// Rules: pure, the same fixes give the same match. Only roads a lesson may use are known: what is driven elsewhere (a
// yard, a private road) is told as off the roads. It is what the recorder saw, not a proof: fixes tell no lane and no
// manoeuvre in a car's length.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/trace/recording.hpp"

namespace loopwright::trace {

/// A stretch driven, or a part of it; metres from where it is entered.
struct Leg {
  StateId state;
  double from_m = 0, to_m = 0;
  double enter_s = 0, leave_s = 0;  ///< seconds since 1970 UTC
  bool turned_round = false;        ///< the car turned round in the road before it
  bool seen = true;  ///< false: between two fixes far apart in time; the shortest way is taken
};

/// The car stood, or crawled no farther than the noise.
struct Stop {
  double from_s = 0, to_s = 0;
  std::size_t leg = 0;  ///< index into legs
  double at_m = 0;      ///< on it
  Point at;
};

/// A drive without a break; legs follow each other by legal turns, but for those that turned round.
struct Run {
  std::vector<Leg> legs;
  std::vector<Stop> stops;       ///< in order
  double from_s = 0, to_s = 0;   ///< first and last fix
  std::vector<Point> line = {};  ///< the way as a line
  [[nodiscard]] double metres() const;
};

/// Fixes that lie on no road known here, or to which no way leads.
struct OffRoads {
  double from_s = 0, to_s = 0;
  Point at;  ///< the first of them
  std::size_t fixes = 0;
};

/// How far fixes and ways scatter, metres.
struct Noise {
  double sigma_m = 10;  ///< standard deviation of a fix's distance from the road
  double beta_m = 10;   ///< mean difference of a way's length and the straight distance
};

struct Match {
  std::vector<Run> runs;
  std::vector<OffRoads> off_roads;
  Noise noise;             ///< as the drive itself shows it
  double usual_gap_s = 1;  ///< median time between two fixes
};

struct MatchAsk {
  double least_stop_s = 20;  ///< shorter stops aren't told
  /// A plan, in driving order: while nothing was recorded it is taken to have been driven where it fits the time.
  std::span<const StretchId> plan = {};
};

/// fixes: by time, each time once.
Match match_to_roads(const road::Roads& roads, std::span<const Fix> fixes,
                     const MatchAsk& ask = {});

}  // namespace loopwright::trace
