// Method: lessons that are driven are put in the order of their starts; maps keyed by skill or practice gather what
// each of them shows.
#include "loopwright/book/progress.hpp"

#include <algorithm>
#include <cassert>
#include <map>
#include <tuple>

namespace loopwright::book {
namespace {

std::vector<const Lesson*> driven_in_order(std::span<const Lesson> lessons) {
  std::vector<const Lesson*> driven;
  for (const Lesson& lesson : lessons)
    if (lesson.state == LessonState::driven) driven.push_back(&lesson);
  std::stable_sort(driven.begin(), driven.end(), [](const Lesson* a, const Lesson* b) {
    return a->plan.start.unix_s < b->plan.start.unix_s;
  });
  return driven;
}

/// What the instructor said of a day stands before what passes show of it.
void add_seen(std::map<Date, Observation>& days, const Observation& seen) {
  const auto [place, is_new] = days.emplace(seen.day, seen);
  if (!is_new && (seen.said || !place->second.said)) place->second = seen;
}

void add_levels(std::vector<Seen>& seen, Date day, std::vector<int> levels) {
  if (levels.empty()) return;
  if (!seen.empty() && seen.back().day == day) seen.pop_back();  // the later lesson of a day
  seen.push_back({day, lower_middle(std::move(levels))});
}

struct DayOfPractice {
  int passes = 0;
  std::vector<int> levels;
};

std::map<Practice, DayOfPractice> driven_by_practice(std::span<const LessonPass> passes) {
  std::map<Practice, DayOfPractice> driven;
  for (const LessonPass& pass : passes) {
    if (!pass.driven) continue;
    DayOfPractice& day = driven[pass.what];
    ++day.passes;
    if (pass.level) day.levels.push_back(*pass.level);
  }
  return driven;
}

}  // namespace

Date day_of(const Lesson& lesson) {
  return lesson.plan.start.civil().date;
}

int lower_middle(std::vector<int> levels) {
  assert(!levels.empty());
  std::sort(levels.begin(), levels.end());
  return levels[(levels.size() - 1) / 2];
}

std::vector<SkillLine> skill_lines(const Scheme& scheme, std::span<const Lesson> lessons) {
  std::map<std::string, std::map<Date, Observation>> by_skill;
  for (const Lesson* lesson : driven_in_order(lessons))
    for (const Observation& seen : lesson->log.observations) add_seen(by_skill[seen.skill], seen);
  std::vector<SkillLine> lines;
  for (const Skill& skill : scheme.skills) {
    SkillLine line{&skill, {}};
    for (const auto& [day, seen] : by_skill[std::string(skill.code)])
      line.seen.push_back({day, seen.level});
    lines.push_back(std::move(line));
  }
  return lines;
}

std::optional<int> level_now(const Scheme& scheme, std::span<const Lesson> lessons) {
  std::vector<int> levels;
  for (const SkillLine& line : skill_lines(scheme, lessons))
    if (!line.skill->kinds.empty() && line.level() > 0) levels.push_back(line.level());
  if (levels.empty()) return std::nullopt;
  return lower_middle(std::move(levels));
}

std::vector<PracticeLine> practice_lines(std::span<const Lesson> lessons) {
  std::map<Practice, PracticeLine> lines;
  for (const Lesson* lesson : driven_in_order(lessons)) {
    const Date day = day_of(*lesson);
    for (auto& [what, driven] : driven_by_practice(lesson->log.passes)) {
      PracticeLine& line = lines[what];
      line.what = what;
      line.last_passes =
          (line.passes > 0 && line.last == day ? line.last_passes : 0) + driven.passes;
      line.last = day;
      line.passes += driven.passes;
      add_levels(line.seen, day, std::move(driven.levels));
    }
    for (const LessonIntervention& stepped_in : lesson->log.interventions)
      if (stepped_in.what && lines.contains(*stepped_in.what))
        lines[*stepped_in.what].interventions += stepped_in.count;
  }
  std::vector<PracticeLine> all;
  for (auto& [what, line] : lines) all.push_back(std::move(line));
  return all;
}

std::vector<Observation> observed(const Scheme& scheme, Date day,
                                  std::span<const LessonPass> passes,
                                  std::span<const Observation> said) {
  std::map<std::string, std::vector<int>> levels;
  for (const LessonPass& pass : passes) {
    const Skill* skill = scheme.skill_of(pass.what.kind);
    if (pass.driven && pass.level && skill != nullptr)
      levels[std::string(skill->code)].push_back(*pass.level);
  }
  std::vector<Observation> all;
  for (auto& [skill, seen] : levels) {
    const bool is_said =
        std::any_of(said.begin(), said.end(),
                    [&, &code = skill](const Observation& one) { return one.skill == code; });
    if (!is_said) all.push_back({skill, day, lower_middle(std::move(seen)), false});
  }
  return all;
}

const Lesson* last_driven(std::span<const Lesson> lessons) {
  const auto driven = driven_in_order(lessons);
  return driven.empty() ? nullptr : driven.back();
}

Hours hours_of(std::span<const Lesson> lessons) {
  Hours hours;
  for (const Lesson* lesson : driven_in_order(lessons)) {
    ++hours.lessons;
    hours.lesson_minutes += lesson->plan.length_minutes;
    hours.private_minutes += lesson->log.private_minutes;
  }
  return hours;
}

std::vector<Exposure> exposure_of(std::span<const Lesson> lessons) {
  using Key = std::tuple<std::string, std::string, std::string, std::string>;
  std::map<Key, Exposure> by_key;
  for (const Lesson* lesson : driven_in_order(lessons)) {
    const Conditions& in = lesson->log.conditions;
    for (const Plan::Road& road : lesson->plan.roads) {
      Exposure& exposure = by_key[{road.name, in.light, in.weather, in.traffic}];
      exposure.road = road.name;
      exposure.conditions = in;
      exposure.minutes += road.minutes;
    }
  }
  std::vector<Exposure> all;
  for (auto& [key, exposure] : by_key) all.push_back(std::move(exposure));
  return all;
}

std::vector<std::string> open_goals(std::span<const Lesson> lessons, int besides) {
  std::vector<std::string> goals;
  for (const Lesson* lesson : driven_in_order(lessons)) {
    if (besides != 0 && lesson->number == besides) continue;
    for (const std::string& reached : lesson->log.reached) std::erase(goals, reached);
    for (const std::string& goal : lesson->log.goals)
      if (std::find(goals.begin(), goals.end(), goal) == goals.end()) goals.push_back(goal);
  }
  return goals;
}

}  // namespace loopwright::book
