// libFuzzer: any bytes as a recorded drive.
//
// 1. Reading refuses it, or its fixes are in order of time, each on the earth.
// 2. Matched to the town its runs are whole: legs follow each other by legal turns or turn round in the road, lie within
//    their stretches, and their times never go back.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "loopwright/trace/lesson.hpp"
#include "loopwright/trace/match.hpp"
#include "town.hpp"
#include "trial.hpp"

namespace {

using namespace loopwright;
using fuzz::require;

bool joined(const road::Roads& roads, const trace::Leg& from, const trace::Leg& to) {
  const StretchId a = roads.stretch_of(from.state), b = roads.stretch_of(to.state);
  if (to.turned_round) return b == a.back();
  const auto turns = roads.turns_from(from.state);
  return std::any_of(turns.begin(), turns.end(),
                     [&](const road::Turn& turn) { return roads.stretch_of(turn.to) == b; });
}

void check_run(const road::Roads& roads, const trace::Run& run) {
  require(!run.legs.empty() && run.from_s <= run.to_s);
  for (std::size_t k = 0; k < run.legs.size(); ++k) {
    const trace::Leg& leg = run.legs[k];
    require(leg.from_m >= 0 && leg.from_m <= leg.to_m);
    require(leg.to_m <= roads.piece(roads.stretch_of(leg.state)).length_m + 0.5);
    require(leg.enter_s <= leg.leave_s);
    require(k == 0 || joined(roads, run.legs[k - 1], leg));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  trace::Recording recording;
  if (fuzz::refused([&] { recording = trace::read_gpx(text, "a.gpx"); })) return 0;
  const auto& fixes = recording.fixes;
  require(!fixes.empty());
  for (std::size_t k = 1; k < fixes.size(); ++k) require(fixes[k - 1].unix_s < fixes[k].unix_s);
  for (const trace::Fix& fix : fixes)
    require(std::abs(fix.at.lat()) <= 90 && std::abs(fix.at.lon()) <= 180);
  const road::Roads roads = fuzz::town_roads();
  const trace::Match match = trace::match_to_roads(roads, fixes);
  for (const trace::Run& run : match.runs) check_run(roads, run);
  if (match.runs.empty()) return 0;
  const pace::Pace pace(roads, {.level = 3}, {1'795'878'000, 0});
  const trace::DrivenLesson lesson = trace::lesson_of(roads, match, pace);
  require(lesson.loop.stretches.size() >= match.runs.front().legs.size());
  return 0;
}
