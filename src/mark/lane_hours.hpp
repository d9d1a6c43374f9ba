// From what a lane's tags say, with and without conditions, to the hours of the lane.
//
//   lane_hours(false, {{true, "Mo-Fr 07:00-10:00"}}).hours == "Mo-Fr 07:00-10:00"
//
// Rules: private to mark. No hours means not mapped, or not to be put into hours: check the plate.
#pragma once

#include <span>
#include <string>

namespace loopwright::mark {

/// One clause of a conditional: the lane is a bus lane (or isn't) when the condition holds.
struct LaneClause {
  bool on = false;
  std::string condition;
};

struct LaneHours {
  bool ever = false;      ///< it is a bus lane at some time
  bool doubtful = false;  ///< the plain tag says always, the condition says when
  std::string hours;
};

/// base_on: what the tag without a condition says.
LaneHours lane_hours(bool base_on, std::span<const LaneClause> clauses);

}  // namespace loopwright::mark
