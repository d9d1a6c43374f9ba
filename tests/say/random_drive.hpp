// Drives at random, for what must hold of every drive.
#pragma once

#include <algorithm>
#include <cstdint>
#include <random>

#include "loopwright/find/passes.hpp"
#include "loopwright/reach/reach.hpp"
#include "say/eyes.hpp"

namespace loopwright::test {

/// A walk of legal turns, so many stretches long; the same for the same seed. It keeps off service
/// roads, and no ring is driven round twice. Rules: the map has a road that a drive can start on.
class RandomDrive {
 public:
  RandomDrive(const road::Roads& roads, std::uint32_t seed) : roads_(roads), random_(seed) {}

  find::Drive of(std::size_t stretches) {
    while (states_.size() < stretches || on_ring(states_.back())) step();
    find::Drive drive{states_, 0, 0};
    drive.start_m = roads_.piece(roads_.stretch_of(states_.front())).length_m / 2;
    drive.end_m = roads_.piece(roads_.stretch_of(states_.back())).length_m / 2;
    return drive;
  }

  /// The same, then home by the quickest way to where it began.
  find::Drive loop_of(std::size_t stretches, const reach::Costs& costs) {
    constexpr std::int64_t three_hours_ms = 3 * 3600 * 1000;
    reach::Sweep sweep(roads_);
    do {
      states_.clear();
      of(stretches);
      const reach::Seed here{states_.back(), 0};
      sweep.run({&here, 1}, costs, three_hours_ms);
    } while (!sweep.reached(states_.front()));
    const std::vector<StateId> home = sweep.path(states_.front());
    states_.insert(states_.end(), home.begin() + 1, home.end());
    find::Drive drive{states_, 0, 0};
    drive.start_m = drive.end_m = piece(states_.front()).length_m / 2;
    return drive;
  }

 private:
  void step() {
    std::vector<StateId> ways;
    if (!states_.empty())
      for (const road::Turn& turn : roads_.turns_from(states_.back()))
        if (!is_service(turn.to) && !round_again(turn.to) && !is_way_back(turn.to))
          ways.push_back(turn.to);
    if (!ways.empty()) return states_.push_back(ways[pick(ways.size())]);
    StateId start;
    do start = StateId{pick(roads_.stretch_count())};
    while (!roads_.drivable(roads_.stretch_of(start)) || is_service(start) || on_ring(start));
    states_ = {start};
  }

  /// On the road itself one turns round only where it ends; where the map has a road twice, on
  /// neither of the two.
  [[nodiscard]] bool is_way_back(StateId next) const {
    const StretchId back = roads_.stretch_of(states_.back()).back();
    return roads_.stretch_of(next) != back && look_the_same(roads_, roads_.stretch_of(next), back);
  }

  std::size_t pick(std::size_t n) { return static_cast<std::size_t>(random_() % n); }
  [[nodiscard]] const road::Piece& piece(StateId s) const {
    return roads_.piece(roads_.stretch_of(s));
  }
  [[nodiscard]] bool on_ring(StateId s) const {
    return (piece(s).flags & road::piece_flag::ring) != 0;
  }
  [[nodiscard]] bool is_service(StateId s) const {
    return piece(s).road_class == road::RoadClass::service;
  }
  [[nodiscard]] bool round_again(StateId next) const {
    for (auto it = states_.rbegin(); it != states_.rend() && on_ring(*it); ++it)
      if (*it == next) return true;
    return false;
  }

  const road::Roads& roads_;
  std::mt19937 random_;
  std::vector<StateId> states_;
};

}  // namespace loopwright::test
