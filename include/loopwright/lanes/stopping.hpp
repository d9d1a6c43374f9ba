// May one stop at a pull-up place for the whole of a talk, as far as the map tells?
//
//   may_stop(roads, place, {from, to}, setting).verdict == MayStop::usable
//
// Rules: `forbidden` when mapped hours of a ban, or of a bus lane along the kerb, touch the interval
// at all; `check` when nobody can tell them beforehand or the place is for permit holders or has a fee; else
// `usable`, which means no more than "no ban mapped: check lines, signs and drives".
// Source: Highway Code rules 238, 240 and 243.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::lanes {

enum class MayStop : std::uint8_t { usable, forbidden, check };
std::string_view name(MayStop verdict);  // "usable", "forbidden", "check"

struct Stay {
  Instant from, to;
};

struct StopJudgement {
  MayStop verdict = MayStop::check;
  std::string why;  ///< "no parking Monday to Saturday, seven till ten; you stop 09:55 to 10:01"
};

StopJudgement may_stop(const road::Roads& roads, const road::PullUp& place, const Stay& stay,
                       const hours::Setting& setting);

}  // namespace loopwright::lanes
