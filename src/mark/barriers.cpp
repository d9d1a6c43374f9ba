// Does a car get past this point of the road?
//
// 1. A ford in an area built without them, or a limit on size or weight a car breaks, is a wall
//    whatever else is said.
// 2. A level crossing is no barrier, unless its own access keys shut it (a crossing for one farm).
// 3. No barrier tag: a wall where its access keys shut cars out (a gate of which nobody mapped the
//    kind, a bus gate drawn as a point), or highway=bus_gate. A crossing carries them for the path
//    that crosses there, and what has an amenity or an entrance for that; there they are a wall only
//    when buses are let through.
// 4. A barrier: access keys on it outrank its kind, and only a plain yes lets one drive through.
//    locked=yes stays a wall. Without access keys the kind decides; gates open by locked=no; a kind
//    we don't know is a wall.
// 5. What may be shut by the hour, or is open only by the hour, is a wall at all hours: a point has no
//    hours in the area, and roads that end at a gate are seldom worth waiting for it. Ours.
// Source: OSM wiki, pages Key:barrier, Tag:barrier=lift_gate; an undocumented default is "no".
#include <algorithm>
#include <array>
#include <string>

#include "access_tree.hpp"
#include "loopwright/mark/ordinary_car.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

bool is_open_kind(std::string_view barrier) {
  constexpr std::array<std::string_view, 7> open{
      "cattle_grid", "entrance", "toll_booth", "height_restrictor", "kerb", "border_control", "no"};
  return one_of(barrier, open);
}

bool is_gate(std::string_view barrier) {
  constexpr std::array<std::string_view, 5> gates{"gate", "lift_gate", "swing_gate", "sliding_gate",
                                                  "wicket_gate"};
  return one_of(barrier, gates);
}

/// At some hours, or for one of the two directions.
bool may_be_shut(const KeyAccess& access) {
  return access.timed() || access.access != Access::yes;
}

Barrier kind_decides(const Tags& tags) {
  const std::string_view barrier = tags.get("barrier");
  if (is_open_kind(barrier)) return Barrier::passable;
  const bool unlocked = is_gate(barrier) && tags.is("locked", "no");
  return unlocked ? Barrier::passable : Barrier::wall;
}

/// Some access key says for all hours whether a car gets through.
bool has_plain_access(const Tags& tags) {
  for (const std::string_view mode : {"motorcar", "motor_vehicle", "vehicle", "access"}) {
    for (const std::string_view direction : {"", ":forward", ":backward"}) {
      if (tags.has(std::string(mode).append(direction))) return true;
    }
  }
  return false;
}

/// Access keys of a point are for something else than the road it lies on.
bool speaks_of_another(const Tags& tags) {
  return tags.is("highway", "crossing") ||
         std::ranges::any_of(std::array{"crossing", "amenity", "entrance", "public_transport"},
                             [&](std::string_view key) { return tags.has(key); });
}

}  // namespace

Barrier barrier_of(const Tags& tags, BuiltWith with) {
  if (tags.empty()) return Barrier::none;
  if (has_ford(tags) && !with.fords) return Barrier::wall;
  if (!size_tag_against_car(tags).empty()) return Barrier::wall;
  const BothAccess access = access_keys(tags);
  const bool shut = may_be_shut(access.along) || may_be_shut(access.against);
  if (tags.is("railway", "level_crossing")) return shut ? Barrier::wall : Barrier::none;
  if (tags.is("highway", "bus_gate")) return Barrier::wall;
  if (!tags.has("barrier")) {
    const bool is_gate = !access.along.lets_in.empty() || !speaks_of_another(tags);
    return shut && is_gate ? Barrier::wall : Barrier::none;
  }
  if (tags.is("locked", "yes")) return Barrier::wall;
  const bool mapped = access.along.mapped || access.against.mapped;
  if (mapped && shut) return Barrier::wall;
  return has_plain_access(tags) ? Barrier::passable : kind_decides(tags);
}

}  // namespace loopwright::mark
