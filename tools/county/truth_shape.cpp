// Runs that a rule infers from shape, class and surroundings. What no rule could miss is `must`, what
// none should find is covered by no row, the ground between is `may`.
// - Country road: national limit, one carriageway, far from built-up streets.
// - Bends: whoever keeps the limit through them would feel more than 2 m/s2 to the side (TRADE 7.2).
// - Slip road: a link that leaves or joins a motorway, trunk road or dual carriageway at under 25
//   degrees, over 60 m long (MAP-TAGS 1.8).
// - Following the signs: a kilometre along one road number or signed to one place (kinds.txt).
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>

#include "county/truth_parts.hpp"

namespace loopwright::county {
namespace {

using road::bit;
using road::Kind;
constexpr double degree = std::numbers::pi / 180;
constexpr double far_m = 400;  // from the nearest built-up street: in the country for certain
constexpr double signed_m = 1000, sure_m = 600;
constexpr double slip_deg = 25, slip_m = 60;

Course course_of(const Road& road) {
  return road.two_way() ? Course::both : road.along ? Course::along : Course::against;
}

bool built_up(const Road& road) {
  const int limit = limit_mph(road, true);
  return road.road_class == "residential" || says(road.line->tags, "lit", {"yes"}) ||
         (limit > 0 && limit <= 40);
}

/// How much of a road bends with a radius under 150 m, where 2 m/s2 let one do 39 mph.
double sharp_share(const Road& road) {
  constexpr double step_m = 10, chord_m = 40, radius_m = 150;
  const std::vector<Spot>& line = road.line->points;
  double looks = 0, sharp = 0;
  for (double at = chord_m; at + chord_m < road.length; at += step_m) {
    const double turned =
        turn_at(along(line, at - chord_m), along(line, at), along(line, at + chord_m));
    looks += 1;
    sharp += std::abs(turned) > chord_m / radius_m ? 1 : 0;
  }
  return looks > 0 ? sharp / looks : 0;
}

class Shape {
 public:
  Shape(const Net& net, Rows& rows) : net_(net), rows_(rows) {
    for (const Road& road : net.roads()) {
      if (!road.service() && built_up(road))
        built_.insert(built_.end(), road.line->points.begin(), road.line->points.end());
      if (!road.ring && !road.link && !road.tag("ref").empty())
        by_ref_[road.tag("ref")] += road.length;
    }
  }
  void tell(const Road& road) {
    tell_signed(road);
    if (road.ring) return;
    if (road.link) return tell_slip(road);
    tell_country(road);
    tell_bends(road);
    tell_brow(road);
  }

 private:
  void tell_country(const Road& road);
  void tell_bends(const Road& road);
  [[nodiscard]] bool may_bend(const Road& road, int beyond) const;
  void tell_brow(const Road& road);
  void tell_signed(const Road& road);
  void tell_slip(const Road& road);
  [[nodiscard]] bool merges(const Arm& end) const;

