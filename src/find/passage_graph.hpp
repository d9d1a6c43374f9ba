// The passes that a wish wants as a problem without roads (circuit/problem.hpp), and what its rows mean
// on the roads.
//
//   PassageGraph graph(hunt);
//   const PassageGraph::Spared spared = graph.courtesy(4);
//   const circuit::Problem problem = graph.problem(spared);
//   const circuit::Walk walk = circuit::search(problem, work);
//   Plan plan = builder.lay_along(graph, problem, walk, spared.courtesy_ms);
//
// Rules: times begin `shift_ms` early, so that no leg is negative: most_ms has it on top. What the
// problem can't know (bus lanes at their hours, caps of quiet streets, further passes on the legs) the
// score of the finished drive tells. A bound of the problem with the quickest legs holds for every drive of
// the wish while `complete`: each drive's wanted passes, in the order they are begun, are a walk of it.
// Why legs may drive through other wanted places: what is passed there isn't counted, which only
// makes walks less worth than they are; with the spacing it often can't be.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/circuit/problem.hpp"
#include "loopwright/reach/core_graph.hpp"
#include "loopwright/reach/slow_ways.hpp"

namespace loopwright::find {

class PassageGraph {
 public:
  /// How much work measuring may take; ours: some seconds at most.
  struct Work {
    /// About as many vertices all searches for legs together may settle; beyond, candidates are left out.
    std::uint64_t settled = 3'000'000;
    /// How often all searches for ways round together may go on with one; beyond, any length is taken for possible. What
    /// all wishes of tools/bench need, but one for every turning of a town, five minutes apart, would take minutes.
    std::int64_t ways_round = 8'000'000;
  };
  explicit PassageGraph(const Hunt& hunt, const Work& work);
  explicit PassageGraph(const Hunt& hunt) : PassageGraph(hunt, Work{}) {}

  /// What a vertex costs on top of its time, so that others are taken, and what counts as its time on top, so
  /// that passes are sought where none need be: both by vertex.
  struct Spared {
    std::vector<std::int32_t> courtesy_ms, toll_ms;
  };
  /// The problem with its legs measured: one sweep for each exit, on two threads. Legs are the quickest; with
  /// something spared those that cost least with it, and where there are many passes only so far as makes
  /// sense between two. Where passes are spaced, with the times that ways round may take (passage_waits.cpp).
  [[nodiscard]] circuit::Problem problem(const Spared& spared = {}) const;
  /// Quiet streets, so many times slower on top, and without a toll.
  [[nodiscard]] Spared courtesy(std::int32_t dislike) const;
  /// What a pass drives: the whole first vertex, and up to the last. It is left at the end of it when
  /// that is the only one, else at its beginning.
  [[nodiscard]] std::span<const Vertex> way(std::uint32_t pass) const { return ways_[pass]; }
  /// A candidate that the pass is (rows of hunt.candidates), of a want that it serves.
  /// -1: it only takes what must be taken, as `want` is -1 then.
  [[nodiscard]] std::int32_t candidate(std::uint32_t pass) const { return candidates_[pass]; }
  [[nodiscard]] std::int32_t want(std::uint32_t pass) const { return wants_[pass]; }
  [[nodiscard]] std::int64_t shift_ms() const { return shift_ms_; }
  /// All candidates of the hunt are in it.
  [[nodiscard]] bool complete() const { return complete_; }

 private:
  struct Exit {
    Vertex vertex = 0;
    bool at_end = false;
    Vertex only = reach::LocalGraph::none;  ///< the only entry that follows; none: any
    friend auto operator<=>(const Exit&, const Exit&) = default;
  };
  struct Way {
    std::vector<Vertex> path;
    std::uint32_t candidate = 0;
  };

  [[nodiscard]] std::vector<std::uint32_t> choose(std::uint64_t settled) const;
  void add_goals();
  void add_ways(std::span<const std::uint32_t> rows);
  void add_pass(const Way& way, const Exit& exit);
  void add_takes();
  void add_take(const Take& take, std::uint32_t goal);
  [[nodiscard]] std::vector<std::uint32_t> groups_on(std::span<const Vertex> path);
  [[nodiscard]] std::uint32_t group_of(std::size_t want, const Candidate& candidate);
  std::uint32_t cap_of(std::size_t want, PlaceId place);
  std::uint32_t entry_row(Vertex vertex);
  std::uint32_t exit_row(const Exit& exit);
  [[nodiscard]] std::int64_t inner_ms(std::span<const Vertex> path, bool at_end) const;
  // passage_legs.cpp
  struct Ends;
  [[nodiscard]] Ends measure_ends(std::span<const std::int32_t> courtesy_ms) const;
  [[nodiscard]] std::int64_t least_home_ms(const reach::LocalSweep& sweep) const;
  void measure_from(reach::CoreSweep& sweep, std::uint32_t exit, const Ends& ends,
                    std::int64_t limit_ms, circuit::Problem& problem) const;
  [[nodiscard]] std::vector<Vertex> begins_and_ends() const;
  // passage_waits.cpp
  struct LongerLimits {
    std::int64_t spacing_ms = 0, most_ms = 0;
    const reach::LocalSweep* back = nullptr;
    std::span<const std::int32_t> extra_ms = {};
    std::int64_t most_work = 0;  ///< for one exit
  };
  [[nodiscard]] circuit::LongerLegs measure_longer(const circuit::Problem& problem,
                                                   const Spared& spared) const;
  [[nodiscard]] std::vector<std::vector<circuit::LongerLegs::Span>> longer_from(
      std::uint32_t exit, const circuit::Problem& problem, const LongerLimits& limits,
      reach::SlowWays* ways, reach::AnyLengths& any) const;

  const Hunt& hunt_;
  const std::int64_t ways_round_;  ///< of Work
  circuit::Problem problem_;       ///< without legs
  std::vector<std::vector<Vertex>> ways_;
  std::vector<std::int32_t> candidates_, wants_;
  std::vector<std::vector<std::uint32_t>>
      of_entry_;                         ///< chosen candidates by the vertex they begin on
  std::vector<std::int32_t> entry_row_;  ///< by vertex; negative: none
  std::vector<Vertex> entries_;
  std::vector<Exit> exits_;
  std::vector<std::vector<std::uint32_t>> group_rows_;  ///< by want: rows of its groups
  std::vector<std::uint32_t> place_of_group_;
  std::int64_t shift_ms_ = 0;
  bool complete_ = true;
};

}  // namespace loopwright::find
