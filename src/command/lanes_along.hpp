// The instructor's own route for the command `lanes`: from places to a drive.
#pragma once

#include <iosfwd>
#include <optional>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Moves places that lie on a street which is shut at the start, but within a few metres of one that
/// never is, onto that one; tells of each, and of those that stay on a shut street.
void keep_off_shut_streets(std::ostream& out, const road::Roads& roads, wish::Wish& wish,
                           const hours::Setting& setting);

/// A drive for a start close to the wish's, when the wish itself has none: the least shift first.
struct OtherStart {
  int minutes = 0;  ///< later; negative: earlier
  wish::Loop loop;
};
std::optional<OtherStart> other_start(const road::Roads& roads, const wish::Wish& wish,
                                      const hours::Setting& setting);

/// A drive at any hour of a day, that of the wish's start first; empty when there is none at all.
std::optional<wish::Loop> drive_on_day(const road::Roads& roads, wish::Wish wish, const Date& day,
                                       const hours::Setting& setting);

}  // namespace loopwright::command
