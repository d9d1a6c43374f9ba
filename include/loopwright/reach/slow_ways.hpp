// Ways between two places that take at least a given time: until the next pass may begin, a car can't stand still.
//
//   SlowWays ways(graph);   ways.run({.from = exit, .most_ms = 180'000, .back = &to_entries});
//   ways.lengths(entry);    ways.way(entry, 95'000);
//
// Meaning of times: from the end of `from` (from its beginning: counted from there) to the end of a vertex.
// Rules: scratch for one thread; a run only comes to what can still come to what will be asked for, within most_ms.
// Why two classes: a drive wants a way that one would drive, with no stretch twice; a bound needs to know that no
// drive at all, however odd, takes a time that isn't among the lengths.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <span>
#include <vector>

#include "loopwright/reach/local_graph.hpp"

namespace loopwright::reach {

struct SlowFrom {
  LocalGraph::Vertex from = 0;
  bool at_end =
      true;  ///< begins at the end of `from`, which itself may be come back to; else at its beginning
  std::int64_t most_ms = 0;
  /// Ran backwards from the ends of all that will be asked for, within most_ms: seeds with their own time along.
  const LocalSweep* back = nullptr;
  std::span<const std::int32_t> extra_ms = {};  ///< by vertex, as in LocalLimits; empty: none
  /// After so many times that a way was gone on with, a run ends with the step of time it is in.
  std::int64_t most_work = std::numeric_limits<std::int64_t>::max();
};

/// Ways that cost little, of each step of time one, without a stretch twice (but the first).
class SlowWays {
 public:
  explicit SlowWays(const LocalGraph& graph);
  ~SlowWays();
  SlowWays(SlowWays&&) noexcept;

  void run(const SlowFrom& from);
  /// What takes so long or longer isn't known: most_ms, or less when there was too much work.
  [[nodiscard]] std::int64_t searched_ms() const;
  /// Times of the ways, up to searched_ms, than which none of them that takes longer costs as little; ascending.
  [[nodiscard]] std::vector<std::int32_t> lengths(LocalGraph::Vertex to) const;
  /// The way of least cost that takes at least so long, in driving order, both ends included; empty: none was found.
  [[nodiscard]] std::vector<LocalGraph::Vertex> way(LocalGraph::Vertex to,
                                                    std::int64_t least_ms) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

struct LengthSpan {
  std::int32_t from_ms = 0, to_ms = 0;  ///< both included
};

/// Spans in which the length of every drive lies. Lengths of a step of time are taken together, from the least to
/// the greatest: what lies between need not be some drive's.
class AnyLengths {
 public:
  explicit AnyLengths(const LocalGraph& graph);
  ~AnyLengths();
  AnyLengths(AnyLengths&&) noexcept;

  void run(const SlowFrom& from);
  [[nodiscard]] std::int64_t searched_ms() const;  ///< as above
  /// Ascending, apart from each other; up to searched_ms.
  [[nodiscard]] std::vector<LengthSpan> lengths(LocalGraph::Vertex to) const;

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::reach
