// All marking rules, in the order in which they need each other: limits and widths first; rings,
// minis and signals before the junctions that must not lie in one; the times' controls once all of them are there. What
// was found at junctions is counted for the report; runs and limit changes count themselves.
#include <algorithm>
#include <string>

#include "loopwright/base/at_once.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

void count_junctions(const Draft& draft) {
  for (const road::Kind kind : road::all_kinds()) {
    const bool junction = road::form_of(kind) == road::KindForm::junction;
    if (!junction || kind == road::Kind::limit_change) continue;
    const std::string name(road::name(kind));
    draft.report.count("places: " + name,
                       std::ranges::count(draft.tables.places, kind, &road::Place::kind));
    draft.report.count("ways through: " + name,
                       std::ranges::count(draft.tables.chances, kind, &road::Chance::kind));
  }
}

/// Side by side: the kerbs add no place and ask for no control, the controls add no text and ask for none.
void mark_kerb_and_controls(Draft& draft) {
  const road::Roads graph = draft.roads();
  at_once(
      [&] {
        mark_pull_ups(draft);
        mark_kerb_bans(draft);
      },
      [&] { mark_controls(draft, graph); });
  draft.forget_bearings();
}

}  // namespace

void mark_all(Draft& draft) {
  mark_piece_facts(draft);
  mark_gradients(draft);
  mark_roundabouts(draft);
  mark_minis(draft);
  mark_signals(draft);
  mark_crossings(draft);
  mark_level_crossings(draft);
  mark_junctions(draft);
  mark_calming(draft);
  mark_pinch_points(draft);
  mark_fords(draft);
  mark_tram_crossings(draft);
  count_junctions(draft);
  mark_limit_changes(draft);
  mark_runs(draft);
  mark_bus_stops(draft);
  mark_kerb_and_controls(draft);
  mark_manoeuvres(draft);
  report_unread_hours(draft);
  mark_idle_rules(draft);
  mark_addresses(draft);
  mark_lane_marks(draft);
  mark_landmarks(draft);
  count_coverage(draft);
  draft.finish();
}

}  // namespace loopwright::mark
