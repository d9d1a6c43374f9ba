// Numbers of a county's points as map objects.
//
//   const Numbering numbers(county, place, written);  numbers.of(county.lines[0].points[0]);
//
// Rules: in the order the lines name them, then areas, then lone points. A point on a side that the
// neighbour has written already keeps the neighbour's number.
#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <unordered_map>

#include "county/write_map.hpp"

namespace loopwright::county {

namespace map_ids {
inline constexpr std::int64_t first_node = 9'000'000'000'001;
inline constexpr std::int64_t first_way = 9'100'000'000'001;
inline constexpr std::int64_t first_relation = 9'200'000'000'001;
inline constexpr std::int64_t apart = 10'000'000;  ///< from a county's to the next one's
}  // namespace map_ids

class Numbering {
 public:
  /// `written`: the numbers of points on sides that are written; this county's are added.
  Numbering(const Drawing& county, const CountyPlace& place, std::set<std::int64_t>& written);
  /// Rules: a point of the county.
  [[nodiscard]] std::int64_t of(Spot place) const { return numbers_.at(place); }
  /// The points this county has to write, by number.
  [[nodiscard]] const std::map<std::int64_t, Spot>& own() const { return own_; }
  /// How many points are a neighbour's that has written them.
  [[nodiscard]] std::int64_t shared() const { return shared_; }

 private:
  void number(Spot place);
  std::int64_t on_border(Spot place, Side side);

  const CountyPlace& where_;
  std::set<std::int64_t>& written_;
  std::int64_t next_;
  std::int64_t shared_ = 0;
  std::unordered_map<Spot, std::int64_t, SpotHash> numbers_;
  std::map<std::int64_t, Spot> own_;
};

}  // namespace loopwright::county
