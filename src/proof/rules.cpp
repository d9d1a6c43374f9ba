// Method:
// 1. Every stretch must be drivable; if it isn't, the piece's flags tell why.
// 2. At every node between two stretches: no wall stands there, unless the car turns round before
//    it; a car turns round only where nothing else may be driven, or at a wall, and only where the
//    wish lets it; nor does it turn round the tip of an island, from one half of a divided road back
//    along the other, nor through a gap between the halves.
// 3. Turn restrictions are followed along the drive by their own paths, not by the area's table of
//    turns: a "no" may not be driven to its end; an "only" must be, once its first stretch (and, if
//    it leads over whole roads, the second) has been driven. Those with hours: by_the_hour.cpp.
#include <algorithm>
#include <cmath>

#include "loopwright/wish/turn_round.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

using road::TurnRule;

std::string why_shut(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  const std::string tag(roads.text(piece.access_source));
  const std::string because = tag.empty() ? "" : " (" + tag + ")";
  if ((roads.stretch(stretch).flags & road::stretch_flag::cut_off) != 0)
    return "it can't be driven into and out of";
  if ((piece.flags & road::piece_flag::no_access) != 0)
    return "it is shut to a learner's car" + because;
  if ((piece.flags & road::piece_flag::destination_only) != 0)
    return "it is not for driving through" + because;
  if ((piece.flags & road::piece_flag::one_way) != 0) return "it is one-way, the other way";
  return "it may not be driven that way" + because;
}

std::int64_t osm_id(const Drive& drive, NodeId node) {
  return drive.roads.nodes[node.index()].osm_id;
}

/// No other road leaves the node that a learner may drive.
bool nothing_else_leaves(const road::Roads& roads, NodeId node, PieceId piece) {
  const auto leaving = roads.leaving(node);
  return std::none_of(leaving.begin(), leaving.end(),
                      [&](StretchId s) { return s.piece() != piece && roads.drivable(s); });
}

// Sharper than this one only turns back. Halves of a divided road part at 10 to 40 degrees; ours.
constexpr double turning_back_deg = 120;
constexpr double straight_deg = 60;  // closer to its heading a road goes on
constexpr double widest_gap_m = 40, widest_gap_of_one_name_m = 20;  // ours
constexpr double circle_m = 60, one_way_circle_m = 120;             // ours

/// One half of a divided road: the law lets nobody drive it the other way.
bool is_half(const road::Roads& roads, StretchId s) {
  constexpr std::uint32_t legal = road::stretch_flag::drivable | road::stretch_flag::cut_off;
  return (roads.stretch(s.back()).flags & legal) == 0;
}

/// From one half of a road back along its other half. The halves are different ways of one road.
bool turns_round_an_island(const road::Roads& roads, StretchId from, StretchId to) {
  const road::Piece& a = roads.piece(from);
  const road::Piece& b = roads.piece(to);
  if (a.way == b.way || a.name != b.name || a.ref != b.ref || a.road_class != b.road_class)
    return false;
  return is_half(roads, from) && is_half(roads, to) &&
         std::abs(heading_change_deg(road::bearing_in_deg(roads, from),
                                     road::bearing_out_deg(roads, to))) > turning_back_deg;
}

/// The law lets a learner drive it, whether or not it leads anywhere.
bool is_legal(const road::Roads& roads, StretchId s) {
  constexpr std::uint32_t legal = road::stretch_flag::drivable | road::stretch_flag::cut_off;
  return (roads.stretch(s).flags & legal) != 0;
}

/// Of one class, and of one name or number.
bool is_one_road(const road::Roads& roads, StretchId from, StretchId to) {
  const road::Piece &a = roads.piece(from), &b = roads.piece(to);
  if (a.road_class != b.road_class) return false;
  if (a.name == b.name && a.ref == b.ref) return true;
  return (a.name == b.name && !roads.text(a.name).empty()) ||
         (a.ref == b.ref && !roads.text(a.ref).empty());
}

/// Some road was open but the one driven, at a node from row `first` on to row `last`.
bool had_a_choice(const Drive& drive, std::size_t first, std::size_t last) {
  for (std::size_t i = first; i < last; ++i) {
    const StretchId here = drive.stretches[i];
    for (const StretchId other : drive.roads.leaving(drive.roads.to_node(here))) {
      if (other != drive.stretches[i + 1] && other != here.back() && is_legal(drive.roads, other))
        return true;
    }
  }
  return false;
}

