// Which passes of a drive a want for as many as fit is practised by: a choice, for passes must be spaced and
// a repeat is worth less (DEVELOPERS.md, "Value of a loop").
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "loopwright/base/ids.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::find {

/// A pass that may be practised.
struct Practicable {
  std::size_t pass = 0;  ///< its number, for the answer
  PlaceId place;
  road::Movement movement = road::Movement::none;
  std::int64_t begins_ms = 0;
};

struct PractisedRules {
  std::int64_t spacing_ms = 0;  ///< between the beginnings of two
  std::span<const std::int64_t>
      worths;  ///< of the first of a place and movement, the second, …; falling
  std::optional<int> of_place = {};  ///< at most so many of a place
};

struct Practised {
  std::vector<std::size_t> passes;  ///< ascending, each worth something
  std::int64_t worth = 0;           ///< of all, in milli-units
};

/// The choice that is worth most of those a narrow search sees. Rules: `all` by begins_ms, not falling.
Practised choose_practised(std::span<const Practicable> all, const PractisedRules& rules);

}  // namespace loopwright::find
