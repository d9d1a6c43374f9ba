// Holds what a build found against what it must and may find.
//
//   const Verdict verdict = check(truth, area.roads());   print(std::cout, verdict);
//
// Rules: places match within the metres that their row names; runs by way and direction, their length
// to 5 m and 3 per cent. What a build leaves out of the roads because it can't be driven into and out
// of is neither planted nor missed; it is counted.
#pragma once

#include <array>
#include <iosfwd>
#include <map>
#include <string>
#include <vector>

#include "county/truth.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::county {

struct Tally {
  std::size_t planted = 0, found = 0, missed = 0;
  std::size_t by_rule = 0;  ///< found, and only allowed
  std::size_t wrong = 0;    ///< found, and nowhere in the truth
  std::vector<std::string> examples;
};

struct Verdict {
  std::array<Tally, road::kind_count> kinds;
  std::size_t cut_off = 0;  ///< planted runs on roads that are left out
  [[nodiscard]] Tally& of(road::Kind kind) { return kinds.at(static_cast<std::size_t>(kind)); }
  [[nodiscard]] bool clean() const;
};

Verdict check(const Truth& truth, const road::Roads& roads);

/// A line a kind, then examples of what differs, at most so many of each kind.
void print(std::ostream& out, const Verdict& verdict, std::size_t examples);

// Parts of check.
void check_places(const Truth& truth, const road::Roads& roads, Verdict& verdict);
void check_runs(const Truth& truth, const road::Roads& roads, Verdict& verdict);
void check_bus_lanes(const Truth& truth, const road::Roads& roads, Verdict& verdict);

}  // namespace loopwright::county
