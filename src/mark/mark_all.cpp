// All marking rules, in the order in which they need each other: limits and widths first; rings,
// minis and signals before the junctions that must not lie in one; the times' controls last.
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

void mark_all(Draft& draft) {
  mark_piece_facts(draft);
  mark_roundabouts(draft);
  mark_minis(draft);
  mark_signals(draft);
  mark_crossings(draft);
  mark_level_crossings(draft);
  mark_junctions(draft);
  mark_limit_changes(draft);
  mark_runs(draft);
  mark_controls(draft);
  draft.finish();
}

}  // namespace loopwright::mark
