// What a pupil's lessons show: each skill's and each practice's dated levels, hours, and in what was driven.
//
//   for (const SkillLine& line : skill_lines(scheme, lessons)) use(line.skill->name, line.seen);
//
// Rules: pure; lessons in any order, those that aren't driven count for nothing. A level goes up and down (driver's
// record, gov.uk): the last one seen is the level now. Of several passes on a day the lower middle one counts, so that
// one good pass doesn't make a level and one bad one doesn't break it (ours).
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::book {

struct Seen {
  Date day;
  int level = 1;
  friend bool operator==(const Seen&, const Seen&) = default;
};

/// A skill's dated levels, one a day, the earliest first.
struct SkillLine {
  const Skill* skill = nullptr;
  std::vector<Seen> seen;
  [[nodiscard]] int level() const { return seen.empty() ? 0 : seen.back().level; }  ///< 0: none yet
};
/// Every skill of the scheme, in its order. What the instructor said of a day counts before what its passes show.
std::vector<SkillLine> skill_lines(const Scheme& scheme, std::span<const Lesson> lessons);

/// The learner's level: the lower middle one of the skills that are begun and that a map can serve; none before that.
std::optional<int> level_now(const Scheme& scheme, std::span<const Lesson> lessons);

/// A kind and movement, and how it went.
struct PracticeLine {
  Practice what;
  int passes = 0;       ///< driven, over all lessons
  int last_passes = 0;  ///< of the last day on which it was driven
  Date last;
  std::vector<Seen> seen;  ///< by day; days without a level said have none
  int interventions = 0;   ///< over all lessons
  [[nodiscard]] int level() const { return seen.empty() ? 0 : seen.back().level; }
};
/// What was driven, by kind and movement.
std::vector<PracticeLine> practice_lines(std::span<const Lesson> lessons);

/// The levels that a lesson's passes show of each skill they practise; not of those in `said`.
std::vector<Observation> observed(const Scheme& scheme, Date day,
                                  std::span<const LessonPass> passes,
                                  std::span<const Observation> said);

/// The lower middle one. Rules: not empty.
int lower_middle(std::vector<int> levels);

/// The latest that was driven; null for none.
const Lesson* last_driven(std::span<const Lesson> lessons);

struct Hours {
  int lessons = 0;
  int lesson_minutes = 0;   ///< as long as they were given
  int private_minutes = 0;  ///< by the pupil's account
};
Hours hours_of(std::span<const Lesson> lessons);

/// Likely minutes on a sort of road in some conditions.
struct Exposure {
  std::string road;
  Conditions conditions;
  double minutes = 0;
};
/// By road, light, weather and traffic.
std::vector<Exposure> exposure_of(std::span<const Lesson> lessons);

/// Goals that were set and not reached yet, in the order in which they were set. besides: the number of a lesson that isn't
/// looked at, such as one that is logged anew; 0: all are.
std::vector<std::string> open_goals(std::span<const Lesson> lessons, int besides = 0);

/// The day on which a lesson begins, by its own clock.
Date day_of(const Lesson& lesson);

}  // namespace loopwright::book
