// What a driver meets at a map node.
//
// 1. highway may list several values ("crossing;traffic_signals"); each is looked at.
// 2. A crossing has signals when crossing:signals says so, else by crossing=traffic_signals, else
//    by the British animal names (pelican, puffin, toucan, pegasus) in crossing_ref or crossing.
// 3. A crossing without signals is a zebra when zebra stands in crossing, crossing_ref or
//    crossing:markings (certain; also as "zebra:double" and the like), or when it is merely marked
//    or uncontrolled and nothing says which markings (not certain). Dots, lines or coloured surface alone are no zebra.
// 4. Lights that hold no junction are left out: those of a level crossing, flashing ones and those
//    at a fire station. Pedestrian lights on a link get both signal bits; the place decides.
// Sources: OSM wiki, pages Key:crossing, Key:crossing_ref, Key:crossing:markings,
// Key:traffic_signals, Crossings_in_the_United_Kingdom.
#include <algorithm>
#include <array>

#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

bool lists(std::string_view values, std::string_view wanted) {
  return std::ranges::count(split(values, ';'), wanted) > 0;
}

bool has_animal_name(std::string_view value) {
  constexpr std::array<std::string_view, 4> names = {"pelican", "puffin", "toucan", "pegasus"};
  return one_of(value, names);
}

bool crossing_has_signals(const Tags& tags) {
  if (const auto signals = tags.get("crossing:signals"); !signals.empty()) return signals != "no";
  return lists(tags.get("crossing"), "traffic_signals") || has_animal_name(tags.get("crossing")) ||
         has_animal_name(tags.get("crossing_ref"));
}

/// Zebra stripes, also in a form of their own ("zebra:double").
bool lists_zebra(std::string_view markings) {
  return std::ranges::any_of(split(markings, ';'), [](std::string_view marking) {
    return marking == "zebra" || marking.starts_with("zebra:");
  });
}

bool says_zebra(const Tags& tags) {
  return lists(tags.get("crossing"), "zebra") || lists(tags.get("crossing_ref"), "zebra") ||
         lists_zebra(tags.get("crossing:markings"));
}

bool may_be_zebra(const Tags& tags) {
  const std::string_view markings = tags.get("crossing:markings");
  return (tags.is("crossing", "marked") || tags.is("crossing", "uncontrolled")) &&
         (markings.empty() || markings == "yes") && !tags.has("crossing_ref");
}

std::uint32_t crossing_flags(const Tags& tags) {
  if (crossing_has_signals(tags)) return road::node_flag::signal_crossing;
  return says_zebra(tags) || may_be_zebra(tags) ? road::node_flag::zebra : 0;
}

bool is_for_pedestrians(const Tags& tags) {
  const std::string_view crossing = tags.get("crossing");
  return tags.is("traffic_signals", "pedestrian_crossing") || crossing_has_signals(tags) ||
         (!crossing.empty() && crossing != "no");
}

std::uint32_t signal_flags(const Tags& tags) {
  constexpr std::array<std::string_view, 4> no_junction = {"level_crossing", "blinker",
                                                           "blink_mode", "emergency"};
  if (tags.is("railway", "level_crossing") || one_of(tags.get("traffic_signals"), no_junction)) {
    return 0;
  }
  return is_for_pedestrians(tags) ? road::node_flag::signals | road::node_flag::signal_crossing
                                  : road::node_flag::signals;
}

std::uint32_t calming_flags(const Tags& tags) {
  std::uint32_t flags = 0;
  for (const std::string_view calming : split(tags.get("traffic_calming"), ';')) {
    if (is_hump(calming)) flags |= road::node_flag::calming;
    if (calming == "choker" || calming == "chicane") flags |= road::node_flag::pinch_point;
  }
  if (tags.is("priority", "forward") || tags.is("priority", "backward"))
    flags |= road::node_flag::pinch_point;
  return flags;
}

std::uint32_t other_flags(const Tags& tags) {
  std::uint32_t flags = 0;
  if (tags.is("railway", "level_crossing")) flags |= road::node_flag::level_crossing;
  if (tags.is("railway", "tram_level_crossing")) flags |= road::node_flag::tram_crossing;
  if (has_ford(tags)) flags |= road::node_flag::ford;
  if (tags.is("cycleway", "asl")) flags |= road::node_flag::advanced_stop;
  if (!box_junction_tag(tags).empty()) flags |= road::node_flag::box_junction;
  return flags;
}

}  // namespace

bool is_hump(std::string_view calming) {
  constexpr std::array<std::string_view, 8> humps{
      "hump", "bump", "mini_bumps", "table", "cushion", "dynamic_bump", "dip", "double_dip"};
  return one_of(calming, humps);
}

std::uint32_t node_flags_of(const Tags& tags) {
  std::uint32_t flags = calming_flags(tags) | other_flags(tags);
  for (const std::string_view highway : split(tags.get("highway"), ';')) {
    if (highway == "traffic_signals") flags |= signal_flags(tags);
    if (highway == "crossing") flags |= crossing_flags(tags);
    if (highway == "mini_roundabout") flags |= road::node_flag::mini_roundabout;
    if (highway == "give_way") flags |= road::node_flag::give_way;
    if (highway == "stop") flags |= road::node_flag::stop;
    if (highway == "passing_place") flags |= road::node_flag::passing_place;
  }
  return flags;
}

bool zebra_is_certain(const Tags& tags) {
  return says_zebra(tags);
}

}  // namespace loopwright::mark
