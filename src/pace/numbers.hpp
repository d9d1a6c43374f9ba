// The numbers of src/rules/pace.txt, each under its name, in metres and seconds.
//
// Rules: read_numbers throws std::logic_error naming the row that is missing or unknown; a tested
// build has none.
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::pace {

inline constexpr std::size_t class_count = static_cast<std::size_t>(road::RoadClass::road) + 1;
inline constexpr std::size_t level_count = 5;

/// What holds a driver back besides limit and class.
enum class Cap : std::uint8_t {
  winding,
  humps,
  parked_both,
  narrow,
  single_track,
  ring,
  ring_lanes
};
inline constexpr std::size_t cap_count = static_cast<std::size_t>(Cap::ring_lanes) + 1;

struct Wait {
  double likely_s = 0;
  double spread_s = 0;  ///< standard deviation
};

/// Hours of a weekday, from and to, in which junctions take longer.
struct Peak {
  double from_h = 0, to_h = 0;
  double factor = 1;
};

struct Numbers {
  std::array<double, level_count> share{};          ///< by level, 1 first
  std::array<double, level_count> learner_delay{};  ///< by level, 1 first
  std::vector<Peak> peaks;
  std::array<double, class_count> class_mps{};
  std::array<double, cap_count> cap_mps{};
  double narrow_m = 0, single_track_m = 0;
  std::array<Wait, road::control_count> waits{};
  double running_variance = 0;  ///< s² per s
};

/// text: of the table; the built-in one is rule_text("pace").
Numbers read_numbers(std::string_view text);

}  // namespace loopwright::pace
