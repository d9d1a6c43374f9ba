#include "course/streets.hpp"

#include <algorithm>

#include "loopwright/base/point.hpp"

namespace loopwright::test {
namespace {

constexpr int most_in_lesson = 2, most_on_day = 6, most_in_month = 20, month_days = 30;
constexpr double free_m = 500;

}  // namespace

std::map<StreetTally::Piece, StreetTally::Use> StreetTally::quiet_streets(
    const DrivenLoop& driven) {
  std::map<Piece, Use> streets;
  for (const wish::LoopStretch& stretch : driven.loop.stretches) {
    const road::Piece& piece = driven.roads.piece(stretch.stretch);
    if ((piece.flags & road::piece_flag::quiet) == 0) continue;
    const PieceId id = driven.roads.id_of(piece);
    const auto [low, high] = std::minmax(driven.roads.nodes[piece.a.index()].osm_id,
                                         driven.roads.nodes[piece.b.index()].osm_id);
    Use& use = streets[{piece.way, low, high}];
    ++use.times;
    use.near_door = nearest_on_line(driven.roads.shape_of(id), driven.wish.home).off_m <= free_m;
  }
  return streets;
}

std::vector<std::string> StreetTally::add(const DrivenLoop& driven, Date day) {
  const std::int64_t today = days_since_epoch(day);
  std::vector<std::string> faults;
  for (const auto& [piece, use] : quiet_streets(driven)) {
    auto& days = days_[piece];
    days[today] += use.times;
    int month = 0;
    for (auto at = days.upper_bound(today - month_days); at != days.end() && at->first <= today;
         ++at)
      month += at->second;
    most_a_day_ = std::max(most_a_day_, days[today]);
    most_a_month_ = std::max(most_a_month_, month);
    const std::string street = "quiet street of way " + std::to_string(piece.way) + " is driven ";
    if (use.times > most_in_lesson)
      faults.push_back(street + std::to_string(use.times) + " times in the lesson");
    if (use.near_door) continue;
    if (days[today] > most_on_day)
      faults.push_back(street + std::to_string(days[today]) + " times on the day");
    if (month > most_in_month)
      faults.push_back(street + std::to_string(month) + " times in thirty days");
  }
  return faults;
}

void StreetTally::take_back(const DrivenLoop& driven, Date day) {
  for (const auto& [piece, use] : quiet_streets(driven))
    days_[piece][days_since_epoch(day)] -= use.times;
}

}  // namespace loopwright::test
