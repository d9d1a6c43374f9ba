// The ledger: how often quiet streets are driven, over all pupils, so that no street's residents bear too much.
//
// Rules: of a stretch of road between two nodes of a way, in either direction. A plan counts from when it is made. A
// pupil's lines stay when the pupil is erased, without saying whose they are, but for those near the door, which go.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::book {

/// What one drive uses of a quiet street. Nodes and way are OSM's.
struct StreetDriven {
  std::int64_t way = 0, node_a = 0, node_b = 0;  ///< node_a < node_b
  int times = 1;
  bool near_door = false;  ///< so near to where the drive begins or ends that it tells of the door
  friend auto operator<=>(const StreetDriven&, const StreetDriven&) = default;
};

/// What a lesson on that day must know: for each way the most that any part of it was driven on that day, and in the
/// 30 days that end with it; ascending by way. leaving_out: a lesson's row that doesn't count, since it is planned
/// anew; 0: none.
struct LedgerAsk {
  Date day;
  std::string_view code = {};  ///< with number: the lesson that doesn't count
  int number = 0;
};
std::vector<wish::StreetUse> street_use(const Book& book, const LedgerAsk& ask);

/// A way and its use in some days; by use, the most first.
struct StreetTotal {
  std::int64_t way = 0;
  int times = 0;    ///< the most that any part of it was driven
  int lessons = 0;  ///< on so many drives
  Date last;
};
/// first, last: days, both counted.
std::vector<StreetTotal> most_used(const Book& book, Date first, Date last);

/// How often a part of a quiet street may be driven in a day, and in 30 days, over all pupils (src/rules/caps.txt).
struct LedgerCaps {
  int day = 0, month = 0;
};
LedgerCaps ledger_caps();

}  // namespace loopwright::book
