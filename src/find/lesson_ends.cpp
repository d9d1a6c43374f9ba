// Method: one sweep from the door and one back to the end, over all roads that may be driven; each way in which a
// place's road can be driven makes a pair of ends, the quickest together come first.
#include "find/lesson_ends.hpp"

#include <algorithm>

#include "loopwright/base/error.hpp"

namespace loopwright::find {

namespace {

constexpr std::size_t most_ends = 2;
constexpr std::int64_t most_way_ms = 600 * 60'000;

/// The stretches of the road a place lies on. other: the door that it must not share a road with.
std::vector<StateId> states_at(const Ground& free, Point place, const char* option,
                               const reach::Snap& door) {
  const auto snap = reach::snap_home(free.roads, place);
  if (!snap)
    throw UsageError(std::string(option) +
                     " is over 150 m from any road a learner may use; give another place");
  if (snap->piece == door.piece)
    throw UsageError(std::string(option) + " lies where the lesson " +
                     (std::string_view(option) == "--drive-out" ? "begins" : "ends") +
                     " anyway; leave it out");
  std::vector<StateId> states;
  for (const bool against : {false, true})
    for (const StateId state : reach::states_of(free.roads, StretchId(snap->piece, against)))
      states.push_back(state);
  return states;
}

struct Way {
  std::vector<StateId> states;
  std::int64_t ms = 0;
};

void keep_quickest(std::vector<Way>& ways) {
  std::stable_sort(ways.begin(), ways.end(),
                   [](const Way& a, const Way& b) { return a.ms < b.ms; });
  ways.resize(std::min(ways.size(), most_ends));
}

std::vector<Way> ways_out(const wish::Wish& wish, const Ground& free) {
  if (!wish.drive_out) return {Way{}};
  reach::Sweep sweep(free.roads);
  sweep.run(free.starts, free.costs, most_way_ms);
  std::vector<Way> ways;
  for (const StateId state : states_at(free, *wish.drive_out, "--drive-out", free.home))
    if (sweep.reached(state)) ways.push_back({sweep.path(state), sweep.ms(state)});
  keep_quickest(ways);
  return ways;
}

/// From the place's stretch, which is the first of each.
std::vector<Way> ways_back(const wish::Wish& wish, const Ground& free) {
  if (!wish.drive_back) return {Way{}};
  const reach::Backwards backwards(free.roads);
  reach::Sweep sweep(free.roads, &backwards);
  sweep.run_back(free.goals, free.costs, most_way_ms);
  std::vector<Way> ways;
  for (const StateId state : states_at(free, *wish.drive_back, "--drive-back", free.end))
    if (sweep.reached(state)) ways.push_back({sweep.path(state), sweep.ms(state)});
  keep_quickest(ways);
  return ways;
}

LessonEnds ends_with(const Ground& free, Way out, Way back) {
  LessonEnds ends;
  ends.out = std::move(out.states);
  ends.out_ms = out.ms;
  ends.goals = free.goals;
  if (back.states.empty()) return ends;
  const std::int32_t along = free.costs.along_ms(free.roads.stretch_of(back.states.front()));
  ends.goals = {{back.states.front(), along}};
  ends.back.assign(back.states.begin() + 1, back.states.end());
  ends.back_ms = back.ms - along;
  ends.to_door = false;
  return ends;
}

}  // namespace

std::vector<LessonEnds> ends_of(const wish::Wish& wish, const Ground& free) {
  std::vector<LessonEnds> all;
  const std::vector<Way> back = ways_back(wish, free);
  for (const Way& out : ways_out(wish, free))
    for (const Way& on : back) all.push_back(ends_with(free, out, on));
  std::stable_sort(all.begin(), all.end(), [](const LessonEnds& a, const LessonEnds& b) {
    return a.out_ms + a.back_ms < b.out_ms + b.back_ms;
  });
  all.resize(std::min(all.size(), most_ends));
  return all;
}

}  // namespace loopwright::find
