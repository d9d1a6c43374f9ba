// The passes that a wish wants as a problem without roads (circuit/problem.hpp), and what its rows mean
// on the roads.
//
//   PassageGraph graph(hunt);
//   Plan plan = builder.build_along(graph, circuit::search(graph.problem(), work), liking);
//
// Rules: times begin `shift_ms` early, so that no leg is negative: most_ms has it on top. What the
// problem can't know (bus lanes at their hours, caps of quiet streets, further passes on the legs) the
// score of the finished drive tells. A bound of the problem holds for every drive of the wish while
// `complete`: each drive's wanted passes, in the order they are begun, are a walk of it.
// Why legs may drive through other wanted places: what is passed there isn't counted, which only
// makes walks less worth than they are; with the spacing it often can't be.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/circuit/problem.hpp"

namespace loopwright::find {

class PassageGraph {
 public:
  explicit PassageGraph(const Hunt& hunt);

  [[nodiscard]] const circuit::Problem& problem() const { return problem_; }
  /// What a pass drives: the whole first vertex, and up to the last. It is left at the end of it when
  /// that is the only one, else at its beginning.
  [[nodiscard]] std::span<const Vertex> way(std::uint32_t pass) const { return ways_[pass]; }
  /// A candidate that the pass is (rows of hunt.candidates), of a want that it serves.
  [[nodiscard]] std::uint32_t candidate(std::uint32_t pass) const { return candidates_[pass]; }
  [[nodiscard]] std::size_t want(std::uint32_t pass) const { return wants_[pass]; }
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

  void choose(std::vector<std::uint32_t>& rows) const;
  void add_goals();
  void add_ways(std::span<const std::uint32_t> rows);
  void add_pass(const Way& way, const Exit& exit);
  [[nodiscard]] std::vector<std::uint32_t> groups_on(std::span<const Vertex> path);
  [[nodiscard]] std::uint32_t group_of(std::size_t want, const Candidate& candidate);
  std::uint32_t entry_row(Vertex vertex);
  std::uint32_t exit_row(const Exit& exit);
  [[nodiscard]] std::int64_t inner_ms(std::span<const Vertex> path, bool at_end) const;
  void measure_legs();
  [[nodiscard]] std::int64_t least_home_ms(const reach::LocalSweep& sweep) const;
  void measure_from(reach::LocalSweep& sweep, std::uint32_t exit);

  const Hunt& hunt_;
  circuit::Problem problem_;
  std::vector<std::vector<Vertex>> ways_;
  std::vector<std::uint32_t> candidates_;
  std::vector<std::size_t> wants_;
  std::vector<std::vector<std::uint32_t>>
      of_entry_;                         ///< chosen candidates by the vertex they begin on
  std::vector<std::int32_t> entry_row_;  ///< by vertex; negative: none
  std::vector<Vertex> entries_;
  std::vector<Exit> exits_;
  std::vector<std::vector<std::uint32_t>> group_rows_;  ///< by want: rows of its groups
  std::vector<std::uint32_t> place_of_group_;
  std::vector<std::int64_t> home_ms_, end_ms_;  ///< by vertex: to its beginning, from its beginning
  std::int64_t shift_ms_ = 0;
  bool complete_ = true;
};

}  // namespace loopwright::find
