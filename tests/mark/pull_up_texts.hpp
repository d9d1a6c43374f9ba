// Pull-up places of a stretch as short texts: "15-185 hours parked Mo-Sa 08:00-18:30".
#pragma once

#include <string_view>

#include "mark/chance_texts.hpp"

namespace loopwright::test {

/// Metres from where the stretch is entered, flags, hours; in order.
Texts pull_ups(const BuiltTown& town, std::string_view two_letters);

}  // namespace loopwright::test
