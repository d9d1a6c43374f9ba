// Everything of an area that has hours, with its verdict at one minute.
#pragma once

#include <iosfwd>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// Bus lanes and gates, streets, limits and turns, each thing once, by street and way.
void print_all(std::ostream& out, const road::Roads& roads, const Instant& at,
               const hours::Setting& setting);

}  // namespace loopwright::command
