// Method:
// 1. Every stretch must be drivable; if it isn't, the piece's flags tell why.
// 2. At every node between two stretches: no wall stands there, unless the car turns round before
//    it; a car turns round only where nothing else may be driven, or at a wall, and only where the
//    wish lets it; nor does it turn round the tip of an island, from one half of a divided road back
//    along the other.
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

bool node_holds(const Drive& drive, std::size_t i, Claims& claims) {
  const StretchId before = drive.stretches[i - 1];
  const NodeId node = drive.roads.to_node(before);
  const bool walled = (drive.roads.nodes[node.index()].flags & road::node_flag::wall) != 0;
  const auto say = [&](std::string_view what) {
    return at_stretch(drive, i) + ": it " + std::string(what) + " node " +
           std::to_string(osm_id(drive, node));
  };
  if (drive.stretches[i] != before.back())
    return claims.hold(!walled, [&] { return say("is reached through the wall at"); }) &&
           claims.hold(!turns_round_an_island(drive.roads, before, drive.stretches[i]),
                       [&] { return say("is reached by turning round an island at"); });
  const bool dead_end = (drive.roads.nodes[node.index()].flags & road::node_flag::dead_end) != 0;
  const bool may_turn =
      dead_end && (walled || nothing_else_leaves(drive.roads, node, before.piece()));
  return claims.hold(may_turn,
                     [&] {
                       return say("is reached by turning round, which only a dead end allows, at");
                     }) &&
         claims.hold(
             wish::may_turn_round(drive.wish, drive.roads, drive.stretches[i]),
             [&] { return say("is reached by turning round, which wasn't asked for, at"); });
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
