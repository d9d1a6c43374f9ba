// Makes one plan after another for a wish; each try is another throw of the dice.
//
//   Builder builder(hunt);   Plan plan = builder.build(seed);
//
// Rules: one thread; the same hunt, seed and liking give the same plan.
#pragma once

#include <cstdint>
#include <vector>

#include "find/lane_guide.hpp"
#include "find/passage_graph.hpp"
#include "find/plan.hpp"
#include "find/times.hpp"
#include "loopwright/base/dice.hpp"
#include "loopwright/reach/slow_ways.hpp"

namespace loopwright::find {

/// What earlier loops used, so that an alternative goes elsewhere.
struct Liking {
  std::vector<std::int32_t> extra_ms;  ///< by vertex
  std::vector<PlaceId> used_places;    ///< ascending
};

class Builder {
 public:
  static constexpr int usual_improvements = 24;  // ours, tried on Newport
  /// improvements: how often a plan is changed in search of a better one.
  explicit Builder(const Hunt& hunt, int improvements = usual_improvements);
  /// A plan that meets as much of the wish as this try can.
  Plan build(std::uint64_t seed, const Liking& liking);
  /// A plan along a walk of the passage graph (problem: that it was found in), by the legs that cost least with the courtesy (by vertex), its
  /// waits driven as ways round; quiet streets may be driven too often.
  Plan lay_along(const PassageGraph& graph, const circuit::Problem& problem,
                 const circuit::Walk& walk, std::span<const std::int32_t> courtesy_ms);
  /// Brings a plan within the caps and the minutes, as far as it can.
  void bring_within(Plan& plan, const Liking& liking);
  /// Betters such a plan.
  void improve(Plan& plan, const Liking& liking);
  /// The shortest plan this try finds for the counts alone, not filled up to the window.
  Plan build_shortest(std::uint64_t seed);

 private:
  // insert.cpp: stops for what is wanted
  struct Insertion {
    std::uint32_t candidate = 0;
    std::size_t gap = 0;
    std::int64_t more_ms = -1;  ///< negative: none
    std::size_t want = 0;       ///< that it is for
  };
  /// A candidate that turned out not to help a want.
  struct Useless {
    std::size_t want = 0;
    std::uint32_t candidate = 0;
    friend bool operator==(const Useless&, const Useless&) = default;
  };
  void insert_counts(Plan& plan, const Liking& liking);
  void insert_max(Plan& plan);
  void insert_takes(Plan& plan);
  bool insert_take(Plan& plan, const Take& take);
  Insertion cheapest(const Plan& plan, std::size_t want, const Liking& liking);
  Insertion most_worth(const Plan& plan, std::size_t want, std::int64_t room_ms);
  std::int64_t insertion_ms(const Plan& plan, const Candidate& candidate, std::size_t gap);
  void insert(Plan& plan, const Insertion& where);
  void keep_if_useful(Plan& plan, const Insertion& where, int needed);
  bool in_time(const Plan& plan, const Leeway& leeway, const Insertion& where);

  // along.cpp: a walk on the roads
  [[nodiscard]] std::vector<Vertex> courteous_leg(Vertex from, Vertex to,
                                                  std::span<const std::int32_t> courtesy_ms);
  std::vector<Vertex> lay_leg(Vertex from, Vertex to, std::span<const std::int32_t> courtesy_ms);
  static std::span<const Vertex> between(const std::vector<Vertex>& leg, bool from_door,
                                         bool to_door);
  void use(std::span<const Vertex> path);
  [[nodiscard]] bool is_worn_out(Vertex v) const;
  [[nodiscard]] std::int64_t path_ms(std::span<const Vertex> path) const;
  [[nodiscard]] std::int64_t begin_to_begin_ms(const Plan& plan, std::size_t stop) const;
  [[nodiscard]] std::vector<std::int64_t> waits_along(const Plan& plan,
                                                      const circuit::Problem& problem,
                                                      const circuit::Walk& walk) const;
  void wait_before(Plan& plan, std::size_t stop, std::int64_t least_ms,
                   std::span<const std::int32_t> courtesy_ms);
  bool go_slowly(Plan& plan, std::size_t leg, std::int64_t more_ms, std::int64_t room_ms,
                 std::span<const std::int32_t> courtesy_ms);
  void avoid_worn_out(std::span<const std::int32_t> courtesy_ms);

  // fill.cpp: ways round that use up the minutes, and less road driven twice
  void fill(Plan& plan, const Liking& liking);
  bool add_way_round(Plan& plan, std::size_t leg, std::int64_t least_ms, std::int64_t most_ms);
  Vertex choose_via(const Plan& plan, std::size_t leg, std::int64_t least_ms, std::int64_t most_ms);
  bool drop_way_round(Plan& plan);
  bool reroute(Plan& plan, std::size_t leg);
  // quiet.cpp: no quiet street more often than its cap
  void spare_quiet_streets(Plan& plan, const Liking& liking);
  bool go_round_elsewhere(Plan& plan, std::size_t leg, const Liking& liking);
  void leave_out_stop(Plan& plan, std::size_t stop);
  void learn_used(const Plan& plan, std::size_t except_leg, const Liking& liking);
  [[nodiscard]] double driven_again_m(std::span<const Vertex> path);
  [[nodiscard]] double welcome_m_on(std::span<const Vertex> path);

  const Hunt& hunt_;
  const int improvements_;
  Times times_;
  LaneGuide guide_;
  std::vector<Useless> useless_;  // in the plan at hand
  reach::LocalSweep out_, back_;
  reach::SlowWays slow_;
  Dice dice_{0};
  std::vector<Vertex> counted_entries_;  // of candidates for wants with a number
  std::vector<std::int32_t> extra_ms_;   // by vertex, for the leg at hand
  std::vector<std::uint8_t> used_;       // by dense piece, what else is driven
  std::vector<std::uint32_t> seen_;      // by dense piece, stamps for driven_again_m
  std::uint32_t stamp_ = 0;
};

}  // namespace loopwright::find