/// At its end the road that `half` is of is open both ways: a circle at the end of a street is left there.
bool leads_out(const road::Roads& roads, StretchId half) {
  const auto leaving = roads.leaving(roads.to_node(half));
  return std::any_of(leaving.begin(), leaving.end(), [&](StretchId on) {
    return is_one_road(roads, half, on) && is_legal(roads, on) && !is_half(roads, on);
  });
}

/// From `last` the road leads on, one-way and its own all along, to where stretch `first` begins; elsewhere only out.
bool ends_in_a_circle(const road::Roads& roads, StretchId first, StretchId last) {
  const NodeId begin = roads.from_node(first);
  double metres = roads.piece(first).length_m;
  constexpr int most_pieces = 100;  // those without length would be followed for ever
  StretchId here = last;
  for (int pieces = 0; here.known() && pieces < most_pieces; ++pieces) {
    metres += roads.piece(here).length_m;
    if (metres > one_way_circle_m) return false;
    if (roads.to_node(here) == begin) return true;
    StretchId on;
    for (const StretchId next : roads.leaving(roads.to_node(here))) {
      const bool is_own =
          is_legal(roads, next) && is_half(roads, next) && is_one_road(roads, first, next);
      if (next == last || !is_own) continue;
      const bool out = leads_out(roads, next);
      if (out && roads.to_node(next) == begin) return true;
      if (out) continue;
      if (on.known()) return false;  // a crossing of divided roads
      on = next;
    }
    here = on;
  }
  return false;
}

double change_deg(const road::Roads& roads, StretchId from, StretchId to) {
  return std::abs(
      heading_change_deg(road::bearing_in_deg(roads, from), road::bearing_out_deg(roads, to)));
}

/// From one half of a road back along its other half, wherever these lie.
bool turns_back(const road::Roads& roads, StretchId from, StretchId to) {
  return is_half(roads, from) && is_half(roads, to) && is_one_road(roads, from, to) &&
         roads.piece(from).way != roads.piece(to).way &&
         change_deg(roads, from, to) > turning_back_deg;
}

/// Rows `first` and `last` are halves of one road, and the way back between them leads through a gap:
/// a short one, or one of other roads.
bool is_round_a_gap(const Drive& drive, std::size_t first, std::size_t last) {
  const road::Roads& roads = drive.roads;
  const StretchId from = drive.stretches[first], to = drive.stretches[last];
  if (!turns_back(roads, from, to)) return false;
  double gap_m = 0, own_m = 0;
  for (std::size_t i = first + 1; i < last; ++i) {
    const StretchId between = drive.stretches[i];
    const road::Piece& piece = roads.piece(between);
    const bool own = is_one_road(roads, from, between);
    const bool goes_on =
        own && is_half(roads, between) && change_deg(roads, from, between) < straight_deg;
    if ((piece.flags & road::piece_flag::ring) != 0 || goes_on) return false;
    if (i > first + 1 && turns_back(roads, from, between)) return false;  // there it ends
    gap_m += piece.length_m;
    if (own) own_m += piece.length_m;
  }
  return gap_m <= (own_m > 0 ? widest_gap_of_one_name_m : widest_gap_m) &&
         had_a_choice(drive, first, last) && !ends_in_a_circle(roads, from, to);
}

/// True when the drive comes to the stretch of row i again within 60 m, or 120 m all one-way, by no
/// roundabout: a circle inside one junction.
bool drives_a_circle(const Drive& drive, std::size_t i) {
  double metres = 0;
  bool one_way = true;
  for (std::size_t from = i; from-- > 0;) {
    const StretchId here = drive.stretches[from];
    const road::Piece& piece = drive.roads.piece(here);
    metres += piece.length_m;
    one_way = one_way && is_half(drive.roads, here);
    const bool turns_round = drive.stretches[from + 1] == here.back();
    if (metres > (one_way ? one_way_circle_m : circle_m) || turns_round ||
        (piece.flags & road::piece_flag::ring) != 0)
      return false;
    if (here == drive.stretches[i]) return true;
  }
  return false;
}

/// True when the drive comes to row i by turning round through a gap between the halves of its road.
bool turns_round_a_gap(const Drive& drive, std::size_t i) {
  double gap_m = 0;
  for (std::size_t from = i; from-- > 0 && gap_m <= widest_gap_m;) {
    if (from + 1 < i && is_round_a_gap(drive, from, i)) return true;
    gap_m += drive.roads.piece(drive.stretches[from]).length_m;
  }
  return false;
}

