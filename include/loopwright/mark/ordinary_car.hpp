// The car a learner drives, held against what conditions and signs say of vehicles.
//
//   binding_on_car("weight>7.5").when == Binding::When::never
//
// Rules: figures of the car are in src/rules/car.txt, with their reasons.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

/// When a condition ("Mo-Fr 08:00-09:00 AND weight>3.5") holds for our car.
struct Binding {
  enum class When : std::uint8_t { never, at_times, always };
  When when = When::at_times;
  std::string hours;  ///< of at_times, when hours alone decide; empty when something else does too
};
Binding binding_on_car(std::string_view condition);

/// "maxwidth=1.8" when a limit on size or weight keeps the car out; empty when none does.
std::string size_tag_against_car(const Tags& tags);

/// "maxheight=high" when a limit on size or weight is mapped that can't be read; else empty.
std::string unread_size_tag(const Tags& tags);

}  // namespace loopwright::mark
