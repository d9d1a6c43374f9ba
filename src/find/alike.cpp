// Method: every chance of the kind and movement that is reached is held against the first; of each place the way of
// passing it that is most alike, of all places the most alike are kept.
#include "loopwright/find/alike.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "find/near_ground.hpp"
#include "find/reached_chances.hpp"

namespace loopwright::find {
namespace {

constexpr double soon_m = 150;
constexpr double same_angle_deg = 30;

AlikePlace place_of(const road::Roads& roads, const ReachedChance& reached) {
  const double minutes = static_cast<double>(reached.there_ms) / static_cast<double>(ms_per_minute);
  return {reached.chance, minutes, form_of(roads, roads.chances[reached.chance.index()]), {}};
}

/// A point beside other roads never means a service road (reach::snap_home), so no drive can be told through it.
bool is_on_streets(const road::Roads& roads, ChanceId row) {
  const road::Chance& chance = roads.chances[row.index()];
  return roads.piece(chance.entry).road_class != road::RoadClass::service &&
         roads.piece(chance.exit).road_class != road::RoadClass::service;
}

/// The most alike, of equals the easiest, then the nearest.
auto likeness(const road::Roads& roads, const AlikePlace& place) {
  return std::tuple(place.differs.size(), roads.chances[place.chance.index()].hardness,
                    place.there_minutes, place.chance);
}

auto ease(const road::Roads& roads, const AlikePlace& place) {
  return std::tuple(roads.chances[place.chance.index()].hardness, place.differs.size(),
                    place.there_minutes, place.chance);
}

std::vector<ReachedChance> reached_of(const Ground& ground, const road::Chance& like,
                                      std::int64_t limit_ms) {
  wish::Want want;
  want.kind = like.kind;
  want.movement = like.movement;
  std::vector<ReachedChance> all = reached_chances(ground, want, limit_ms);
  std::erase_if(all, [&](const ReachedChance& one) {
    const road::Chance& chance = ground.roads.chances[one.chance.index()];
    return chance.kind != like.kind || chance.movement != like.movement;
  });
  return all;
}

std::vector<AlikePlace> most_alike(const road::Roads& roads, std::vector<AlikePlace> all,
                                   std::size_t most) {
  const auto is_more_alike = [&](const AlikePlace& a, const AlikePlace& b) {
    return likeness(roads, a) < likeness(roads, b);
  };
  std::sort(all.begin(), all.end(), is_more_alike);
  all.resize(std::min(all.size(), most));
  std::sort(all.begin(), all.end(), [&](const AlikePlace& a, const AlikePlace& b) {
    return ease(roads, a) < ease(roads, b);
  });
  return all;
}

}  // namespace

PassForm form_of(const road::Roads& roads, const road::Chance& chance) {
  const road::Place& place = roads.places[chance.place.index()];
  PassForm form{.arms = place.arms, .ring_lanes = place.lanes, .next = {}};
  for (const road::LaneMarks& marks : roads.lane_marks_of(chance.entry))
    form.entry_lanes = marks.count;
  form.angle_deg = static_cast<int>(std::lround(heading_change_deg(
      bearing_in_deg(roads, chance.entry), bearing_out_deg(roads, chance.exit))));
  if (roads.piece(chance.exit).length_m > soon_m) return form;
  for (const road::Chance& next : roads.chances_from(chance.exit))
    if (road::form_of(next.kind) == road::KindForm::junction) form.next.insert(next.kind);
  return form;
}

std::set<Differs> differences(const PassForm& a, const PassForm& b) {
  std::set<Differs> differs;
  if (a.arms != b.arms) differs.insert(Differs::arms);
  if (a.ring_lanes != b.ring_lanes || a.entry_lanes != b.entry_lanes)
    differs.insert(Differs::lanes);
  if (std::abs(heading_change_deg(a.angle_deg, b.angle_deg)) > same_angle_deg)
    differs.insert(Differs::angle);
  if (a.next != b.next) differs.insert(Differs::next);
  return differs;
}

Alike alike_places(const road::Roads& roads, const wish::Wish& asked, const AlikeAsk& ask,
                   const hours::Setting& setting) {
  Alike alike;
  if (ask.firsts.empty()) return alike;
  const wish::Wish wish = there_and_back(asked, ask.within_minutes);
  const ClockWalls walls = near_walls(roads, wish, setting);
  const Ground ground(roads, wish, setting, walls);
  const auto limit_ms = std::llround(ask.within_minutes * static_cast<double>(ms_per_minute));
  const auto all = reached_of(ground, roads.chances[ask.firsts.front().index()], limit_ms);
  const auto is_first = [&](const ReachedChance& one) {
    return std::find(ask.firsts.begin(), ask.firsts.end(), one.chance) != ask.firsts.end();
  };
  auto first = std::find_if(all.begin(), all.end(), [&](const ReachedChance& one) {
    return is_first(one) && is_on_streets(roads, one.chance);
  });
  if (first == all.end()) first = std::find_if(all.begin(), all.end(), is_first);
  if (first == all.end()) return alike;
  alike.first = place_of(roads, *first);
  const PlaceId first_place = roads.chances[first->chance.index()].place;
  std::map<PlaceId, AlikePlace> by_place;
  for (const ReachedChance& reached : all) {
    const PlaceId at = roads.chances[reached.chance.index()].place;
    if (at == first_place || !is_on_streets(roads, reached.chance)) continue;
    AlikePlace place = place_of(roads, reached);
    place.differs = differences(alike.first->form, place.form);
    const auto [kept, is_new] = by_place.emplace(at, place);
    if (!is_new && likeness(roads, place) < likeness(roads, kept->second)) kept->second = place;
  }
  std::vector<AlikePlace> others;
  for (auto& [at, place] : by_place) others.push_back(std::move(place));
  alike.others = most_alike(roads, std::move(others), ask.most);
  return alike;
}

}  // namespace loopwright::find
