// The numbers of src/rules/caps.txt: how often a place may be used and what a pass is worth.
#pragma once

#include <array>
#include <cstdint>

#include "loopwright/road/kind.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

inline constexpr std::int64_t ms_per_minute = 60'000;
inline double minutes_of(std::int64_t ms) {
  return static_cast<double>(ms) / static_cast<double>(ms_per_minute);
}

struct Caps {
  int junction_passes = 0;
  int stretch_passes = 0;
  int quiet_passes = 0;
  std::int64_t spacing_ms = 0;
  double overlap_share = 0;
  double overlap_exempt_m = 0;
  double window_share = 0;
  int hardness_above_level = 0;
  std::int64_t welcome_worth = 0;        ///< milli-units
  int day_passes = 0, month_passes = 0;  ///< of a quiet street over all pupils, by the ledger
  double ledger_free_m = 0;              ///< round home and end
  double easy_first_share = 0, easy_last_share = 0;  ///< of the practice (wish::Ramp)
  int easy_below_level = 0, easy_least = 0, easy_last_hardest = 0;
  wish::PartLeeway part_leeway;
  std::int64_t part_link_ms = 0;               ///< to the roads a part keeps to
  std::array<std::int64_t, 6> repeat_worth{};  ///< milli-units, by how often passed before

  [[nodiscard]] int passes_of(road::Kind kind) const {
    return road::is_stretch_like(kind) ? stretch_passes : junction_passes;
  }
};

/// The numbers of the table, those in their place that the wish names.
Caps caps_of(const wish::Wish& wish);

/// The ramp of a wish that is to be easy first.
wish::Ramp ramp_of(const wish::Wish& wish, const Caps& caps);

/// Between the beginnings of two passes that have worth for a "max" want: as asked, or the table's.
std::int64_t spacing_ms_of(const wish::Wish& wish, const wish::Want& want, const Caps& caps);

}  // namespace loopwright::find