bool node_holds(const Drive& drive, std::size_t i, Claims& claims) {
  const StretchId before = drive.stretches[i - 1];
  const NodeId node = drive.roads.to_node(before);
  const bool walled = (drive.roads.nodes[node.index()].flags & road::node_flag::wall) != 0;
  const auto say = [&](std::string_view what) {
    return at_stretch(drive, i) + ": it " + std::string(what) + " node " +
           std::to_string(osm_id(drive, node));
  };
  if (drive.stretches[i] != before.back())
    return claims.hold(!walled, [&] {
      return say("is reached through the wall at");
    }) && claims.hold(!turns_round_an_island(drive.roads, before, drive.stretches[i]), [&] {
      return say("is reached by turning round an island at");
    }) && claims.hold(!turns_round_a_gap(drive, i), [&] {
      return say("is reached by turning round through a gap in the reservation at");
    }) && claims.hold(!drives_a_circle(drive, i), [&] {
      return say("is reached by driving in a circle at");
    });
  const bool dead_end = (drive.roads.nodes[node.index()].flags & road::node_flag::dead_end) != 0;
  const bool may_turn =
      dead_end && (walled || nothing_else_leaves(drive.roads, node, before.piece()));
  return claims.hold(may_turn, [&] {
    return say("is reached by turning round, which only a dead end allows, at");
  }) && claims.hold(wish::may_turn_round(drive.wish, drive.roads, drive.stretches[i]), [&] {
    return say("is reached by turning round, which wasn't asked for, at");
  });
}

/// How many stretches of the rule's path the drive follows from row i on.
std::size_t followed(const Drive& drive, const TurnRule& rule, std::size_t i) {
  const auto path = drive.roads.path_of(rule);
  std::size_t n = 0;
  while (n < path.size() && i + n < drive.stretches.size() && drive.stretches[i + n] == path[n])
    ++n;
  return n;
}

/// True when the drive does what an "only" says, or ends before it can do otherwise.
bool obeyed(const Drive& drive, const TurnRule& rule, std::size_t i) {
  const std::size_t n = followed(drive, rule, i);
  const bool bound = n >= std::min<std::size_t>(2, rule.path_count - 1);
  return !bound || n == rule.path_count || i + n == drive.stretches.size();
}

std::string rule_text(const Drive& drive, const TurnRule& rule) {
  return "relation " + std::to_string(rule.relation) + " (" +
         std::string(drive.roads.text(rule.text)) + ")";
}

/// The rules that begin with row i are obeyed.
bool rules_hold(const Drive& drive, const Bans& bans, std::size_t i, Claims& claims) {
  const std::string from_way = "way " + std::to_string(drive.loop.stretches[i].way);
  for (const auto& [first, row] : bans.from(drive.stretches[i])) {
    const TurnRule& rule = drive.roads.turn_rules[row];
    if (!drive.roads.text(rule.condition).empty()) continue;  // by_the_hour.cpp
    const std::size_t n = followed(drive, rule, i);
    const bool holds = rule.only != 0 ? obeyed(drive, rule, i) : n < rule.path_count;
    if (!claims.hold(holds, [&] {
          const std::size_t at = rule.only != 0 ? i + n : i + n - 1;
          return at_stretch(drive, at) + ": " + rule_text(drive, rule) +
                 (rule.only != 0 ? " allows only another way on from " : " forbids coming from ") +
                 from_way;
        }))
      return false;
  }
  return true;
}

}  // namespace

Bans::Bans(const road::Roads& roads) {
  for (std::uint32_t row = 0; row < roads.turn_rules.size(); ++row)
    by_first_.emplace_back(roads.path_of(roads.turn_rules[row]).front(), row);
  std::sort(by_first_.begin(), by_first_.end());
}

std::span<const Bans::Entry> Bans::from(StretchId first) const {
  const auto begin = std::partition_point(by_first_.begin(), by_first_.end(),
                                          [&](const Entry& e) { return e.first < first; });
  const auto end = std::partition_point(begin, by_first_.end(),
                                        [&](const Entry& e) { return e.first == first; });
  return {begin, end};
}

bool access_holds(const Drive& drive, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i)
    if (!claims.hold(drive.roads.drivable(drive.stretches[i]), [&] {
          return at_stretch(drive, i) + ": " + why_shut(drive.roads, drive.stretches[i]);
        }))
      return false;
  return true;
}

bool turns_hold(const Drive& drive, const Bans& bans, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    if (i > 0 && !node_holds(drive, i, claims)) return false;
    if (!rules_hold(drive, bans, i, claims)) return false;
  }
  return true;
}

}  // namespace loopwright::proof
