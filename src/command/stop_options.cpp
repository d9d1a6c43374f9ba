// 1. A new kind brings a brief of the usual length; a brief needs a new kind.
// 2. The stops must leave minutes to drive.
#include "command/stop_options.hpp"

#include <algorithm>

#include "command/arguments.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::command {
namespace {

constexpr Between stop_minutes{1, 30};
constexpr int usual_brief = 4;     // DEVELOPERS.md, planned stops
constexpr int least_driving = 10;  // minutes; as least as a lesson may have

road::Kind new_kind(const std::string& text) {
  const wish::Want want = wish::read_want(text);
  if (want == wish::Want{.kind = want.kind}) return want.kind;
  throw UsageError("--new takes a kind alone, such as roundabout, not '" + text + "'");
}

}  // namespace

void read_stops(wish::Wish& wish, const StopTexts& texts) {
  wish::PlannedStops& stops = wish.stops;
  for (const std::string& text : texts.new_kinds) {
    const road::Kind kind = new_kind(text);
    if (std::find(stops.new_kinds.begin(), stops.new_kinds.end(), kind) == stops.new_kinds.end())
      stops.new_kinds.push_back(kind);
  }
  if (!stops.new_kinds.empty()) stops.brief_minutes = usual_brief;
  if (!texts.brief.empty()) {
    if (stops.new_kinds.empty())
      throw UsageError("--brief is held before the first pass of a new kind: name one with --new");
    stops.brief_minutes = whole_number("--brief", texts.brief, stop_minutes);
  }
  if (!texts.talk.empty()) stops.talk_minutes = whole_number("--talk", texts.talk, stop_minutes);
  if (!wish.minutes) return;
  const auto kept = static_cast<int>(wish::kept_for_stops_s(wish) / 60);
  if (kept > 0 && *wish.minutes - wish.reserve_minutes - kept < least_driving)
    throw UsageError("the planned stops take " + std::to_string(kept) +
                     " minutes, which leaves fewer than " + std::to_string(least_driving) +
                     " to drive: give more --minutes or plan fewer stops");
}

}  // namespace loopwright::command