  const Net& net_;
  Rows& rows_;
  std::vector<Spot> built_;
  std::map<std::string, double> by_ref_;
};

void Shape::tell_country(const Road& road) {
  const int limit = limit_mph(road, true);
  const bool national = road.tag("maxspeed:type") == "GB:nsl_single" ||
                        (limit == 60 && road.tag("maxspeed:type") != "sign");
  const bool unknown = limit == 0 && road.tag("lit") != "yes" && road.tag("maxspeed:type").empty();
  if (!national && limit != 60 && !unknown) return;
  const bool far = std::ranges::none_of(road.line->points, [&](Spot p) {
    return std::ranges::any_of(built_, [&](Spot b) { return apart(p, b) < far_m; });
  });
  const bool certain = national && far && road.two_way() && road.road_class != "residential" &&
                       road.tag("lit") != "yes" && road.length > 200;
  if (certain)
    rows_.must_along(Kind::country_road, road, Course::both, road.length);
  else
    rows_.may_along(bit(Kind::country_road), road, course_of(road));
}

/// The most a road turns within 90 m.
double most_turned(const Road& road) {
  const std::vector<Spot>& line = road.line->points;
  double most = 0;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    double turned = 0;
    double metres = 0;
    for (std::size_t j = i; j + 1 < line.size() && metres < 90; ++j) {
      turned += turn_at(line[j - 1], line[j], line[j + 1]);
      metres += apart(line[j], line[j + 1]);
      most = std::max(most, std::abs(turned));
    }
  }
  return most;
}

/// The road, or one it goes on into within two ways.
bool Shape::may_bend(const Road& road, int beyond) const {
  if (most_turned(road) >= 12 * degree) return true;
  if (beyond == 0) return false;
  return std::ranges::any_of(
      std::array{road.line->points.front(), road.line->points.back()}, [&](Spot end) {
        return std::ranges::any_of(
            net_.arms(end), [&](const Arm& arm) { return may_bend(net_.road(arm), beyond - 1); });
      });
}

void Shape::tell_bends(const Road& road) {
  const std::vector<Spot>& line = road.line->points;
  if (!may_bend(road, 2)) return;
  const int limit = std::min(limit_mph(road, true), limit_mph(road, false));
  const bool one_piece = std::ranges::all_of(line.begin() + 1, line.end() - 1, [&](Spot p) {
    return net_.arms(p).size() == 2 && net_.tags(p).empty();
  });
  if (limit >= 50 && road.two_way() && one_piece && road.length > 400 && sharp_share(road) > 0.7)
    return rows_.must_along(Kind::bends, road, Course::both, 0);
  // Bends may hang together with those of the road before.
  rows_.may_along(bit(Kind::bends), road, course_of(road));
}

void Shape::tell_brow(const Road& road) {
  const bool hump = says(road.line->tags, "bridge:structure", {"humpback"}) ||
                    says(road.line->tags, "bridge", {"humpback"});
  if (hump) rows_.must_along(Kind::brow, road, course_of(road), 0);
  const bool sign = std::ranges::any_of(
      road.line->points, [&](Spot p) { return !value(net_.tags(p), "hazard").empty(); });
  if (!net_.county().hills.empty() || sign)
    rows_.may_along(bit(Kind::brow) | bit(Kind::downhill), road, course_of(road));
}

void Shape::tell_signed(const Road& road) {
  const std::string& ref = road.tag("ref");
  const bool to_somewhere = !road.tag("destination").empty() ||
                            !road.tag("destination:forward").empty() ||
                            !road.tag("destination:backward").empty();
  if (ref.empty() && !to_somewhere) return;
  const bool certain =
      !ref.empty() && !road.ring && road.length > sure_m && by_ref_[ref] > 2 * signed_m;
  if (certain)
    rows_.must_along(Kind::independent_stretch, road, course_of(road), 0);
  else
    rows_.may_along(bit(Kind::independent_stretch), road, course_of(road));
}

bool Shape::merges(const Arm& end) const {
  const double own = net_.heading(end);
  const auto& arms = net_.arms(net_.road(end).line->points[end.at]);
  return std::ranges::any_of(arms, [&](const Arm& arm) {
    const Road& road = net_.road(arm);
    const bool fast = road.road_class == "motorway" || road.road_class == "trunk" ||
                      says(road.line->tags, "dual_carriageway", {"yes"});
    const double angle = std::abs(std::remainder(net_.heading(arm) - own, 2 * std::numbers::pi));
    return !road.link && fast && angle < slip_deg * degree;
  });
}

void Shape::tell_slip(const Road& road) {
  const std::size_t index = static_cast<std::size_t>(&road - net_.roads().data());
  const std::size_t last = road.line->points.size() - 1;
  const bool merge = merges({index, 0, +1}) || merges({index, last, -1});
  const bool certain = merge && road.length > slip_m + 10 && !road.two_way();
  if (certain)
    rows_.must_along(Kind::slip_road, road, course_of(road), 0);
  else
    rows_.may_along(bit(Kind::slip_road), road, course_of(road));
}

}  // namespace

void tell_shape(const Net& net, Rows& rows) {
  Shape shape(net, rows);
  for (const Road& road : net.roads())
    if (road.learner && !road.service()) shape.tell(road);
}

}  // namespace loopwright::county
