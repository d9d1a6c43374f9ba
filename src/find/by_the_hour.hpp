// What the clock keeps from a wish, gathered while its shortfall is explained.
//
//   ByTheHour clock(ground);   const std::string shut = clock.blame(worth);   // "Fore Street is shut …"
//   shortfall.better_starts = clock.better_starts();
#pragma once

#include "find/in_the_way.hpp"

namespace loopwright::find {

class ByTheHour {
 public:
  explicit ByTheHour(const Ground& ground) : ground_(ground) {}
  /// What is in the way of this, in words; empty: the clock is not to blame.
  std::string blame(Worth worth);
  /// Something else that hangs on the start: `fits` tells at which starts it may be had, `worth` is 1 on
  /// the ground of one at which it is. Rules: what `fits` refers to outlives this.
  void put_off(Worth worth, std::function<bool(const Instant& start)> fits);
  /// Starts at which nothing that was blamed is in the way.
  [[nodiscard]] std::vector<Instant> better_starts() const;

 private:
  struct Blamed {
    Worth worth;
    InTheWay way;
  };
  const Ground& ground_;
  std::vector<Blamed> blamed_;
};

}  // namespace loopwright::find
