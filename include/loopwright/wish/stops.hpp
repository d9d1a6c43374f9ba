// What places to pull up, planned stops and ways home mean, for the search, the proof and the card
// alike.
//
// Rules: of the wish and the loop alone. Numbers are ours unless a source stands beside them.
#pragma once

#include <algorithm>
#include <cstdint>
#include <span>

#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

/// From this hardness on a pass is told where one may pull up after it.
inline constexpr int hard_pass = 3;
/// How long one may want to stay at a place that isn't planned: a short talk.
inline constexpr double offered_stay_s = 240;
/// A brief is at most so much driving before the pass it is for; later it is forgotten.
inline constexpr double brief_before_most_s = 300;
/// The talk is at most so much driving before the end.
inline constexpr double talk_before_end_most_s = 600;

/// Nothing on an easy way home is harder than this.
constexpr int easy_hardness(const Wish& wish) {
  return std::min(wish.level, wish.hardest.value_or(5));
}

/// The row at whose beginning a pass begins: of a junction the one behind its entry, which is driven
/// before; else its first.
inline std::size_t begin_row(const Pass& pass) {
  const bool junction = road::form_of(pass.kind) == road::KindForm::junction;
  return junction && pass.last > pass.first ? pass.first + 1 : pass.first;
}
/// The row at whose beginning it is over: of a junction its exit; else the one behind its last.
inline std::size_t end_row(const Pass& pass) {
  const bool junction = road::form_of(pass.kind) == road::KindForm::junction;
  return junction && pass.last > pass.first ? pass.last : pass.last + 1;
}

/// The first pass of a kind, or of a special form of it, by where it begins; null when there is none.
inline const Pass* first_pass_of(std::span<const Pass> passes, road::Kind kind) {
  const Pass* first = nullptr;
  for (const Pass& pass : passes)
    if (road::meets(pass.kind, kind) && (first == nullptr || begin_row(pass) < begin_row(*first)))
      first = &pass;
  return first;
}

/// The minutes of a lesson that are kept for planned stops, in seconds: those of a stop that finds no
/// place, or isn't needed, stay free.
constexpr std::int64_t kept_for_stops_s(const Wish& wish) {
  const auto kinds = static_cast<std::int64_t>(wish.stops.new_kinds.size());
  return 60 * (wish.stops.brief_minutes * kinds + wish.stops.talk_minutes);
}

/// What the planned stops of a loop take, in seconds.
inline double planned_s(const Loop& loop) {
  double sum = 0;
  for (const PullUp& stop : loop.pull_ups) sum += stop.seconds;
  return sum;
}

}  // namespace loopwright::wish
