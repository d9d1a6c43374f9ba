// Whose hours a text is read by, as typed for the command `hours`: nation, place and school terms.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/base/region.hpp"
#include "loopwright/hours/setting.hpp"

namespace loopwright::command {

struct HoursPlace {
  std::optional<Point> at;
  hours::SchoolTerms terms;
};

/// A nation's setting and the zone whose clock it has.
struct Nation {
  hours::Setting setting;
  std::string zone;
};
Nation nation_of(const Region& region, const HoursPlace& place);

/// "Scotland"; the code for others than those whose bank holidays are built in.
std::string nation_name(std::string_view region_code);

/// "Monday 30 November 2026, 08:30"
std::string spoken_moment(const Instant& at);
/// "Monday 30 November 2026"
std::string spoken_day(const Date& day);

/// " (clocks put back)" behind a later moment whose clock shows no later time than now's, since
/// they are put back between the two; else nothing. Rules: both carry their own offset.
std::string put_back_words(const Instant& now, const Instant& later);

/// Says in a line that a time as written, without an offset, is one that the clocks jump over, and for
/// which it is taken; nothing of any other.
void tell_jump(std::ostream& out, const std::optional<WrittenTime>& written, const Instant& taken);

}  // namespace loopwright::command
