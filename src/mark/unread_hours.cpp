// Every rule that hangs on hours is looked at once for each object and text: access, gates, limits,
// bus lanes, turns, bans on waiting. What can't be read may be in force at any time, so a lesson
// keeps out for good: worth a look by whoever mends the map. States of the road ("wet", "flashing")
// are read; nobody knows them beforehand, which is no fault of the map.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

class UnreadHours {
 public:
  explicit UnreadHours(Draft& draft) : draft_(draft) {}
  void look(const OsmObject& object, TextId hours, TextId source);
  [[nodiscard]] OsmObject way_of(PieceId piece) const {
    return {draft_.tables.pieces[piece.index()].way, ObjectType::way, {}};
  }

 private:
  [[nodiscard]] bool readable(TextId hours);

  Draft& draft_;
  std::map<TextId, bool> readable_;
  std::set<std::pair<std::int64_t, TextId>> told_;
};

bool UnreadHours::readable(TextId hours) {
  const auto [row, is_new] = readable_.try_emplace(hours, true);
  if (is_new) row->second = hours::Timetable(draft_.text(hours)).readable();
  return row->second;
}

void UnreadHours::look(const OsmObject& object, TextId hours, TextId source) {
  if (draft_.text(hours).empty() || readable(hours)) return;
  if (!told_.emplace(object.id, source).second) return;
  draft_.report.odd(object, "hours can't be read", draft_.text(source));
}

}  // namespace

void report_unread_hours(Draft& draft) {
  UnreadHours unread(draft);
  const road::Tables& tables = draft.tables;
  for (const road::TimedRule& rule : tables.timed_rules)
    unread.look(unread.way_of(rule.stretch.piece()), rule.text, rule.source);
  for (const road::BusLane& lane : tables.bus_lanes)
    unread.look(unread.way_of(lane.piece), lane.hours, lane.source);
  for (const road::TurnRule& rule : tables.turn_rules)
    unread.look({rule.relation, ObjectType::relation, {}}, rule.condition, rule.text);
  for (const road::KerbBan& ban : tables.kerb_bans)
    unread.look(unread.way_of(ban.stretch.piece()), ban.hours, ban.source);
  const auto is_told = [&](const road::PullUp& place) {
    return std::ranges::binary_search(tables.kerb_bans, place.stretch, {}, &road::KerbBan::stretch);
  };
  for (const road::PullUp& place : tables.pull_ups)
    if (!is_told(place))
      unread.look(unread.way_of(place.stretch.piece()), place.hours, place.hours);
}

}  // namespace loopwright::mark
