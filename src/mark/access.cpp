// May a learner's car drive here? The strictest of these answers, for each direction:
//
// 1. The access keys with their conditions (access_tree.cpp), limits on size and weight, disused,
//    abandoned and impassable roads: shut when they say so.
// 2. What is public but no place for a lesson: a motorway when not built in, living streets,
//    highway=road (nobody knows what it is), service roads of a special kind, reversible roads,
//    unsealed or bad surfaces, fords when not built in, and tolls.
// 3. One-way: the other direction is shut; by the hour, it may be at times (one_way_hours.cpp).
// A road that some clause opens, or leaves open, at some hours is as open as then, with its rules
// by the hour beside: those of the access keys, a gate when buses are let through, and those of
// one-way. What never may be driven has none.
// The tag told is the one of the strictest answer; a direction shut by one-way alone has none.
// Sources: OSM wiki, pages Key:access, Key:service, Key:surface, Key:smoothness; which of these
// suit a lesson is this project's choice.
#include <algorithm>
#include <array>
#include <utility>
#include <vector>

#include "access_tree.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/on_hours.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "loopwright/mark/rules.hpp"
#include "one_way_hours.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

constexpr std::array<std::pair<std::string_view, RoadClass>, 15> classes{
    {{"motorway", RoadClass::motorway},
     {"trunk", RoadClass::trunk},
     {"primary", RoadClass::primary},
     {"secondary", RoadClass::secondary},
     {"tertiary", RoadClass::tertiary},
     {"unclassified", RoadClass::unclassified},
     {"residential", RoadClass::residential},
     {"living_street", RoadClass::living_street},
     {"service", RoadClass::service},
     {"motorway_link", RoadClass::motorway_link},
     {"trunk_link", RoadClass::trunk_link},
     {"primary_link", RoadClass::primary_link},
     {"secondary_link", RoadClass::secondary_link},
     {"tertiary_link", RoadClass::tertiary_link},
     {"road", RoadClass::road}}};

bool is_unsealed(std::string_view surface) {
  constexpr std::array<std::string_view, 20> unsealed{
      "unpaved",   "compacted", "gravel", "fine_gravel", "pebblestone", "shells",   "rock",
      "dirt",      "earth",     "ground", "grass",       "grass_paver", "mud",      "sand",
      "woodchips", "snow",      "ice",    "salt",        "clay",        "bare_rock"};
  const auto parts = split(surface, ';');
  return std::ranges::any_of(parts, [&](std::string_view part) { return one_of(part, unsealed); });
}

bool is_rough(std::string_view smoothness) {
  constexpr std::array<std::string_view, 5> rough{"bad", "very_bad", "horrible", "very_horrible",
                                                  "impassable"};
  return one_of(smoothness, rough);
}

/// The tag that asks a car for money; empty when none does.
std::string toll_tag(const Tags& tags) {
  for (const std::string_view key : {"toll:motorcar", "toll:motor_vehicle", "toll"}) {
    if (tags.has(key)) return tags.is(key, "no") ? std::string() : tag_text(tags, key);
  }
  return {};
}

/// Being built: of a road in use only small works, or a widening, let traffic by (Key:construction).
bool is_being_built(const Tags& tags) {
  constexpr std::array<std::string_view, 4> by_it{"", "no", "minor", "widening"};
  return !one_of(tags.get("construction"), by_it);
}

/// The tag by which nobody's car gets through; empty when none.
std::string shut_tag(const Tags& tags) {
  if (is_being_built(tags)) return tag_text(tags, "construction");
  for (const std::string_view key : {"disused", "abandoned", "impassable"}) {
    if (tags.is(key, "yes")) return tag_text(tags, key);
  }
  return size_tag_against_car(tags);
}

bool has_class_unsuited(RoadClass road_class, bool motorways) {
  const bool motorway = road_class == RoadClass::motorway || road_class == RoadClass::motorway_link;
  return (motorway && !motorways) || road_class == RoadClass::living_street ||
         road_class == RoadClass::road;
}

/// Ways to a house or a bay. Key:service is for highway=service; a street that has it is one all the same.
bool is_minor(std::string_view service) {
  constexpr std::array<std::string_view, 5> minor{"driveway", "parking_aisle", "drive-through",
                                                  "drive_through", "emergency_access"};
  return one_of(service, minor);
}

