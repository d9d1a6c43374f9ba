// Places and areas that a wish keeps off, as roads and junctions (DEVELOPERS.md, "Keeping off").
//
//   apply_keep_offs(roads, wish, setting, costs);
//
// Rules: what may be shut at some minute of the lesson is shut for all of it.
#pragma once

#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// What isn't driven: pieces at all, nodes through.
struct KeptOff {
  std::vector<PieceId> pieces;  ///< ascending
  std::vector<NodeId> nodes;
};
KeptOff kept_off(const road::Roads& roads, const wish::KeepOff& keep_off);

/// Some minute of the lesson lies in the hours, or nobody can tell.
bool holds_in_lesson(const wish::Wish& wish, const wish::KeepOff& keep_off,
                     const hours::Setting& setting);

/// A place of the wish, by what an error calls it: "home", "the end".
struct Door {
  std::string name;
  PieceId piece;
};

/// Shuts what the wish keeps off in its lesson. Throws UsageError when a door lies on it.
void apply_keep_offs(const road::Roads& roads, const wish::Wish& wish,
                     const hours::Setting& setting, const std::vector<Door>& doors,
                     reach::Costs& costs);

}  // namespace loopwright::find
