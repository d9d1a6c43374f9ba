// Method:
// 1. Rows on a ring, and rows between the entry and the exit of a junction the loop passes, lie inside;
//    a decision goes from a row outside to the next row outside.
// 2. The other roads are those that leave the nodes in between, as a driver sees them: private and
//    service roads aren't roads to turn into, nor is what is one-way against us.
// 3. The way taken is the road ahead when it lies ahead, every other road bends off plainly more, and
//    the road that was driven doesn't go round a bend there while a smaller one goes on ahead.
// 4. A street whose name is met since the last direction, on a road that isn't taken, can't be told by it.
#include "find/decisions.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/base/text.hpp"

namespace loopwright::find {

namespace {

namespace flag = road::piece_flag;
using road::RoadClass;

bool is_ring(const road::Roads& roads, StretchId s) {
  return (roads.piece(s).flags & flag::ring) != 0;
}

bool is_legal(const road::Roads& roads, StretchId s) {
  return (roads.stretch(s).flags & (road::stretch_flag::drivable | road::stretch_flag::cut_off)) !=
         0;
}

/// Step 2. Of a one-way road that no lesson drives the way's own direction is that of traffic.
bool is_road(const road::Roads& roads, StretchId s) {
  const road::Piece& piece = roads.piece(s);
  if (piece.road_class == RoadClass::service ||
      (piece.flags & (flag::no_access | flag::minor_service)) != 0)
    return false;
  if ((piece.flags & flag::one_way) == 0 || is_legal(roads, s)) return true;
  return !is_legal(roads, s.back()) && !s.against();
}

int rank_of(const road::Roads& roads, StretchId s) {
  return road::rank(roads.piece(s).road_class);
}

class DecisionMaker {
 public:
  DecisionMaker(const road::Roads& roads, const wish::Loop& loop) : roads_(roads), loop_(loop) {}

  [[nodiscard]] Decision make(std::size_t entry, std::size_t exit) const {
    Decision decision{.entry = entry, .exit = exit};
    wish::Direction& told = decision.direction;
    told.roundabout = exit > entry + 1 && is_ring(roads_, at(entry + 1));
    told.angle_deg = angle_to(entry, at(exit));
    told.back = at(exit) == at(entry).back();
    told.street = loop_.stretches[exit].street;
    told.same_street = told.street == loop_.stretches[entry].street;
    for (std::size_t row = entry; row < exit; ++row) {
      const NodeId node = roads_.to_node(at(row));
      const std::uint32_t flags = roads_.nodes[node.index()].flags;
      told.mini |= !told.roundabout && (flags & road::node_flag::mini_roundabout) != 0;
      add_others(node, decision);
    }
    if (told.roundabout || told.mini) told.exit = exit_number(entry, exit);
    told.road_ends =
        std::abs(told.angle_deg) > wish::ahead_deg &&
        std::none_of(decision.others.begin(), decision.others.end(), [&](StretchId other) {
          return std::abs(angle_to(entry, other)) <= wish::ahead_deg;
        });
    decision.needs_direction = needs_direction(decision);
    return decision;
  }

 private:
  [[nodiscard]] StretchId at(std::size_t row) const { return loop_.stretches[row].stretch; }

  [[nodiscard]] double angle_to(std::size_t entry, StretchId leaving) const {
    return heading_change_deg(road::bearing_in_deg(roads_, at(entry)),
                              road::bearing_out_deg(roads_, leaving));
  }

  [[nodiscard]] bool leads_back(const Decision& decision, StretchId other) const {
    if (decision.direction.roundabout) return false;
    const road::Piece& come_by = roads_.piece(at(decision.entry));
    const road::Piece& piece = roads_.piece(other);
    const bool other_half = (piece.flags & flag::one_way) != 0 &&
                            roads_.text(piece.name) == roads_.text(come_by.name) &&
                            roads_.text(piece.ref) == roads_.text(come_by.ref);
    const double back_deg = other_half ? wish::other_half_deg : wish::back_deg;
    return std::abs(angle_to(decision.entry, other)) >= back_deg;
  }

