// The stretch-like kinds: which stretches belong to them, and what says so.
//
// Rules: private to mark. Needs the piece facts.
#pragma once

#include <span>
#include <vector>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

/// One stretch that belongs to a kind. Its place isn't known yet.
struct RunMember {
  StretchId stretch;
  road::Kind kind = road::Kind::narrow_road;
  road::Confidence confidence = road::Confidence::certain;
  TextId tag;
};

/// Kinds that make one run together: narrow and single-track roads; each other kind by itself.
struct RunFamily {
  road::Kind kind;                 ///< the widest of them
  std::vector<RunMember> members;  ///< by stretch, each once
  TextId name = {};  ///< of its runs (a school's); none: they are called by their road
};

/// Every family, in the order of the catalogue.
std::vector<RunFamily> run_families(Draft& draft);

}  // namespace loopwright::mark
