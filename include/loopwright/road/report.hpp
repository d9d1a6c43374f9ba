// What a build found and what it could not use, for the person who chose the extract.
//
// Rules: nothing of the map is dropped silently: each object left out or doubted is an Oddity with
// its OSM id; counts are by name, in the order first counted.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/ids.hpp"

namespace loopwright::road {

struct Oddity {
  OsmObject object;
  std::string what;  ///< a short fixed phrase, the same for the same trouble
  std::string detail;
};

/// How much of one sort of street the map tells a fact of, by length.
struct Coverage {
  std::string streets;  ///< "residential streets"
  std::string fact;     ///< "a width"
  double all_m = 0, told_m = 0;
};

class Report {
 public:
  /// Adds to a count, making it when new.
  void count(std::string_view what, std::int64_t more = 1);
  void odd(OsmObject object, std::string_view what, std::string_view detail = {});
  /// Adds road to a row of the coverage, making it when new.
  void cover(std::string_view streets, std::string_view fact, double all_m, double told_m);
  [[nodiscard]] std::int64_t counted(std::string_view what) const;
  [[nodiscard]] const std::vector<std::pair<std::string, std::int64_t>>& counts() const {
    return counts_;
  }
  [[nodiscard]] const std::vector<Oddity>& oddities() const { return oddities_; }
  [[nodiscard]] const std::vector<Coverage>& coverage() const { return coverage_; }

 private:
  std::vector<std::pair<std::string, std::int64_t>> counts_;
  std::vector<Oddity> oddities_;
  std::vector<Coverage> coverage_;
};

}  // namespace loopwright::road
