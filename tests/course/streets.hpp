// The ledger of quiet streets once more, by the roads that lessons drive: what room book and the search promise of it.
//
//   StreetTally tally;   for (const std::string& fault : tally.add({roads, wish, loop}, day)) …
//
// Rules: a piece of quiet street is driven twice in a lesson at most, six times on a day and twenty times in thirty days
// over all pupils; within 500 m of a lesson's own door only the first counts for it. These are the numbers the project
// promises (issue, "Value of a loop"), written down here anew and not read from its tables.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

struct DrivenLoop {
  const road::Roads& roads;
  const wish::Wish& wish;
  const wish::Loop& loop;
};

class StreetTally {
 public:
  /// Counts the loop as driven on that day; what it breaks, in words.
  std::vector<std::string> add(const DrivenLoop& driven, Date day);
  /// It wasn't driven after all.
  void take_back(const DrivenLoop& driven, Date day);
  /// The most that any piece was driven on a day and in thirty days, near doors too.
  [[nodiscard]] int most_a_day() const { return most_a_day_; }
  [[nodiscard]] int most_a_month() const { return most_a_month_; }

 private:
  struct Piece {
    std::int64_t way = 0, node_a = 0, node_b = 0;
    friend auto operator<=>(const Piece&, const Piece&) = default;
  };
  struct Use {
    int times = 0;
    bool near_door = false;
  };
  static std::map<Piece, Use> quiet_streets(const DrivenLoop& driven);

  std::map<Piece, std::map<std::int64_t, int>> days_;  ///< by days since 1970
  int most_a_day_ = 0, most_a_month_ = 0;
};

}  // namespace loopwright::test
