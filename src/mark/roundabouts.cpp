// 1. Rings are found from the ways (rings.cpp); only their pieces stay flagged as ring, and each
//    becomes a place.
//    A ring driven against the side of the road is reported and gets no arms or chances: nobody can
//    say which exit is which.
// 2. Along a ring in driving order, the roads at each node are the parts of its arms, joined across
//    splitter islands (arms.cpp). A road that starts into the island is no arm; nor are lanes through
//    the island that turn bans keep apart from the ring, and a banned way out is no exit.
// 3. A ring with an island one may drive over is a mini-roundabout. Otherwise it has signals when a
//    light stands on the ring or on at least half of its entries within 30 m (ours), and
//    several lanes when a ring piece or an entry has two.
// 4. A chance for each way in and way out: the ring driven from one to the other, all the way round
//    for the arm one came by. Exits are counted as the signs do.
// Movements are told by where the arms lie and how they run (ring_movement.cpp).
#include <algorithm>
#include <array>
#include <cmath>

#include "approach.hpp"
#include "arms.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "ring_kind.hpp"
#include "ring_movement.hpp"
#include "rings.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

constexpr std::string_view wrong_way_round = "roundabout is driven the wrong way round";
constexpr std::string_view gyratory = "roundabout over 100 m across, a gyratory";
constexpr std::string_view armless = "roundabout without a road to it";
constexpr double gyratory_m = 100;

/// Where a road would be clear of the kerb, so that its side of it tells.
constexpr double into_island_m = 10;

bool leads_inside(const road::Roads& roads, const Ring& ring, StretchId away) {
  const double half = roads.piece(away).length_m / 2;
  return ring.holds(point_away(roads, away, std::min(into_island_m, half)));
}

/// A road that leads away from a ring's node at a position of its driving order.
struct Touch {
  StretchId away;
  std::size_t at = 0;
};

/// True when turn bans forbid going from one to the other, both of which one may drive.
bool is_banned(const road::Roads& roads, StretchId from, StretchId to) {
  return roads.drivable(from) && roads.drivable(to) && !is_legal(roads, std::array{from, to});
}

/// A road that touches the ring at a node, as the ring's traffic may use it.
ArmPart ring_part(const Draft& draft, const road::Roads& roads, const Ring& ring, Touch touch) {
  const std::size_t count = ring.stretches.size();
  ArmPart part = part_of(draft, touch.away, touch.at);
  const StretchId before = ring.stretches[(touch.at + count - 1) % count];
  if (is_banned(roads, before, touch.away)) part.out = false;
  if (is_banned(roads, touch.away.back(), ring.stretches[touch.at])) part.in = false;
  return part;
}

void add_part(Draft& draft, const road::Roads& roads, const Ring& ring, Touch touch,
              std::vector<ArmPart>& parts) {
  if (is_ring(roads, touch.away)) return;
  if (leads_inside(roads, ring, touch.away)) {
    draft.report.count("roads through the middle of a roundabout");
    return;
  }
  const ArmPart part = ring_part(draft, roads, ring, touch);
  const bool has_traffic = part.in || part.out;
  const ArmPart unbanned = part_of(draft, touch.away, touch.at);
  if (!has_traffic && (unbanned.in || unbanned.out)) {
    draft.report.count("lanes through a roundabout that don't join its ring");
  } else {
    parts.push_back(part);
  }
}

std::vector<ArmPart> parts_of(Draft& draft, const road::Roads& roads, const Ring& ring) {
  std::vector<ArmPart> parts;
  for (std::size_t at = 0; at < ring.stretches.size(); ++at) {
    const NodeId node = roads.from_node(ring.stretches[at]);
    const std::size_t first = parts.size();
    for (const StretchId away : roads.leaving(node)) {
      add_part(draft, roads, ring, {away, at}, parts);
    }
    const double inward_deg = bearing_deg(roads.nodes[node.index()].at, ring.middle);
    order_round(draft, inward_deg, std::span(parts).subspan(first));
  }
  for (std::size_t i = 0; i < parts.size(); ++i) parts[i].order = i;
  return parts;
}

void flag_pieces(Draft& draft, const std::vector<Ring>& rings) {
  for (road::Piece& piece : draft.tables.pieces) piece.flags &= ~road::piece_flag::ring;
  for (const Ring& ring : rings) {
    for (const StretchId s : ring.stretches) {
      draft.tables.pieces[s.piece().index()].flags |= road::piece_flag::ring;
    }
  }
}

