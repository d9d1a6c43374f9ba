// The schemes by which a learner's skills are recorded: groups, skills and the names of five levels.
//
//   const Scheme& scheme = scheme_named("car-27");   scheme.skill_of(road::Kind::roundabout)->code; // "roundabouts"
//
// Rules: from src/rules/skills.txt, which names its sources. A skill's code never changes once released: books
// keep it. A kind of practice serves at most one skill of a scheme. Levels are 1 to 5.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::book {

inline constexpr int lowest_level = 1, highest_level = 5;

struct Skill {
  std::string_view code, name, group;
  int rank = 1;                   ///< when it is begun; those of one rank together
  int stale_after_days = 0;       ///< without practice
  std::vector<road::Kind> kinds;  ///< that practise it; none: no map can serve it
};

struct Scheme {
  std::string_view code, name, region;  ///< region: empty for what no other scheme names
  Date since;
  std::vector<std::string_view> level_names;  ///< of level 1 first
  std::vector<Skill> skills;                  ///< in the order of the record

  /// Null when there is none of that code.
  [[nodiscard]] const Skill* skill(std::string_view skill_code) const;
  /// The skill that a kind practises; null when it serves none.
  [[nodiscard]] const Skill* skill_of(road::Kind kind) const;
  /// "prompted". Rules: 1 to 5.
  [[nodiscard]] std::string_view level_name(int level) const;
};

/// All there are, in the table's order.
std::span<const Scheme> schemes();
/// Null when there is none of that code.
const Scheme* find_scheme(std::string_view code);
/// The one of a region on a day: the latest that names it, else the latest that names no region.
const Scheme& scheme_of(std::string_view region, Date day);

}  // namespace loopwright::book
