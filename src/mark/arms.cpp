// 1. Each piece that touches the junction is a part; traffic comes in by it, leaves by it, or both.
// 2. Two parts next to each other in driving order are one arm when at least one is one-way, they
//    aren't a way in followed by a way out, and either
//    - their traffic meets again within 60 m (a splitter island; traffic_reach.cpp), or
//    - the way out and the way in are the same road: same name or ref, both slip roads or both
//      halves of a dual carriageway, and they lie within 60 degrees; or both are nameless roads of
//      one class within 30 degrees.
//    Two two-way roads that meet again (a crescent) stay two arms: the signs show two.
//    A way out and a way in of one name or ref are one arm, too, when nothing but other ways in lie
//    between: at a big ring a side street may come in there.
// 3. Exits are counted over arms in driving order from the entry.
#include "arms.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <iterator>

#include "approach.hpp"
#include "public_road.hpp"
#include "traffic_reach.hpp"

namespace loopwright::mark {
namespace {

constexpr double same_road_within_deg = 60;
constexpr double nameless_within_deg = 30;
constexpr double clear_of_flare_m = 30;

class Joiner {
 public:
  Joiner(const Draft& draft, const road::Roads& roads) : traffic_(draft, roads), roads_(roads) {}

  /// Rules: b follows a in driving order.
  bool one_arm(const ArmPart& a, const ArmPart& b) {
    const bool one_way = a.in != a.out || b.in != b.out;
    if (!one_way || (!a.out && !b.in) || a.away.piece() == b.away.piece()) return false;
    return meet_again(a, b) || (!a.in && !b.out && is_same_road(a, b));
  }

  /// Rules: a is only a way out, b only a way in.
  bool one_road(const ArmPart& a, const ArmPart& b) const {
    return is_named_alike(a, b) && apart_deg(a, b) <= same_road_within_deg;
  }

 private:
  using Sense = TrafficReach::Sense;

  bool meet_again(const ArmPart& a, const ArmPart& b) {
    if (a.out && b.in && meet(a, Sense::leaving, b, Sense::coming)) return true;
    if (a.out && b.out && meet(a, Sense::leaving, b, Sense::leaving)) return true;
    return a.in && b.in && meet(a, Sense::coming, b, Sense::coming);
  }

  bool meet(const ArmPart& a, Sense sense_a, const ArmPart& b, Sense sense_b) {
    const auto from_a = traffic_.reach(a.away, sense_a);
    return !from_a.empty() && share_one(from_a, traffic_.reach(b.away, sense_b));
  }

  bool is_same_road(const ArmPart& a, const ArmPart& b) const {
    const road::Piece& x = roads_.piece(a.away);
    const road::Piece& y = roads_.piece(b.away);
    const bool alike =
        is_named_alike(a, b) || (is_dual(x) && is_dual(y)) || (is_link(x) && is_link(y));
    if (alike) return apart_deg(a, b) <= same_road_within_deg;
    return !is_named(x) && !is_named(y) && x.road_class == y.road_class &&
           apart_deg(a, b) <= nameless_within_deg;
  }

  bool is_named_alike(const ArmPart& a, const ArmPart& b) const {
    const road::Piece& x = roads_.piece(a.away);
    const road::Piece& y = roads_.piece(b.away);
    return same_text(x.name, y.name) || same_text(x.ref, y.ref);
  }

  double apart_deg(const ArmPart& a, const ArmPart& b) const {
    return std::abs(
        heading_change_deg(bearing_of_arm(roads_, a.away), bearing_of_arm(roads_, b.away)));
  }

  static bool is_text(TextId text) { return text.known() && text.index() != 0; }
  static bool same_text(TextId a, TextId b) { return is_text(a) && a == b; }
  static bool is_named(const road::Piece& piece) {
    return is_text(piece.name) || is_text(piece.ref);
  }
  static bool is_dual(const road::Piece& piece) {
    return (piece.flags & (road::piece_flag::dual | road::piece_flag::dual_inferred)) != 0;
  }
  static bool is_link(const road::Piece& piece) {
    return piece.road_class >= road::RoadClass::motorway_link &&
           piece.road_class <= road::RoadClass::tertiary_link;
  }

