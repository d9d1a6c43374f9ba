// Short easy ways to the end from a loop, for a lesson that must be cut short.
//
//   WaysHome ways(hunt);   ways.add_to(drive, loop);
//
// Rules: one way from the end of the exit of each junction that is turned at or is hard, and from that of
// each place to pull up the loop tells of; none from its last stretch. It is the quickest on roads and turns
// no harder than easy_hardness, else the quickest. What the clock may shut at any minute of the lesson
// isn't used, and a way that would last beyond the lesson is asked again. Stretches whose states aren't
// given aren't used.
// Why by one search: backwards from the end gives the ways from everywhere.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// States from which the end is reached in time, ascending.
std::vector<StateId> states_before_end(const Ground& ground, std::int64_t limit_ms);

class WayWriter;

class WaysHome {
 public:
  /// Within a hunt's reach.
  explicit WaysHome(const Hunt& hunt);
  /// states: each once; the ground outlives it.
  WaysHome(const Ground& ground, std::vector<StateId> states, std::int64_t limit_ms);
  ~WaysHome();
  WaysHome(const WaysHome&) = delete;
  WaysHome& operator=(const WaysHome&) = delete;

  /// Fills loop.ways_home. Rules: the loop is of this drive, its pull_ups told.
  void add_to(const Drive& drive, wish::Loop& loop);

 private:
  struct Layer;
  /// Which roads and turns are left out as hard, most willing to go round first.
  static constexpr std::size_t layer_count = 3;
  Layer& layer(std::size_t k);
  /// The least hard way that is found, the quickest of these; none when there is none.
  [[nodiscard]] std::optional<wish::WayHome> way_from(const WayWriter& writer, StateId state,
                                                      std::size_t row);

  const Ground& ground_;
  std::vector<StateId> states_;
  std::int64_t limit_ms_ = 0;
  std::array<std::unique_ptr<Layer>, layer_count> layers_;
};

}  // namespace loopwright::find
