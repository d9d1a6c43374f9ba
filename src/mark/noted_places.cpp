// 1. A kind with movements is had at a junction: every legal way over the nearest one, told left,
//    ahead or right by the change of heading. A ring can't be noted: its arms aren't known.
// 2. A hump, a zebra … lies on a road that has no node there: it is passed by whoever comes by its
//    road over the nearer end, or leaves by it from there. Each note is a place of its own, unless another
//    has the same ways over it.
// 3. A bus stop or a manoeuvre lies beside each stretch the note means.
// 4. What isn't so: the nearest place of the kind (of a ring, its edge) loses the chances that come by the note and
//    that it means.
#include "noted_places.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

#include "loopwright/road/kind_table.hpp"
#include "note_spots.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;
using road::Note;

bool is_ring(Kind kind) {
  return road::meets(kind, Kind::roundabout) || road::meets(kind, Kind::mini_roundabout);
}

std::string metres_text() {
  return std::to_string(std::lround(road::note_reach_m)) + " m";
}

class PlaceAdder {
 public:
  PlaceAdder(Overlay& over, const Note& note)
      : over_(over), note_(note), kind_(*road::practice_of(note)) {}
  std::string add();

 private:
  std::string add_at_junction();
  std::string add_on_road(const std::vector<NotedPart>& parts);
  std::string add_beside(const std::vector<NotedPart>& parts);
  std::string add_passes(const std::vector<Path>& ways, PieceId on, std::span<const NodeId> nodes,
                         std::span<const PieceId> pieces);
  [[nodiscard]] std::vector<Path> ways_over(NodeId node, const std::vector<NotedPart>& parts) const;
  PlaceId add_place(PieceId on, std::span<const NodeId> nodes, std::span<const PieceId> pieces);
  void add_chance(PlaceId place, const Path& path);
  [[nodiscard]] bool is_noted_already(const Path& path) const;
  [[nodiscard]] Movement movement_over(const Path& path) const;
  [[nodiscard]] bool has(Movement movement) const {
    return std::ranges::find(road::movements_of(kind_), movement) !=
           road::movements_of(kind_).end();
  }

  Overlay& over_;
  const Note& note_;
  Kind kind_;
  TextId tag_;
};

Movement PlaceAdder::movement_over(const Path& path) const {
  return turn_movement(heading_change_deg(road::bearing_in_deg(over_.roads(), path.front()),
                                          road::bearing_out_deg(over_.roads(), path.back())));
}

PlaceId PlaceAdder::add_place(PieceId on, std::span<const NodeId> nodes,
                              std::span<const PieceId> pieces) {
  const road::Piece& piece = over_.roads().pieces[on.index()];
  road::Place place;
  place.kind = kind_;
  place.source = way_object(piece.way);
  place.at = note_.line.front();
  place.name = piece.name;
  return over_.add_place(place, nodes, pieces);
}

void PlaceAdder::add_chance(PlaceId place, const Path& path) {
  if (!tag_.known()) tag_ = over_.text(road::tag_of(note_));
  road::Chance chance;
  chance.place = place;
  chance.entry = path.front(), chance.exit = path.back();
  chance.kind = kind_;
  if (!road::movements_of(kind_).empty()) chance.movement = movement_over(path);
  const Movement as_hard = as_on_the_left(chance.movement, over_.roads().info().region.side);
  chance.hardness = static_cast<std::uint8_t>(road::hardness_of(kind_, as_hard));
  chance.confidence = road::Confidence::noted;
  chance.tag = tag_;
  chance.source = over_.roads().places[place.index()].source;
  over_.add_chance(chance, path);
}

bool PlaceAdder::is_noted_already(const Path& path) const {
  return std::ranges::any_of(over_.new_chances(), [&](const road::Chance& noted) {
    const Point at = over_.roads().places[noted.place.index()].at;
    // Beside one long stretch there is room for more than one.
    const bool beside = path.size() == 1;
    return noted.kind == kind_ && noted.entry == path.front() && noted.exit == path.back() &&
           (!beside || distance_m(at, note_.line.front()) <= road::note_reach_m);
  });
}

/// A place with these ways over it. Notes of two days may say the same: what can't be told apart by the way over it
/// is passed once.
std::string PlaceAdder::add_passes(const std::vector<Path>& ways, PieceId on,
                                   std::span<const NodeId> nodes, std::span<const PieceId> pieces) {
  std::vector<Path> fresh;
  std::ranges::copy_if(ways, std::back_inserter(fresh),
                       [&](const Path& path) { return !is_noted_already(path); });
  if (fresh.empty()) return "another of your notes says it here already";
  const PlaceId place = add_place(on, nodes, pieces);
  for (const Path& path : fresh) add_chance(place, path);
  return {};
}

/// Step 1.
std::string PlaceAdder::add_at_junction() {
  const auto node = junction_of(over_.roads(), note_);
  if (!node) return "no junction within " + metres_text();
  std::vector<Path> ways = ways_through(over_.roads(), Spot{{*node}, {}});
  std::erase_if(ways, [&](const Path& path) {
    return !has(movement_over(path)) ||
           !means_heading(note_, road::bearing_in_deg(over_.roads(), path.front()));
  });
  if (ways.empty()) return "no way over the junction that it could mean";
  return add_passes(ways, ways.front().front().piece(), std::span(&*node, 1), {});
}

