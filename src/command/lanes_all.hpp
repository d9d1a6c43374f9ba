// Everything of an area that has hours, or of what lies near a place: at one minute, or a day long.
#pragma once

#include <iosfwd>
#include <optional>

#include "command/lanes_day.hpp"
#include "loopwright/lanes/area_things.hpp"

namespace loopwright::command {

/// Some of an area: within a distance of any of some places; no places: all of it.
struct Around {
  std::vector<Point> places;
  double within_m = 0;
};

/// Each thing once with its verdict at that minute, sorted by kind and street.
void print_all(std::ostream& out, const road::Roads& roads, const Instant& at,
               const hours::Setting& setting, const Around& around = {});

/// Rows for the table of a day.
std::vector<DayRow> rows_around(const road::Roads& roads, const hours::Setting& setting,
                                const Around& around = {});

}  // namespace loopwright::command
