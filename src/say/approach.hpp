// The stretch of a drive between the last thing said and the next: from where the next is spoken,
// and what a listener meets on the way that could be taken for it.
#pragma once

#include <optional>
#include <vector>

#include "say/moments.hpp"

namespace loopwright::say {

/// The rounding of distances on the sheet: 25 yd or 25 m.
inline constexpr double told_within_m = 25;

/// What a phrase counts: side roads on one side, lights, crossroads.
struct Counted {
  int before = 0;          ///< met between the speaking and the one that is meant
  bool doubtful = false;   ///< something there may be counted or not
  bool alongside = false;  ///< all such things lead off nearly along the way: nobody turns there
  std::vector<StretchId> arms;  ///< the side roads met, counted or not
};

class Approach {
 public:
  /// To a moment, from the one before it. Rules: the drive outlives this.
  Approach(const Drive& drive, const Moment& before, const Moment& due);

  /// Side roads on that side; may move the place to speak back, to before the first of them.
  Counted side_roads(road::Movement side);
  Counted slip_roads(road::Movement side);
  Counted small_roads(road::Movement side);
  Counted lights();
  Counted crossroads();
  /// Moves the place to speak on, so that only the last `keep` of those counted are still met, or
  /// as few more as are met when it would be too late to speak; how many that are.
  int speak_after_all_but(int keep);
  /// Moves the place to speak on, behind the last thing that may be counted or not; how many are then
  /// still met for sure. Nothing, and it stays where it is, when there is no such thing or it would be too
  /// late to speak behind it.
  std::optional<int> speak_after_doubtful();
  /// Metres before the moment at which it is spoken.
  [[nodiscard]] double speak_m() const {
    return due_m_ - from_m_ + (standing() ? told_within_m : 0);
  }
  /// There is something between both moments that could be counted by mistake.
  [[nodiscard]] bool counts() const { return counts_; }
  /// So close behind where the car is turned round that it is said there, before driving on.
  [[nodiscard]] bool standing() const { return stands_before_ && joined_; }
  /// Too close behind the moment before to be spoken on its own.
  [[nodiscard]] bool joined() const { return joined_ && !stands_before_; }

 private:
  struct Met {
    double at_m = 0;
    bool sure = true;
    StretchId arm;
    bool alongside = false;
    double lasts_m = 0;  ///< how far on one is still amidst it: of lights
  };
  /// Arms to one side; small roads and private ones alone, or all but them.
  void meet_roads(road::Movement side, bool small);
  Counted count();
  /// Moves the place to speak to between one thing met and the next, if it is clear of both and not too late.
  bool speak_behind(const Met& met, double next_m);

  const Drive& drive_;
  std::size_t first_joint_;  ///< the first that lies wholly between both moments
  std::size_t due_joint_;
  double floor_m_ = 0;  ///< nothing is spoken before this
  double from_m_ = 0;
  double due_m_ = 0;
  bool joined_ = false;
  bool stands_before_ = false;  ///< the car is turned round before it
  bool counts_ = false;
  std::vector<Met> met_;
};

}  // namespace loopwright::say
