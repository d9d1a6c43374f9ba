// A lesson as the book keeps it: what was planned, and what came of it.
//
// Rules: plain data. A plan comes with all its passes; a log says of each whether it was driven and at which level.
// The door is in the wish and in the loop file, which are therefore no other's business; what is printed begins and
// ends at the nearest corner (room card).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/region.hpp"
#include "loopwright/book/marking.hpp"
#include "loopwright/road/kind.hpp"
#include "loopwright/wish/map_fact.hpp"

namespace loopwright::book {

enum class LessonState : std::uint8_t { planned, driven, not_driven };
std::string_view name(LessonState state);  // "planned"
std::optional<LessonState> parse_lesson_state(std::string_view text);

/// A kind and a movement of it: what is practised.
struct Practice {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  friend auto operator<=>(const Practice&, const Practice&) = default;
};
/// "roundabout right", "zebra"
std::string words_of(const Practice& practice);

/// One pass of a practice.
struct LessonPass {
  Practice what;
  int hardness = 1;   ///< 1 to 5
  std::string place;  ///< map object, "way/123"; empty: not planned
  bool driven = false;
  std::optional<int> level = {};  ///< seen, 1 to 5
  std::optional<Help> help = {};
  bool traced = false;  ///< a recorded drive told whether it was driven
  friend bool operator==(const LessonPass&, const LessonPass&) = default;
};

/// Faults of one heading; about what, when it was said.
struct LessonFault {
  std::string heading;  ///< code
  Grade grade = Grade::driving;
  int count = 1;
  std::optional<Practice> what = {};
  friend bool operator==(const LessonFault&, const LessonFault&) = default;
};

/// Where the instructor stepped in.
struct LessonIntervention {
  Intervention how = Intervention::words;
  int count = 1;
  std::optional<Practice> what = {};
  std::string why = {};  ///< and where, in the instructor's words
  friend bool operator==(const LessonIntervention&, const LessonIntervention&) = default;
};

/// A level the instructor saw of a skill, or that the passes of a lesson show.
struct Observation {
  std::string skill;  ///< code
  Date day;
  int level = 1;
  bool said = true;  ///< by the instructor; else from the passes
  friend bool operator==(const Observation&, const Observation&) = default;
};

/// A mock test.
struct MockTest {
  Date day;
  Faults faults;
  friend bool operator==(const MockTest&, const MockTest&) = default;
};

/// A fact that a lesson's sheet asks to look at on the ground, by its letter.
struct LetteredFact {
  std::string letter;
  wish::MapFact fact;
  friend bool operator==(const LetteredFact&, const LetteredFact&) = default;
};

/// A fact that the instructor looked at on the ground (seen.hpp).
struct SeenFact {
  wish::MapFact fact;
  Date day;
  std::string says;  ///< what stands there, when it isn't as the map has it; else empty
  friend bool operator==(const SeenFact&, const SeenFact&) = default;
};

/// Conditions, as codes of marking.hpp; empty: not said.
struct Conditions {
  std::string light, weather, traffic;
  friend bool operator==(const Conditions&, const Conditions&) = default;
};

/// What is planned.
struct Plan {
  Instant start;
  int length_minutes = 60;         ///< the lesson, talk and all
  std::string area, notes, terms;  ///< files it was planned with; empty: none
  std::string wish;                ///< words of the wish, as a wish file
  std::string loop_file;           ///< its text: one loop
  double likely_s = 0;             ///< away from the start, stops counted
  std::vector<LessonPass> passes;  ///< in driving order
  struct Road {
    std::string name;  ///< "quiet", "town", "country", "dual carriageway", "motorway"
    double minutes = 0;
  };
  std::vector<Road> roads;  ///< likely minutes by sort of road
  struct Limit {
    int value = 0;  ///< 0: no limit
    SpeedUnit unit = SpeedUnit::mph;
    double minutes = 0;
    friend bool operator==(const Limit&, const Limit&) = default;
  };
  std::vector<Limit> limits = {};  ///< likely minutes by speed limit, ascending; empty: not told
  std::vector<LetteredFact> to_check = {};  ///< what its sheet asks to look at, by letter
};

/// What came of it.
struct Log {
  std::optional<int> minutes = {};  ///< away from the start
  std::vector<LessonPass> passes =
      {};  ///< of the plan, in its order, then those that weren't planned
  std::vector<LessonFault> faults = {};
  std::vector<LessonIntervention> interventions = {};
  std::vector<Observation> observations = {};
  std::optional<MockTest> mock = {};
  Conditions conditions = {};
  std::string said = {};                  ///< in the pupil's own words
  std::string remark = {};                ///< the instructor's
  std::vector<std::string> goals = {};    ///< for next time
  std::vector<std::string> reached = {};  ///< goals of before that are reached
  std::vector<SeenFact> seen =
      {};  ///< on the ground; kept apart from the lesson, so not read again with it
  int private_minutes = 0;  ///< practised at home since the last lesson, by the pupil's account
};

/// A lesson of the book.
struct Lesson {
  int number = 1;  ///< of this pupil, from 1; never used again
  LessonState state = LessonState::planned;
  Plan plan;  ///< without loop_file and passes of a lesson that wasn't planned
  Log log;    ///< empty but for its passes, until it is driven
};

}  // namespace loopwright::book
