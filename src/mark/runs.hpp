// The runs a family of stretches makes: their places, facts and ways in, found anew for a whole area
// or for a corner of it.
//
//   const FoundRuns found = runs_of(roads, family);   // place numbers are rows of found.places
//
// Rules: private to mark. Looks only at the family's stretches and what touches them.
#pragma once

#include "connected.hpp"
#include "run_kinds.hpp"

namespace loopwright::mark {

struct FoundRuns {
  struct Run {
    road::Place row;
    PieceGroup pieces;
  };
  struct WayIn {
    road::Chance chance;
    std::vector<StretchId> path;
  };
  std::vector<Run> places;
  std::vector<road::RunFact> facts;
  std::vector<WayIn> ways_in;
};

FoundRuns runs_of(const road::Roads& roads, const RunFamily& family);

}  // namespace loopwright::mark
