// What a pupil may practise at home: only what the record shows the pupil does without help.
//
//   const auto practices = practices_at_home({pupil, scheme, lessons, day});
//   wish.avoids = kept_off_at_home(practices);      // all else, so that nothing on the way is new
//
// Rules: pure. Of a practice its own last level counts, else that of its skill; at src/rules/at_home.txt's least level or
// above, driven not too long ago, and without stepping in on its last day. What was never driven is never practised at
// home, whatever its skill. Motorways never are.
// Why: at home nobody has dual controls.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::book {

/// Numbers of the table, metres, minutes and days.
struct AtHomeRules {
  int least_level = 4, seen_within_days = 60;
  int usual_minutes = 20, least_minutes = 10, most_minutes = 40, shorter_by_minutes = 5;
  int loops = 2;
  int from_door_m = 100, most_from_door_m = 1500, to_corner_m = 80, room_m = 20;
  int places = 8, places_apart_m = 200;
  int days_ahead = 21;
  int most_kept_off = 4;
  std::string quiet;  ///< opening-hours text
};
AtHomeRules at_home_rules();

/// A sentence of the law on practising with family or friends.
struct AtHomeLaw {
  std::string words;       ///< its key, "law.supervisor"
  int age = 0, years = 0;  ///< what it fills in
};
/// Those of a region on a day, in the table's order; of one nobody wrote down that one has to ask. Rules: day is
/// 2018-06-04 or later.
std::vector<AtHomeLaw> laws_at_home(std::string_view region, Date day);

/// Why a practice isn't for home.
enum class NotAtHome : std::uint8_t {
  no,          ///< it is
  kept_off,    ///< the pupil's record says so
  below,       ///< its level
  stepped_in,  ///< on its last day
  long_ago
};

struct PracticeAtHome {
  Practice what;
  int level = 0;  ///< now; 0: none was said
  Date last;
  NotAtHome why_not = NotAtHome::no;
};
/// Of all that was driven, by kind and movement.
std::vector<PracticeAtHome> practices_at_home(const Record& record);

/// Those that are for home.
std::vector<Practice> alone_of(const std::vector<PracticeAtHome>& practices);
/// Of the rest the nearest: of the highest level, at most so many.
std::vector<PracticeAtHome> nearest_of(const std::vector<PracticeAtHome>& practices,
                                       std::size_t most);

/// All kinds and movements that a road may ask for but these; a special form counts for the general one.
std::vector<wish::Avoid> all_but(const std::vector<Practice>& alone);

}  // namespace loopwright::book
