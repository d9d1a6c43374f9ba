// What the tags of a way say about stopping beside one side of it.
//
//   kerb_of(tags, LaneSide::left).forbidden_by == "parking:both:restriction=no_stopping"
//
// Rules: private to mark. Nothing said is nothing known: neither forbidden nor allowed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "loopwright/mark/raw_map.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

/// A ban on waiting beside the road, from tags of parking alone.
struct ParkingBan {
  std::string hours;  ///< when it holds (hours::Timetable), "24/7" at all times
  std::string source;
  bool no_stopping = false;  ///< every value of it forbids even to stop
};

struct Kerb {
  std::string forbidden_by;  ///< the tag that forbids it at all times; empty when none does
  std::string hours;       ///< when mapped rules forbid it (hours::Timetable); empty when none does
  std::string allowed_by;  ///< the tag that says that cars stand here: "parking:left=lane"
  std::uint16_t flags = 0;  ///< road::pull_up_flag
  std::optional<ParkingBan> ban;
};

/// The side of the way, as its nodes run, that whoever drives the stretch has beside them.
road::LaneSide near_side(Side side, StretchId stretch);

/// One side of the way, as its nodes run.
Kerb kerb_of(const Tags& tags, road::LaneSide side);

/// Adds hours at which something else forbids it, as text for hours::Timetable; empty: at all times.
/// Two rules that both have hours left out can't be put into one text: they forbid it.
void add_hours(Kerb& kerb, std::string_view hours, std::string_view source);

}  // namespace loopwright::mark