PlaceId add_ring_place(Draft& draft, const road::Roads& roads, const Ring& ring) {
  Spot spot;
  int lanes = 0;
  road::Place place;
  for (const StretchId s : ring.stretches) {
    const road::Piece& piece = roads.piece(s);
    spot.nodes.push_back(roads.from_node(s));
    spot.inside.push_back(s.piece());
    lanes = std::max(lanes, int{piece.lanes});
    if (piece.way == ring.least_way) place.name = piece.name;
  }
  spot.tidy();
  place.source = way_object(ring.least_way);
  place.at = ring.middle;
  place.lanes = static_cast<std::uint8_t>(lanes);
  place.diameter_m = static_cast<float>(ring.diameter_m);
  if (ring.diameter_m > gyratory_m) {
    draft.report.odd(place.source, gyratory,
                     std::to_string(std::lround(ring.diameter_m)) + " m across");
  }
  return draft.add_place(place, spot.nodes, spot.inside);
}

/// A part of an arm, and which arm that is.
struct Door {
  std::size_t arm = 0;
  const ArmPart* part = nullptr;
};

class RingChances {
 public:
  RingChances(Draft& draft, const road::Roads& roads, const Ring& ring)
      : draft_(draft), roads_(roads), ring_(ring) {}

  void add(PlaceId place, const std::vector<JunctionArm>& arms, const RingKind& kind) {
    const RingMovements movements(draft_, roads_, ring_.middle, arms);
    std::vector<Door> doors;
    for (std::size_t arm = 0; arm < arms.size(); ++arm) {
      for (const ArmPart& part : arms[arm].parts) doors.push_back({arm, &part});
    }
    for (const Door& in : doors) {
      for (const Door& out : doors) {
        const Path path = path_between(in, out);
        if (path.empty() || !is_legal(roads_, path)) continue;
        add_passing(draft_, place, path,
                    {.movement = movements.of(in.arm, out.arm),
                     .exit_number = exit_number(arms, in.arm, out.arm),
                     .tag = kind.tag,
                     .source = kind.source});
      }
    }
  }

 private:
  /// Empty when traffic doesn't come in or leave there, or only turns back at once.
  Path path_between(const Door& in, const Door& out) const {
    if (!in.part->in || !out.part->out) return {};
    if (in.arm == out.arm && in.part < out.part) return {};
    if (only_touches(in, out)) return {};
    Path path = {in.part->away.back()};
    for (std::size_t i = 0; i < steps_between(in, out); ++i) {
      path.push_back(ring_.stretches[(in.part->position + i) % ring_.stretches.size()]);
    }
    path.push_back(out.part->away);
    return path;
  }

  /// A road that goes on past the ring and only touches it: nothing of the ring is driven.
  [[nodiscard]] bool only_touches(const Door& in, const Door& out) const {
    return steps_between(in, out) == 0 && way_of(in) == way_of(out);
  }

  [[nodiscard]] std::int64_t way_of(const Door& door) const {
    return roads_.piece(door.part->away).way;
  }

  /// Ring pieces driven. Two arms at one node: straight out by the later one, else all round.
  std::size_t steps_between(const Door& in, const Door& out) const {
    const std::size_t count = ring_.stretches.size();
    const std::size_t steps = (out.part->position + count - in.part->position) % count;
    if (steps != 0) return steps;
    return in.part->order < out.part->order ? 0 : count;
  }

  Draft& draft_;
  const road::Roads& roads_;
  const Ring& ring_;
};

void mark_ring(Draft& draft, const road::Roads& roads, const Ring& ring, PlaceId place) {
  const bool as_driven = ring.is_clockwise == (draft.side() == Side::left);
  if (!as_driven) {
    draft.report.odd(way_object(ring.least_way), wrong_way_round);
    return;
  }
  const std::vector<JunctionArm> arms = join_parts(draft, roads, parts_of(draft, roads, ring));
  const RingKind kind = ring_kind(draft, roads, ring, arms);
  draft.tables.places[place.index()].kind = kind.kind;
  if (arms.empty()) draft.report.odd(way_object(ring.least_way), armless);
  add_arm_rows(draft, roads, place, arms);
  RingChances(draft, roads, ring).add(place, arms, kind);
}

}  // namespace

void mark_roundabouts(Draft& draft) {
  const road::Roads graph = draft.roads();
  const std::vector<Ring> rings = find_rings(draft, graph);
  flag_pieces(draft, rings);
  std::vector<PlaceId> places;
  for (const Ring& ring : rings) places.push_back(add_ring_place(draft, graph, ring));
  for (std::size_t i = 0; i < rings.size(); ++i) mark_ring(draft, graph, rings[i], places[i]);
}

}  // namespace loopwright::mark
