// A loop as spoken directions: what to say, where, how far and how long until the next.
//
//   for (const Row& row : say_loop(roads, loop)) print(row.say);
//
// Wording: the examiner's pattern, in our own words: "at the end of the road turn right", "take the
// second road on the left", "at the roundabout take the third exit". Never "straight on" (heard as
// "go without looking") and never "turning" (a drive or car park is one): the words are in
// src/rules/words.txt. Rules: the loop is resolved.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::say {

struct Row {
  std::size_t stretch = 0;    ///< the stretch at whose end (or start, for hazards along it) it is due
  std::string say;            ///< what is spoken; empty for a row that only warns
  std::string where;          ///< street or road number entered, or sign to follow
  double to_next_m = 0;       ///< from here to the next row
  double to_next_s = 0;       ///< likely
  std::optional<road::LimitOnDay> new_limit;  ///< when it changes here
  std::vector<std::string> hazards;           ///< "level crossing: never stop on it"
  int hardness = 0;           ///< 0: nothing to practise here
  bool joined_to_previous = false;  ///< too close to speak between: said in one breath
  Point at;
};

std::vector<Row> say_loop(const road::Roads& roads, const wish::Loop& loop);

/// "300 yd", "½ mile", "1¼ miles" where signs use miles; "300 m", "1.2 km" elsewhere.
std::string say_distance(double metres, SpeedUnit unit);

}  // namespace loopwright::say
