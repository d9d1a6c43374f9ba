// What a lesson in parts got of each want, and what that is worth.
//
//   LessonCounts counts(ground, passes, loop);   counts.met(0, want);   counts.worth()
//
// Rules: passes are the drive's, in driving order, timed, and the loop's passes are the same; the loop has its
// parts and its practice. Of one place the caps hold over all parts that want the same; spacing holds within a part.
#pragma once

#include <map>
#include <span>
#include <tuple>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

class LessonCounts {
 public:
  LessonCounts(const Ground& ground, std::span<const PlacePass> passes, const wish::Loop& loop);

  /// Of the wants of all parts in their order; of a lesson without parts, of its own.
  [[nodiscard]] const std::vector<std::vector<wish::Met>>& met() const { return met_; }
  /// In milli-units: the passes "max" wants are practised by, and those that are welcome.
  [[nodiscard]] std::int64_t worth() const { return worth_; }

 private:
  using WantKey = std::tuple<road::Kind, road::Movement, int, int>;
  struct Used {
    std::map<PlaceId, int> of_place;
    std::map<std::pair<PlaceId, road::Movement>, std::size_t> practised;
  };
  [[nodiscard]] bool counts(std::size_t pass, wish::RowSpan rows, const wish::Want& want) const;
  [[nodiscard]] std::vector<std::size_t> counting(const wish::Want& want, wish::RowSpan rows);
  [[nodiscard]] std::vector<std::size_t> practised(const wish::Want& want, wish::RowSpan rows);
  void count_part(wish::RowSpan rows, std::span<const wish::Want> wants);
  void add_welcome();
  Used& used(const wish::Want& want, bool practised);

  const Ground& ground_;
  std::span<const PlacePass> passes_;
  const wish::Loop& loop_;
  wish::RowSpan practice_;
  std::map<std::pair<WantKey, bool>, Used> used_;
  std::vector<std::uint8_t> taken_;  // by pass: some want counts it
  std::vector<std::vector<wish::Met>> met_;
  std::int64_t worth_ = 0;
};

}  // namespace loopwright::find