/// The tag by which a public road is no place for a lesson; empty when none.
std::string unsuited_tag(const Tags& tags, RoadClass road_class, BuiltWith with) {
  if (has_class_unsuited(road_class, with.motorways))
    return tag_text("highway", road::name(road_class));
  if (road_class == RoadClass::service && tags.has("service") && !tags.is("service", "alley")) {
    return tag_text(tags, "service");
  }
  if (is_minor(tags.get("service"))) return tag_text(tags, "service");
  if (is_unsealed(tags.get("surface"))) return tag_text(tags, "surface");
  if (is_rough(tags.get("smoothness"))) return tag_text(tags, "smoothness");
  if (has_ford(tags) && !with.fords) return tag_text(tags, "ford");
  return toll_tag(tags);
}

void tighten(CarAccess& access, Access to, std::string_view tag) {
  if (tag.empty()) return;
  if (std::max(access.along, access.against) < to) access.tag = tag;
  access.along = stricter(access.along, to);
  access.against = stricter(access.against, to);
}

Access most_open(const KeyAccess& keys) {
  return keys.timed() ? Access::yes : keys.access;
}

/// The tag that closes or limits it: the plain one, else that of the hours.
std::string tag_of(const KeyAccess& keys) {
  return keys.access == Access::yes ? keys.clause_tags : keys.tag;
}

void add_rule(std::vector<TimedAccess>& rules, const KeyAccess& keys) {
  if (!keys.timed()) return;
  rules.push_back({keys.lets_in.empty() ? road::Timed::access : road::Timed::gate,
                   keys.access == Access::yes, clauses_text(keys.clauses), keys.lets_in,
                   keys.clause_tags});
}

CarAccess from_keys(const Tags& tags) {
  const BothAccess keys = access_keys(tags);
  CarAccess access;
  access.along = most_open(keys.along), access.against = most_open(keys.against);
  const KeyAccess& told = access.against > access.along ? keys.against : keys.along;
  access.tag = tag_of(told).empty() ? tag_of(keys.against) : tag_of(told);
  if (std::min(access.along, access.against) != Access::yes) access.who = keys.along.lets_in;
  add_rule(access.timed_along, keys.along), add_rule(access.timed_against, keys.against);
  return access;
}

/// One direction by the one-way keys: open or shut for good, or by rules.
void apply_hours(Access& access, std::vector<TimedAccess>& rules, const Switched& when,
                 const std::string& source) {
  if (!when.base && when.clauses.empty()) access = Access::no;
  if (!when.clauses.empty())
    rules.push_back({road::Timed::access, when.base, clauses_text(when.clauses), {}, source});
}

void apply_one_way(CarAccess& access, const Tags& tags, RoadClass road_class) {
  const OneWay plain = one_way_of(tags, road_class);
  const OneWayHours hours = one_way_hours(tags, road_class);
  if (!plain.along && !plain.against && hours.source.empty())
    return tighten(access, Access::unsuited, plain.tag);
  apply_hours(access.along, access.timed_along, hours.along, hours.source);
  apply_hours(access.against, access.timed_against, hours.against, hours.source);
}

/// What never may be driven has no hours.
void drop_idle_rules(CarAccess& access) {
  if (access.along != Access::yes) access.timed_along.clear();
  if (access.against != Access::yes) access.timed_against.clear();
}

}  // namespace

std::optional<RoadClass> road_class_of(const Tags& tags) {
  if (tags.is("area", "yes")) return std::nullopt;
  const auto found = std::ranges::find(classes, tags.get("highway"),
                                       &std::pair<std::string_view, RoadClass>::first);
  return found == classes.end() ? std::nullopt : std::optional(found->second);
}

bool is_minor_service(const Tags& tags) {
  return tags.is("highway", "service") && is_minor(tags.get("service"));
}

CarAccess car_access(const Tags& tags, RoadClass road_class, BuiltWith with) {
  CarAccess access = from_keys(tags);
  tighten(access, Access::no, shut_tag(tags));
  tighten(access, Access::unsuited, unsuited_tag(tags, road_class, with));
  apply_one_way(access, tags, road_class);
  drop_idle_rules(access);
  return access;
}

std::uint32_t access_flags(const CarAccess& access) {
  switch (std::min(access.along, access.against)) {
    case Access::no:
      return road::piece_flag::no_access;
    case Access::destination:
      return road::piece_flag::destination_only;
    case Access::unsuited:
    case Access::yes:
      break;
  }
  return 0;
}

}  // namespace loopwright::mark
