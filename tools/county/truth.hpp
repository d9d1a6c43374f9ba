// What a build of a county must find and what it may find, worked out from the drawing alone.
//
//   const Truth truth = truth_of(county);   std::cout << written(truth);
//
// Rules: each row has a duty. `must`: a build that lacks it has missed something. `may`: what a rule
// of the build is free to infer. Whatever a build finds that no row covers is false. Written from the
// tag pages and DEVELOPERS.md's decisions, never from room mark: it judges that room.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "county/drawing.hpp"
#include "county/plan.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::county {

enum class Duty { must, may };
/// Of the points of a way; `any`: the map doesn't tell.
enum class Course { both, along, against, any };

/// Something at a place: a roundabout, a zebra, a junction, a spot to park.
struct TruePlace {
  Duty duty = Duty::must;
  std::uint64_t kinds = 0;  ///< bits of road::Kind; one for `must`
  Point at;
  double within_m = 25;  ///< how far off it may be found
  std::string says;      ///< "arms=4", "moves=left,right"; parts by spaces
};

/// Something along a way.
struct TrueRun {
  Duty duty = Duty::must;
  std::uint64_t kinds = 0;
  Course course = Course::both;
  std::string says;  ///< hours of a bus lane, else empty
  std::int64_t way = 0;
  double metres = 0;  ///< of it; 0: some part
};

struct Trap {
  int number = 0;
  Point at;
  std::string what;
};

struct Truth {
  std::vector<TruePlace> places;
  std::vector<TrueRun> runs;
  std::vector<Trap> traps;
};

Truth truth_of(const Drawing& county);
/// The plan's traps, at their places.
std::vector<Trap> traps_of(const Plan& plan);

/// As lines of cells with tabs between, sorted; read_truth reads it.
std::string written(const Truth& truth);
/// Throws InputError with the number of a line that can't be read.
Truth read_truth(std::string_view text);

}  // namespace loopwright::county
