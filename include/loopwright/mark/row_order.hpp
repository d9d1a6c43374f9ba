// The order in which an area keeps its chances and run facts.
#pragma once

#include <tuple>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

inline auto order_of(const road::Chance& c) {
  return std::tuple(c.entry, c.place, c.exit, c.kind, c.movement, c.exit_number);
}

/// The same, and among equals the one whose path was added first: a stable sort would take memory for as many again.
inline bool comes_before(const road::Chance& a, const road::Chance& b) {
  if (a.entry != b.entry) return a.entry < b.entry;  // tells most of them apart
  return std::tuple_cat(order_of(a), std::tuple(a.path_first)) <
         std::tuple_cat(order_of(b), std::tuple(b.path_first));
}

inline auto order_of(const road::RunFact& f) {
  return std::tuple(f.stretch, f.kind);
}

}  // namespace loopwright::mark