  void add_others(NodeId node, Decision& decision) const {
    for (const StretchId other : roads_.leaving(node)) {
      if (other == at(decision.exit) || other == at(decision.entry).back()) continue;
      if (is_ring(roads_, other) || !is_road(roads_, other)) continue;
      bool driven = false;
      for (std::size_t row = decision.entry + 1; row < decision.exit; ++row)
        driven |= at(row).piece() == other.piece();
      if (!driven && !leads_back(decision, other)) decision.others.push_back(other);
    }
  }

  /// Of the roundabout or mini that the loop passes there; 0 when the map doesn't tell.
  [[nodiscard]] int exit_number(std::size_t entry, std::size_t exit) const {
    for (const wish::Pass& pass : loop_.passes)
      if (pass.first == entry && pass.last == exit && pass.exit > 0) return pass.exit;
    return 0;
  }

  [[nodiscard]] bool needs_direction(const Decision& decision) const {
    const wish::Direction& told = decision.direction;
    if (told.roundabout || told.mini || told.back) return true;
    if (decision.others.empty()) return false;
    const double taken = std::abs(told.angle_deg);
    if (taken > wish::ahead_deg) return true;
    const int entry_rank = rank_of(roads_, at(decision.entry));
    const int exit_rank = rank_of(roads_, at(decision.exit));
    return std::any_of(decision.others.begin(), decision.others.end(), [&](StretchId other) {
      const double angle = std::abs(angle_to(decision.entry, other));
      const int rank = rank_of(roads_, other);
      const bool is_ours = rank == entry_rank && rank < exit_rank;
      return angle < taken + wish::plain_by_deg || (is_ours && angle < 180 - wish::ahead_deg);
    });
  }

  const road::Roads& roads_;
  const wish::Loop& loop_;
};

/// Numbers of these are signed in Britain by rule: mark's independent-stretch says so too.
bool has_signed_number(RoadClass road_class) {
  return road_class == RoadClass::motorway || road_class == RoadClass::trunk ||
         road_class == RoadClass::primary || road_class == RoadClass::secondary;
}

}  // namespace

std::vector<bool> rows_inside(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<bool> inside;
  for (const wish::LoopStretch& row : loop.stretches) inside.push_back(is_ring(roads, row.stretch));
  for (const wish::Pass& pass : loop.passes)
    if (pass.movement != road::Movement::none &&
        road::form_of(pass.kind) == road::KindForm::junction)
      for (std::size_t row = pass.first + 1; row < pass.last; ++row) inside[row] = true;
  return inside;
}

namespace {

/// Step 4.
void note_met_before(const road::Roads& roads, std::vector<Decision>& decisions) {
  std::vector<std::string_view> met;
  for (Decision& decision : decisions) {
    wish::Direction& told = decision.direction;
    told.met_before = std::find(met.begin(), met.end(), told.street) != met.end();
    if (decision.needs_direction) {
      met.clear();
      continue;
    }
    for (const StretchId other : decision.others) {
      const road::Piece& piece = roads.piece(other);
      const std::string_view name = roads.text(piece.name);
      met.push_back(name.empty() ? roads.text(piece.ref) : name);
    }
  }
}

}  // namespace

std::vector<Decision> decisions_of(const road::Roads& roads, const wish::Loop& loop) {
  const std::vector<bool> inside = rows_inside(roads, loop);
  const DecisionMaker maker(roads, loop);
  std::vector<Decision> decisions;
  std::size_t entry = 0;
  for (std::size_t row = 1; row < inside.size(); ++row) {
    if (inside[row]) continue;
    if (!inside[entry]) decisions.push_back(maker.make(entry, row));
    entry = row;
  }
  note_met_before(roads, decisions);
  return decisions;
}

std::vector<std::string_view> followed_on(const road::Roads& roads, StretchId stretch) {
  std::vector<std::string_view> all;
  const road::Piece& piece = roads.piece(stretch);
  const std::string_view ref = roads.text(piece.ref);
  if (has_signed_number(piece.road_class) && !ref.empty())
    all.push_back(trim(ref.substr(0, ref.find(';'))));
  for (const road::SignedTo& sign : roads.signs_of(stretch))
    for (const TextId list : {sign.ref, sign.destination})
      for (const std::string_view name : split(roads.text(list), ';'))
        if (!trim(name).empty()) all.push_back(trim(name));
  return all;
}

}  // namespace loopwright::find
