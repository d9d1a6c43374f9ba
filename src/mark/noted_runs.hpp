// The runs that notes make longer, shorter, new, or take away.
#pragma once

#include <map>
#include <vector>

#include "overlay.hpp"
#include "run_kinds.hpp"

namespace loopwright::mark {

/// What notes change of one family of kinds.
struct RunChanges {
  std::vector<RunMember> added;  ///< confidence noted
  std::vector<StretchId> taken;  ///< belong to no kind of the family any more
  std::vector<StretchId>
      other_lanes;  ///< of bus lanes: beside them other hours hold than by the map
};

/// By the widest kind of each family.
using ChangesByFamily = std::map<road::Kind, RunChanges>;

/// The kind whose family a kind of run belongs to: itself, or what it is a special form of.
road::Kind family_of(road::Kind kind);

/// Finds the runs anew that hold or touch a changed stretch.
void change_runs(Overlay& over, const ChangesByFamily& changes);

}  // namespace loopwright::mark
