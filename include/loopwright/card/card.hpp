// Route cards and exchange files of a loop, as text ready to write.
//
// Rules: the loop is resolved. GPX follows the 1.1 schema (route of spoken rows, track of the road);
// GeoJSON follows RFC 7946. Cautions and map credit are on every one of them.
#pragma once

#include <string>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/wish/map_fact.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::card {

/// A goal at which the learner stands lower than the level of the drive.
struct LowerGoal {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  int level = 1;  ///< 1 to 5
};

/// How much the learner is helped.
struct Help {
  bool mock_test = false;             ///< not at all, whatever the level
  std::vector<LowerGoal> lower = {};  ///< more with these
};

/// A loop of an answer, with all that is needed to write it down. Rules: all of it outlives this.
struct Lesson {
  const road::Roads& roads;
  const wish::Answer& answer;
  const wish::Loop& loop;
  const hours::Setting& setting;  ///< what the area's hours are read by (road::setting_of)
  say::Manner manner = {};        ///< in which words it is spoken and printed
  /// What was seen of each that to_check() names (card/ground.hpp), in its order; none: nobody says.
  const std::vector<wish::GroundMark>* ground = nullptr;
  Help help = {};
};

std::string write_text(const Lesson& lesson);
std::string write_gpx(const Lesson& lesson);
std::string write_geojson(const Lesson& lesson);

/// "Don't drive this card as printed …": why a loop may not be driven so at its start, since it passes
/// a street, turn or gate that is shut then or may be; empty when none is. All three forms carry it.
std::string write_barred(const Lesson& lesson);

}  // namespace loopwright::card
