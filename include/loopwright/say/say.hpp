// A loop as spoken directions: what to say, where, how far and how long until the next.
//
//   for (const Row& row : say_loop(roads, loop)) print(row.say);
//   say_loop(roads, loop, {&words, Sides::my_your});   // another wording, "on my side"
//
// Wording: the examiner's pattern, in our own words: "at the end of the road turn right", "take the
// second road on the left", "at the roundabout take the third exit". Never "straight on" (heard as
// "go without looking") and never "turning" (a drive or car park is one): the words are in
// src/rules/words.txt. Rules: the loop is resolved.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::say {

/// What a row is said at.
enum class RowKind : std::uint8_t {
  leave,  ///< at the door: which way to set off
  roundabout,
  mini,
  ring_leave,  ///< a drive that starts on a ring leaves it
  lights,
  crossroads,
  junction,  ///< any other
  turn_round,
  warn,  ///< a level crossing, or a crossing that was asked for: nothing to turn into
  pull_up
};

struct Row {
  RowKind kind = RowKind::junction;
  std::size_t stretch = 0;  ///< the stretch at whose end it is due; what follows it counts too
  std::size_t exit = 0;     ///< the stretch one leaves the place by; all between lies inside it
  std::string say;          ///< what is spoken, at most nine words
  std::string where;        ///< street or road number entered; empty when it has neither
  std::string landmark;     ///< where to look, never spoken: "after the church"; at most five words
  std::string lane;         ///< to be in: "left lane of two"; empty when not mapped, or one lane
  std::string signed_to;    ///< as the signs of the way taken say: "Stavely, A41"; may be empty
  bool counts = false;      ///< the words count what is met after the place to speak
  double speak_m = 0;       ///< how far before it is spoken; roads are counted from there
  double to_next_m = 0;     ///< from here to the next row
  double to_next_s = 0;     ///< likely
  std::optional<road::LimitOnDay> new_limit;  ///< when it changes here
  std::vector<std::string> briefs;            ///< for here: "never stop on it"
  std::vector<std::string> hazards;           ///< met between here and the next row, in order
  int hardness = 0;                           ///< of what is practised from here on; 0: nothing
  std::vector<std::size_t> passes;  ///< of the loop: those that begin here or before the next row
  bool joined_to_previous = false;  ///< too close to speak between: said in one breath
  Point at;
};

/// How the two sides are called. Some pupils mix left and right: the instructor's side of the car is
/// "my side" to them (left in Britain), their own "your side".
enum class Sides : std::uint8_t { left_right, my_your };

/// How a loop is spoken.
struct Manner {
  const Words* words = nullptr;  ///< must outlive the call; none: those of src/rules/words.txt
  Sides sides = Sides::left_right;
};

/// Rows in driving order: first how to set off, last to pull up, both at the nearest corner.
std::vector<Row> say_loop(const road::Roads& roads, const wish::Loop& loop,
                          const Manner& manner = {});

/// "300 yd", "½ mile", "1¼ miles" where signs use miles; "300 m", "1.2 km" elsewhere.
std::string say_distance(double metres, SpeedUnit unit);
std::string say_distance(double metres, SpeedUnit unit, const Words& words);

}  // namespace loopwright::say
