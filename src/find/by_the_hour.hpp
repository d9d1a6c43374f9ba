// What the clock keeps from a wish, gathered while its shortfall is explained.
//
//   ByTheHour clock(ground);   const std::string shut = clock.blame(worth);   // "Fore Street is shut …"
//   shortfall.better_starts = clock.better_starts();
#pragma once

#include "find/in_the_way.hpp"

namespace loopwright::find {

/// How many minutes a drive takes on a ground; empty: it can't be driven there.
using Length = std::function<std::optional<int>(const Ground&)>;

/// Rules: with a length, better starts leave the blamed open for as long as the drive takes without
/// them; else for the minutes of the wish.
class ByTheHour {
 public:
  explicit ByTheHour(const Ground& ground, Length length = {})
      : ground_(ground), length_(std::move(length)) {}
  /// What is in the way of this, in words; empty: the clock is not to blame.
  std::string blame(Worth worth);
  /// Something else that hangs on the start: `fits` tells at which starts it may be had, `worth` is 1 on
  /// the ground of one at which it is. Rules: what `fits` refers to outlives this.
  void put_off(Worth worth, std::function<bool(const Instant& start)> fits);
  /// Starts at which nothing that was blamed is in the way.
  [[nodiscard]] std::vector<Instant> better_starts() const;
  /// Gives a shortfall its better starts; its reason says so when the clock is to blame, and none is.
  void give_starts(wish::Shortfall& shortfall) const;

 private:
  struct Blamed {
    Worth worth;
    InTheWay way;
  };
  [[nodiscard]] std::optional<int> minutes_without(const std::vector<Wall>& blamed) const;

  const Ground& ground_;
  const Length length_;
  std::vector<Blamed> blamed_;
};

}  // namespace loopwright::find
