// The part of a drive between two of its vertices, looked for anew so that what it passes is worth most.
//
//   PartSearch search(hunt);   const auto ways = search.best(part, most_labels);
//
// Meaning: a pass of worth is begun where its way begins, its spacing after the last one; the k-th of a place and
// movement is worth less. Road of quiet streets that is driven again takes from the worth, and none is driven more
// often than it may be. Stops are not looked at: whoever takes a way scores the whole drive.
// Rules: one thread; only wants for as many as fit, at most `most_goals` of them. Work is counted in labels, so the
// same part always gets the same ways.
// Why not ways round added to legs: a way that only passes the time is longer than the wait it is for; here the next
// pass is chosen with the way to it.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/reach/local_graph.hpp"

namespace loopwright::find {

inline constexpr std::size_t most_goals = 3;

/// A pass of worth: for which goal (row of PartSearch::goals), and which of its repeats it is one of.
struct WorthyPass {
  std::size_t goal = 0;
  PlaceId place;
  road::Movement movement = road::Movement::none;
};

/// From the end of `from` to the end of `to`; times since then.
struct Part {
  Vertex from = 0, to = 0;
  std::int64_t most_ms = 0, now_ms = 0;  ///< what it may take, and what it takes now
  /// What it is worth now, in milli-units, road driven again taken off.
  std::int64_t to_beat = 0;
  /// By goal: when the next pass has worth again (none before: 0), when the first behind the part begins, counted from
  /// the part's end (may be negative), and what it is worth; 0: there is none.
  std::array<std::int64_t, most_goals> ready_ms{}, next_ms{}, next_worth{};
  std::vector<WorthyPass> others = {};  ///< passes of worth of the rest of the drive
  std::vector<int> drives = {};         ///< of the rest, by dense piece
};

class PartSearch {
 public:
  /// As much worth in less time is better only when it saves so much.
  static constexpr std::int64_t least_saved_ms = 1000;

  explicit PartSearch(const Hunt& hunt);

  /// Rows of the wish's wants that are goals; empty when there are none, or too many.
  [[nodiscard]] const std::vector<std::size_t>& goals() const { return goals_; }
  [[nodiscard]] std::int64_t spacing_ms(std::size_t goal) const { return spacing_ms_[goal]; }
  /// The few ways that are worth most, the best first, both ends included; empty: none is worth more than now, or as
  /// much in less time. Rules: there are goals; to isn't from.
  std::vector<std::vector<Vertex>> best(Part part, std::size_t most_labels);
  /// How many labels the last search made.
  [[nodiscard]] std::size_t labels() const { return labels_.size(); }

 private:
  static constexpr std::uint32_t none = ~std::uint32_t{0};
  /// A way so far, up to the end of its last vertex.
  struct Label {
    Vertex at = 0;
    std::int32_t ms = 0, worth = 0;
    std::array<std::int32_t, most_goals> ready_ms{};
    std::uint32_t before = none;  ///< label that this one goes on from
    std::uint32_t counted =
        none;                     ///< the last one on its way that drove a pass of worth, or itself
    std::uint32_t quiet = none;   ///< row of quiet_: the last quiet street on its way
    std::uint32_t chance = none;  ///< row of chances_ that was driven to get here
  };
  using Waits = std::array<std::int32_t, most_goals>;
  /// What a label that was kept is compared by.
  struct Kept {
    std::int32_t worth = 0;
    Waits waits{};
    std::uint32_t same_vertex = none;  ///< row of kept_
  };
  struct Quiet {
    std::uint32_t piece = 0;
    std::uint32_t before = none;  ///< row of quiet_
  };
  /// A candidate as the goals see it.
  struct Worthy {
    std::uint32_t candidate = 0, goal = 0, group = 0;
  };

  void measure_to_chances();
  void begin(Part part);
  [[nodiscard]] bool is_hopeful(const Label& label) const;
  void push(Label label);
  void keep(std::uint32_t row);
  void go_on(std::uint32_t row);
  void drive_chances(std::uint32_t row);
  [[nodiscard]] bool drive_onto(Vertex v, std::uint32_t before, std::int32_t& worth) const;
  [[nodiscard]] std::int64_t worth_again(std::uint32_t before, const Worthy& chance) const;
  [[nodiscard]] std::int64_t most_beyond(const Label& label) const;
  [[nodiscard]] Waits waits(const Label& label) const;
  [[nodiscard]] static bool is_no_worse(const Kept& one, const Kept& other);
  [[nodiscard]] bool is_dominated(const Label& label) const;
  void note_end(std::uint32_t row);
  [[nodiscard]] std::vector<Vertex> way_to(std::uint32_t row) const;

  const Hunt& hunt_;
  std::vector<std::size_t> goals_;
  std::array<std::int64_t, most_goals> spacing_ms_{};
  std::vector<Worthy> chances_;              ///< by the vertex they begin on
  std::vector<std::uint32_t> chance_first_;  ///< of each vertex, in chances_
  std::vector<WorthyPass> groups_;
  std::array<std::vector<std::int32_t>, most_goals> to_chance_ms_;  ///< by goal and vertex
  std::vector<std::uint8_t> rest_has_;   ///< by group: passes of worth of the rest
  std::vector<std::uint8_t> place_has_;  ///< by group: the same of its place, whatever the movement
  reach::LocalSweep out_, back_;
  // Lists are apart from the labels, which are too large to go through them quickly.
  std::vector<Label> labels_;
  std::vector<Kept> kept_;
  std::vector<Quiet> quiet_;
  std::vector<std::uint64_t> queue_;  ///< by time: a heap
  std::vector<std::uint32_t> head_;   ///< by vertex: row of kept_
  std::vector<Vertex> touched_;
  struct End {
    std::int64_t worth = 0;
    std::uint32_t row = none;
  };
  std::vector<End> ends_;
  Part part_;
};

}  // namespace loopwright::find