/// Legal ways over an end of the note's road that drive it in a direction the note means.
std::vector<Path> PlaceAdder::ways_over(NodeId node, const std::vector<NotedPart>& parts) const {
  std::vector<Path> ways = ways_through(over_.roads(), Spot{{node}, {}});
  const auto is_meant = [&](StretchId s) {
    return std::ranges::find(parts, s, &NotedPart::stretch) != parts.end();
  };
  std::erase_if(ways, [&](const Path& p) { return !is_meant(p.front()) && !is_meant(p.back()); });
  return ways;
}

/// Step 2.
std::string PlaceAdder::add_on_road(const std::vector<NotedPart>& parts) {
  const NotedPart& first = parts.front();
  const road::Roads& roads = over_.roads();
  const bool near_start = 2 * first.from_m <= roads.piece(first.stretch).length_m;
  std::array ends{roads.from_node(first.stretch), roads.to_node(first.stretch)};
  if (!near_start) std::swap(ends[0], ends[1]);
  for (const NodeId node : ends) {
    const std::vector<Path> ways = ways_over(node, parts);
    if (ways.empty()) continue;
    return add_passes(ways, first.stretch.piece(), std::span(&node, 1), {});
  }
  return "its road can't be driven through";
}

/// Step 3.
std::string PlaceAdder::add_beside(const std::vector<NotedPart>& parts) {
  std::string why_none;
  bool any = false;
  for (const NotedPart& part : parts) {
    const std::array piece{part.stretch.piece()};
    std::string why_not = add_passes({{part.stretch}}, piece[0], {}, piece);
    any = any || why_not.empty();
    why_none = std::move(why_not);
  }
  return any ? std::string{} : why_none;
}

std::string PlaceAdder::add() {
  if (is_ring(kind_)) return "a roundabout can't be noted: its arms must be mapped";
  if (!road::movements_of(kind_).empty()) return add_at_junction();
  const std::vector<NotedPart> parts = parts_of(over_.roads(), note_);
  if (parts.empty()) return "no road that it fits within " + metres_text();
  if (road::form_of(kind_) == road::KindForm::junction) return add_on_road(parts);
  return add_beside(parts);
}

/// Metres from a note to a place: to its nearest node, or of a ring to its edge. The middle of a cluster is no part
/// of it: its nodes may all be far from there.
double distance_to(const road::Roads& roads, PlaceId id, Point at) {
  const road::Place& place = roads.places[id.index()];
  double nearest = std::numeric_limits<double>::infinity();
  if (place.diameter_m > 0 || roads.nodes_of(id).empty())
    nearest = std::max(0.0, distance_m(place.at, at) - double{place.diameter_m} / 2);
  for (const NodeId node : roads.nodes_of(id)) {
    nearest = std::min(nearest, distance_m(roads.nodes[node.index()].at, at));
  }
  return nearest;
}

/// Chances of a kind near a note, of any place.
std::vector<const road::Chance*> chances_near(const road::Roads& roads, Point at, Kind kind) {
  std::vector<const road::Chance*> found;
  constexpr double half_a_ring_m = 60;  // of the largest roundabouts, twice over what is usual
  for (const PieceId piece : road::pieces_near(roads, at, road::note_reach_m + half_a_ring_m)) {
    for (const StretchId s : {StretchId{piece, false}, StretchId{piece, true}}) {
      for (const road::Chance& chance : roads.chances_from(s)) {
        if (road::meets(chance.kind, kind)) found.push_back(&chance);
      }
    }
  }
  return found;
}

/// Some road of the way comes as near as a note may lie. Of a cluster many ways don't: what is said of one corner
/// isn't said of them.
bool comes_near(const road::Roads& roads, const road::Chance& chance, Point at) {
  return std::ranges::any_of(roads.path_of(chance), [&](StretchId stretch) {
    return nearest_on_line(roads.shape_of(stretch.piece()), at).off_m <= road::note_reach_m;
  });
}

/// The chances of the nearest place of the kind that come within reach.
std::vector<const road::Chance*> nearest_chances(const road::Roads& base, const Note& note,
                                                 Kind kind) {
  const Point at = note.line.front();
  std::vector<const road::Chance*> all = chances_near(base, at, kind);
  PlaceId nearest;
  double nearest_m = road::note_reach_m;
  for (const road::Chance* chance : all) {
    const double off_m = distance_to(base, chance->place, at);
    if (off_m < nearest_m) nearest = chance->place, nearest_m = off_m;
  }
  std::erase_if(all, [&](const road::Chance* chance) {
    return chance->place != nearest || !comes_near(base, *chance, at) ||
           !means_heading(note, road::bearing_in_deg(base, chance->entry));
  });
  return all;
}

}  // namespace

std::string add_noted_place(Overlay& over, const Note& note) {
  return PlaceAdder(over, note).add();
}

bool take_noted_place(Overlay& over, const Note& note) {
  const auto chances = nearest_chances(over.base(), note, *note.kind);
  for (const road::Chance* chance : chances) over.take_chance(*chance);
  return !chances.empty();
}

bool map_is_sure(const road::Roads& base, const Note& note, Kind kind) {
  const auto chances = nearest_chances(base, note, kind);
  return std::ranges::any_of(chances, [](const road::Chance* chance) {
    return chance->confidence == road::Confidence::certain;
  });
}

}  // namespace loopwright::mark
