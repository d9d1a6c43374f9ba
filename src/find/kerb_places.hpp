// The places to pull up along a drive, and when it is at each of them.
//
//   const KerbPlaces kerbs(ground, drive);
//   for (const KerbPlace& one : kerbs.all()) if (kerbs.usable(one, 240)) …
//
// Rules: places beside the near kerb of the road as it is driven; one stops at the middle of each, which
// the drive must pass. Times count the stops that the drive has at the moment one asks. Only `usable`
// counts: what must be looked up on a plate first is nothing to plan with. The drive and the ground
// outlive it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct KerbPlace {
  std::size_t at = 0;       ///< row of the drive
  std::uint32_t place = 0;  ///< row of roads.pull_ups
  double at_m = 0;          ///< of the stretch, from where it is entered
  pace::Spell driven;       ///< from the start to there, stops not counted
};

class KerbPlaces {
 public:
  KerbPlaces(const Ground& ground, const Drive& drive);

  /// In driving order.
  [[nodiscard]] const std::vector<KerbPlace>& all() const { return places_; }
  /// Driving before each row, and last that of the whole drive.
  [[nodiscard]] const std::vector<pace::Spell>& before() const { return before_; }
  /// When the drive comes to a place, in seconds after the start; stops before it counted.
  [[nodiscard]] wish::Range there_s(const KerbPlace& one) const;
  /// When it comes to the beginning of a row, likely; for the number of rows: to its end.
  [[nodiscard]] double row_s(std::size_t row) const;
  /// One may stop there for so long, as far as the map tells.
  [[nodiscard]] bool usable(const KerbPlace& one, double stay_s) const;
  /// The row of the drive's planned stops that is here; -1: none is.
  [[nodiscard]] int planned_at(const KerbPlace& one) const;

 private:
  [[nodiscard]] double stops_before_s(const KerbPlace& one) const;

  const Ground& ground_;
  const Drive& drive_;
  std::vector<pace::Spell> before_;
  std::vector<KerbPlace> places_;
};

}  // namespace loopwright::find
