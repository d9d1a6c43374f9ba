#include "say/eyes.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::test {

Eyes::Eyes(const road::Roads& roads) : roads_(roads) {
  for (std::size_t p = 0; p < roads.places.size(); ++p) {
    const road::Kind kind = roads.places[p].kind;
    for (const NodeId n : roads.nodes_of(PlaceId{p})) {
      if (kind == road::Kind::signals) lights_[n] = PlaceId{p};
      if (road::meets(kind, road::Kind::roundabout)) rings_[n] = PlaceId{p};
    }
  }
}

View Eyes::view(StretchId from, StretchId arm) const {
  return {
      arm,
      heading_change_deg(road::bearing_in_deg(roads_, from), road::bearing_out_deg(roads_, arm)),
      is_shut(arm)};
}

bool look_the_same(const road::Roads& roads, StretchId a, StretchId b) {
  constexpr double glance_m = 1, glance_deg = 2;
  const double turned =
      heading_change_deg(road::bearing_out_deg(roads, a), road::bearing_out_deg(roads, b));
  return a == b || (roads.from_node(a) == roads.from_node(b) &&
                    roads.to_node(a) == roads.to_node(b) && std::abs(turned) < glance_deg &&
                    std::abs(roads.piece(a).length_m - roads.piece(b).length_m) < glance_m);
}

void Eyes::look(StretchId from, StretchId arm, std::vector<View>& seen) const {
  if (look_the_same(roads_, arm, from.back())) return;
  for (const View& other : seen)
    if (look_the_same(roads_, arm, other.arm)) return;
  seen.push_back(view(from, arm));
}

std::vector<View> Eyes::views(StretchId from) const {
  std::vector<View> result;
  const auto around = roads_.leaving(roads_.to_node(from));
  // Small roads are roads to who drives on one, and where no other road goes on.
  const bool small_too =
      is_small(from) || std::none_of(around.begin(), around.end(),
                                     [&](StretchId s) { return s != from.back() && is_road(s); });
  for (const StretchId s : around)
    if (is_road(s) || (small_too && is_small(s))) look(from, s, result);
  std::sort(result.begin(), result.end(),
            [](const View& a, const View& b) { return a.angle < b.angle; });
  return result;
}

std::vector<View> Eyes::small_views(StretchId from) const {
  std::vector<View> result;
  for (const StretchId s : roads_.leaving(roads_.to_node(from)))
    if (is_small(s)) look(from, s, result);
  std::sort(result.begin(), result.end(),
            [](const View& a, const View& b) { return a.angle < b.angle; });
  return result;
}

PlaceId Eyes::lights_at(NodeId node) const {
  const auto it = lights_.find(node);
  return it == lights_.end() ? PlaceId{} : it->second;
}

bool Eyes::is_inside(PlaceId place, StretchId s) const {
  if (!place.known()) return false;
  const auto pieces = roads_.pieces_of(place);
  return std::find(pieces.begin(), pieces.end(), s.piece()) != pieces.end();
}

std::map<StretchId, StretchId> Eyes::inside_lights(StretchId entry, bool small) const {
  std::map<StretchId, StretchId> came;
  const PlaceId place = lights_at(roads_.to_node(entry));
  std::vector<StretchId> open{entry};
  for (std::size_t i = 0; i < open.size() && place.known(); ++i)
    for (const StretchId s : roads_.leaving(roads_.to_node(open[i]))) {
      const bool back = s == open[i].back() || s == entry.back();
      const bool seen = is_road(s) || (small && is_small(s));
      if (back || !seen || is_shut(s) || !came.emplace(s, open[i]).second) continue;
      if (is_inside(place, s)) open.push_back(s);
    }
  return came;
}

std::vector<View> Eyes::views_beyond_lights(StretchId entry, bool small) const {
  const PlaceId place = lights_at(roads_.to_node(entry));
  std::vector<View> result;
  for (const auto& [s, from] : inside_lights(entry, small))
    if (!is_inside(place, s) && (!small || is_small(s))) result.push_back(view(entry, s));
  return result;
}

std::vector<StretchId> Eyes::way_through_lights(StretchId entry, StretchId exit, bool small) const {
  const auto came = inside_lights(entry, small);
  std::vector<StretchId> way;
  for (StretchId s = exit; s != entry; s = came.at(s)) way.insert(way.begin(), s);
  return way;
}

bool Eyes::is_road(StretchId s) const {
  const road::Piece& piece = roads_.piece(s);
  return piece.road_class != road::RoadClass::service &&
         (piece.flags & (road::piece_flag::no_access | road::piece_flag::minor_service)) == 0;
}

bool Eyes::is_small(StretchId s) const {
  const road::Piece& piece = roads_.piece(s);
  return piece.road_class == road::RoadClass::service &&
         (piece.flags & (road::piece_flag::no_access | road::piece_flag::minor_service)) == 0;
}

bool Eyes::is_shut(StretchId s) const {
  const auto driven = [&](StretchId t) { return roads_.stretch(t).flags != 0; };
  if ((roads_.piece(s).flags & road::piece_flag::one_way) == 0 || driven(s)) return false;
  return driven(s.back()) || s.against();
}

bool Eyes::on_ring(StretchId s) const {
  return (roads_.piece(s).flags & road::piece_flag::ring) != 0;
}

bool Eyes::stays_inside_ring(StretchId s) const {
  const auto from = rings_.find(roads_.from_node(s)), to = rings_.find(roads_.to_node(s));
  return from != rings_.end() && to != rings_.end() && from->second == to->second;
}

bool Eyes::is_link(StretchId s) const {
  return road::name(roads_.piece(s).road_class).ends_with("_link");
}

int Eyes::rank(StretchId s) const {
  return road::rank(roads_.piece(s).road_class);
}

std::string Eyes::sign(StretchId s) const {
  const std::string_view name = roads_.text(roads_.piece(s).name);
  return std::string(name.empty() ? roads_.text(roads_.piece(s).ref) : name);
}

bool Eyes::is_same_main_road(StretchId a, StretchId b) const {
  const road::Piece &one = roads_.piece(a), &other = roads_.piece(b);
  constexpr std::string_view mains = "motorway trunk primary secondary tertiary";
  const bool main = mains.find(road::name(one.road_class)) != mains.npos;
  const bool named = one.name == other.name && !roads_.text(one.name).empty();
  const bool numbered = one.ref == other.ref && !roads_.text(one.ref).empty();
  return main && one.road_class == other.road_class && (named || numbered);
}

bool Eyes::has_arrows(StretchId s) const {
  for (const road::LaneMarks& lane : roads_.lane_marks_of(s))
    if (!roads_.text(lane.arrows).empty()) return true;
  return false;
}

std::uint32_t Eyes::flags_at_end(StretchId s) const {
  return roads_.nodes[roads_.to_node(s).index()].flags;
}

}  // namespace loopwright::test
