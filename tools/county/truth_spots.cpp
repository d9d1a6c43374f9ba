// Where one may stop and practise. A rule infers it and keeps only the best few of a neighbourhood, so
// nothing is `must` but this: around a street that is beyond doubt good for it, some street must do.
// What is `may` is what the law leaves: Highway Code rules 238 to 252, with its 10 m from junctions.
#include <algorithm>
#include <cmath>

#include "county/truth_parts.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double around_m = 700;  // a neighbourhood: some cells of 0.2 square kilometres
constexpr double free_m = 200;    // of straight kerb without anything: good beyond doubt
const std::uint64_t quiet_kinds = bit(Kind::move_off) | bit(Kind::parallel_park) |
                                  bit(Kind::pull_up_right) | bit(Kind::turn_in_road) |
                                  bit(Kind::emergency_stop);

bool is_street(const Road& road) {
  return road.learner && !road.service() && !road.ring && !road.link && rank_of(road) >= 4;
}

bool banned(const Road& road) {
  return std::ranges::any_of(road.line->tags, [](const auto& tag) {
    return tag.first.starts_with("parking") || tag.first.starts_with("cycleway") ||
           tag.first.starts_with("lanes") || tag.first.starts_with("width") ||
           tag.first.starts_with("bus") || tag.first.find(":conditional") != std::string::npos;
  });
}

/// The longest part without a point that anything else shares or that has tags.
double longest_free(const Net& net, const Road& road) {
  const std::vector<Spot>& line = road.line->points;
  double longest = 0, metres = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const bool marked = net.arms(line[i]).size() > 2 || !net.tags(line[i]).empty();
    const bool turns = i > 0 && std::abs(turn_at(line[i - 1], line[i], line[i + 1])) > 0.06;
    if (marked || turns) metres = 0;
    metres += apart(line[i], line[i + 1]);
    longest = std::max(longest, metres);
  }
  return longest;
}

bool quiet(const Road& road) {
  const int limit = limit_mph(road, true);
  return road.road_class == "residential" && limit > 0 && limit <= 30 && road.two_way();
}

}  // namespace

void tell_spots(const Net& net, Rows& rows) {
  for (const Road& road : net.roads()) {
    if (!is_street(road)) continue;
    rows.may_along(quiet_kinds, road, road.two_way() ? Course::both : Course::any);
    const double up = incline_of(road);
    if (std::abs(up) >= 4 || !net.county().hills.empty() || road.tag("incline") == "up" ||
        road.tag("incline") == "down")
      rows.may_along(bit(Kind::uphill_start), road, Course::both);
    if (!quiet(road) || banned(road) || longest_free(net, road) < free_m) continue;
    const Spot middle = along(road.line->points, road.length / 2);
    for (const Kind kind :
         {Kind::move_off, Kind::turn_in_road, Kind::pull_up_right, Kind::parallel_park})
      rows.must_at(kind, middle, around_m);
    const bool busy = std::ranges::any_of(net.county().lone, [&](const Lone& lone) {
      const bool house = lone.tags.contains("addr:housenumber") && lone.tags.size() <= 3;
      return !house && nearest(road.line->points, lone.at).off_m < 100;
    });
    if (longest_free(net, road) > 1.5 * free_m && !busy)
      rows.must_at(Kind::emergency_stop, middle, around_m);
    if (std::abs(up) >= 5) rows.must_at(Kind::uphill_start, middle, around_m);
  }
}

}  // namespace loopwright::county
