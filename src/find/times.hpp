// Least driving times from and to the ends of stops, kept between tries of the same wish.
//
//   const FromTimes& f = times.from(exit);   f.ms[v];  f.path(v);
//
// Rules: a reference is good until the next call of the same function (old entries are dropped when
// the store is full). Negative time: not within the window.
#pragma once

#include <unordered_map>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct FromTimes {
  std::vector<std::int32_t> ms;  ///< from the end of the source to the end of v
  std::vector<Vertex> parent;
  /// From the source to v, both included.
  [[nodiscard]] std::vector<Vertex> path(Vertex v) const;
};

class Times {
 public:
  explicit Times(const Hunt& hunt);
  /// Key for home (from) and for the end (to).
  static constexpr Vertex door = reach::LocalGraph::none;

  const FromTimes& from(Vertex source);
  /// From the START of v to the end of the target; to the end of the drive for `door`.
  const std::vector<std::int32_t>& to(Vertex target);
  /// Time of a leg between the end of `source` and the end of `target`; -1 when not within reach.
  std::int64_t leg(Vertex source, Vertex target);
  /// The leg itself; the last vertex is a goal when target is the door.
  std::vector<Vertex> leg_path(Vertex source, Vertex target);

 private:
  [[nodiscard]] std::vector<reach::LocalSeed> seeds_at(Vertex source) const;
  const Hunt& hunt_;
  reach::LocalSweep sweep_;
  std::size_t most_entries_;
  std::unordered_map<Vertex, FromTimes> from_;
  std::unordered_map<Vertex, std::vector<std::int32_t>> to_;
};

}  // namespace loopwright::find