  TrafficReach traffic_;
  const road::Roads& roads_;
};

bool only_out(const JunctionArm& arm) {
  return arm.can_leave() && !arm.can_enter();
}
bool only_in(const JunctionArm& arm) {
  return arm.can_enter() && !arm.can_leave();
}

/// Takes the way in of a road to its way out, where only other ways in lie between.
void join_over_ways_in(const Joiner& joiner, std::vector<JunctionArm>& arms) {
  for (std::size_t out = 0; out < arms.size(); ++out) {
    if (!only_out(arms[out])) continue;
    for (std::size_t step = 1; step < arms.size(); ++step) {
      const std::size_t in = (out + step) % arms.size();
      if (!only_in(arms[in])) break;
      if (!joiner.one_road(arms[out].parts.back(), arms[in].parts.front())) continue;
      std::ranges::move(arms[in].parts, std::back_inserter(arms[out].parts));
      arms.erase(arms.begin() + static_cast<std::ptrdiff_t>(in));
      if (in < out) --out;
      break;
    }
  }
}

double turn_from(double after_deg, double bearing, Side side) {
  const double clockwise = std::fmod(bearing - after_deg + 720, 360);
  return side == Side::left ? clockwise : std::fmod(360 - clockwise, 360);
}

}  // namespace

bool JunctionArm::is_public() const {
  return std::ranges::any_of(parts, [](const ArmPart& p) { return p.is_public; });
}

bool JunctionArm::can_enter() const {
  return std::ranges::any_of(parts, [](const ArmPart& p) { return p.in; });
}

bool JunctionArm::can_leave() const {
  return std::ranges::any_of(parts, [](const ArmPart& p) { return p.out; });
}

bool JunctionArm::is_exit() const {
  return std::ranges::any_of(parts, [](const ArmPart& p) { return p.is_public && p.out; });
}

StretchId JunctionArm::in() const {
  const auto at = std::ranges::find(parts, true, &ArmPart::in);
  return at == parts.end() ? StretchId{} : at->away.back();
}

StretchId JunctionArm::out() const {
  const auto at = std::ranges::find(parts, true, &ArmPart::out);
  return at == parts.end() ? StretchId{} : at->away;
}

ArmPart part_of(const Draft& draft, StretchId away, std::size_t position) {
  return {away,
          traffic_takes(draft, away.back()),
          traffic_takes(draft, away),
          is_public(draft.tables.pieces[away.piece().index()]),
          position,
          0};
}

void order_round(const Draft& draft, double after_deg, std::span<ArmPart> parts) {
  std::vector<std::pair<double, ArmPart>> turned;
  turned.reserve(parts.size());
  for (const ArmPart& part : parts) {
    turned.emplace_back(turn_from(after_deg, draft.bearing_out_deg(part.away), draft.side()), part);
  }
  std::ranges::stable_sort(turned, {}, &std::pair<double, ArmPart>::first);
  std::ranges::transform(turned, parts.begin(), &std::pair<double, ArmPart>::second);
}

std::vector<JunctionArm> join_parts(const Draft& draft, const road::Roads& roads,
                                    const std::vector<ArmPart>& parts) {
  const std::size_t count = parts.size();
  Joiner joiner(draft, roads);
  std::vector<bool> goes_on(count);  // the part after this one is the same arm
  for (std::size_t i = 0; count > 1 && i < count; ++i) {
    goes_on[i] = joiner.one_arm(parts[i], parts[(i + 1) % count]);
  }
  const auto first_end = std::ranges::find(goes_on, false);
  if (first_end == goes_on.end())
    return count == 0 ? std::vector<JunctionArm>{} : std::vector<JunctionArm>{{parts}};
  // The part after an arm's end begins an arm; the last arms may reach over the list's end.
  const bool wraps = goes_on.back();
  const std::size_t start =
      wraps ? static_cast<std::size_t>(first_end - goes_on.begin()) + 1 : std::size_t{0};
  std::vector<JunctionArm> arms;
  arms.reserve(count);
  arms.emplace_back();
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t at = (start + i) % count;
    arms.back().parts.push_back(parts[at]);
    if (!goes_on[at] && i + 1 < count) arms.emplace_back();
  }
  join_over_ways_in(joiner, arms);
  return arms;
}

std::vector<JunctionArm> arms_at(const Draft& draft, const road::Roads& roads, NodeId node) {
  std::vector<ArmPart> parts;
  parts.reserve(roads.leaving(node).size());
  for (const StretchId away : roads.leaving(node)) parts.push_back(part_of(draft, away, 0));
  order_round(draft, 0, parts);
  return join_parts(draft, roads, parts);
}

int exit_number(const std::vector<JunctionArm>& arms, std::size_t from, std::size_t to) {
  assert(from < arms.size() && to < arms.size());
  if (!arms[to].is_exit()) return 0;
  int number = 0;
  for (std::size_t step = 1;; ++step) {
    const std::size_t at = (from + step) % arms.size();
    if (arms[at].is_exit()) ++number;
    if (at == to) return number;
  }
}

double bearing_of_arm(const road::Roads& roads, StretchId away) {
  return bearing_away_deg(roads, away, clear_of_flare_m, 60);
}

double place_of_arm_deg(const road::Roads& roads, Point middle, const JunctionArm& arm) {
  const Point first = point_away(roads, arm.parts.front().away, clear_of_flare_m);
  const Point last = point_away(roads, arm.parts.back().away, clear_of_flare_m);
  return bearing_deg(middle, point_along(std::array{first, last}, distance_m(first, last) / 2));
}

void add_arm_rows(Draft& draft, const road::Roads& roads, PlaceId id,
                  const std::vector<JunctionArm>& arms) {
  road::Place& place = draft.tables.places[id.index()];
  place.arm_first = static_cast<std::uint32_t>(draft.tables.arms.size());
  place.arms = static_cast<std::uint16_t>(arms.size());
  for (const JunctionArm& arm : arms) {
    road::Arm row;
    row.place = id;
    row.bearing_deg =
        static_cast<std::uint16_t>(std::lround(place_of_arm_deg(roads, place.at, arm)) % 360);
    // By the road one would leave by: the way out may be shut while the way in is open to all.
    row.is_public = (arm.can_leave() ? arm.is_exit() : arm.is_public()) ? 1 : 0;
    row.can_leave = arm.can_leave() ? 1 : 0;
    row.in = arm.in();
    row.out = arm.out();
    draft.tables.arms.push_back(row);
  }
}

}  // namespace loopwright::mark
