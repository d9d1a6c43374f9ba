#include "loopwright/book/met.hpp"

#include <algorithm>

namespace loopwright::book {
namespace {

constexpr double least_minutes = 0.5;  // ours: a few seconds on the way past show nobody a road

void add_plan(Met& met, const Plan& plan) {
  for (const Plan::Road& road : plan.roads) met.roads[road.name] += road.minutes;
  for (const Plan::Limit& limit : plan.limits)
    met.limits[{limit.unit, limit.value}] += limit.minutes;
  if (plan.roads.empty()) ++met.without_roads;
  if (plan.limits.empty()) ++met.without_limits;
}

bool has_met_kind(const Met& met, road::Kind kind) {
  return std::any_of(met.practices.begin(), met.practices.end(),
                     [&](const Practice& one) { return road::meets(one.kind, kind); });
}

}  // namespace

Met met_by(std::span<const Lesson> lessons) {
  Met met;
  for (const Lesson& lesson : lessons) {
    if (lesson.state != LessonState::driven) continue;
    ++met.lessons;
    for (const LessonPass& pass : lesson.log.passes)
      if (pass.driven) met.practices.insert(pass.what);
    add_plan(met, lesson.plan);
    if (lesson.log.conditions.light.empty())
      ++met.without_light;
    else
      met.lights.insert(lesson.log.conditions.light);
  }
  return met;
}

bool has_met(const Met& met, const Practice& practice) {
  return std::any_of(met.practices.begin(), met.practices.end(), [&](const Practice& one) {
    return road::meets(one.kind, practice.kind) && one.movement == practice.movement;
  });
}

bool has_met_road(const Met& met, std::string_view sort) {
  const auto minutes = met.roads.find(sort);
  if (minutes != met.roads.end() && minutes->second >= least_minutes) return true;
  if (sort == "country") return has_met_kind(met, road::Kind::country_road);
  if (sort == "dual carriageway") return has_met_kind(met, road::Kind::dual_carriageway);
  return sort == "motorway" && has_met_kind(met, road::Kind::motorway);
}

bool has_met_limit(const Met& met, int value, SpeedUnit unit) {
  const auto minutes = met.limits.find({unit, value});
  if (minutes != met.limits.end() && minutes->second >= least_minutes) return true;
  constexpr int twenty = 20;
  return value == twenty && unit == SpeedUnit::mph &&
         (has_met_kind(met, road::Kind::twenty_zone) ||
          has_met_kind(met, road::Kind::twenty_limit));
}

bool has_met_light(const Met& met, std::string_view light) {
  return met.lights.find(light) != met.lights.end();
}

}  // namespace loopwright::book
