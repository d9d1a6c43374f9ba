#include "loopwright/book/stepped_in.hpp"

#include <algorithm>

#include "loopwright/book/scheme.hpp"

namespace loopwright::book {
namespace {

bool is_of(const Practice& one, const Practice& asked) {
  return road::meets(one.kind, asked.kind) &&
         (asked.movement == road::Movement::none || one.movement == asked.movement);
}

const LessonIntervention* strongest(const Lesson& lesson, const SteppedInAsk& ask) {
  const LessonIntervention* most = nullptr;
  for (const LessonIntervention& one : lesson.log.interventions) {
    if (!one.what || (ask.what && !is_of(*one.what, *ask.what))) continue;
    if (most == nullptr || one.how > most->how) most = &one;
  }
  return most;
}

std::vector<LessonPass> passes_of(const Lesson& lesson, const Practice& what) {
  std::vector<LessonPass> all;
  for (const LessonPass& pass : lesson.log.passes) {
    if (!pass.driven || pass.place.empty() || !is_of(pass.what, what)) continue;
    const bool is_known = std::any_of(all.begin(), all.end(), [&](const LessonPass& one) {
      return one.place == pass.place && one.what == pass.what;
    });
    if (!is_known) all.push_back(pass);
  }
  std::stable_sort(all.begin(), all.end(), [](const LessonPass& a, const LessonPass& b) {
    return a.level.value_or(highest_level) < b.level.value_or(highest_level);
  });
  return all;
}

}  // namespace

std::optional<SteppedIn> last_stepped_in(std::span<const Lesson> lessons, const SteppedInAsk& ask) {
  const Lesson* latest = nullptr;
  for (const Lesson& lesson : lessons) {
    if (lesson.state != LessonState::driven || (ask.lesson && lesson.number != *ask.lesson))
      continue;
    if (strongest(lesson, ask) == nullptr) continue;
    if (latest == nullptr || lesson.plan.start.unix_s > latest->plan.start.unix_s) latest = &lesson;
  }
  if (latest == nullptr) return std::nullopt;
  const LessonIntervention& most = *strongest(*latest, ask);
  return SteppedIn{latest->number, most, passes_of(*latest, *most.what)};
}

}  // namespace loopwright::book
