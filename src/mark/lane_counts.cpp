// 1. Lanes in a direction: lanes:forward or :backward; turn:lanes of that direction by its parts; on
//    a one-way road lanes; else lanes less those of the other direction, or half of an even total
//    (the wiki's assumption, so not certain).
//    Where lanes and turn:lanes contradict each other, nobody knows.
// 2. Lanes for buses are among them by the wiki, and no car's: they are taken off. With busway=lane
//    mappers differ on whether lanes counts it, so then the number isn't certain.
// 3. The arrows of turn:lanes: parts by |, several arrows in a part by ;.
// Sources: OSM wiki, pages Key:lanes, Key:turn, Bus lanes.
#include "lane_counts.hpp"

#include <algorithm>
#include <array>

#include "approach.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double arrows_within_m = 40;  // lane arrows are painted this near; ours

/// The tags of a road as seen by those who drive one way.
struct OneDirection {
  const Tags& tags;
  OneWay one_way;
  bool against = false;

  [[nodiscard]] std::string_view suffix() const { return against ? ":backward" : ":forward"; }
  [[nodiscard]] std::string_view other() const { return against ? ":forward" : ":backward"; }
};

OneDirection direction_of(const Draft& draft, StretchId stretch) {
  const Tags& tags = draft.way_tags(stretch.piece());
  const road::RoadClass road_class = draft.tables.pieces[stretch.piece().index()].road_class;
  return {tags, one_way_of(tags, road_class), stretch.against()};
}

/// Most roads have no lane tags at all, and are asked often.
bool mentions_lanes(const Tags& tags) {
  bool any = false;
  tags.each([&](std::string_view key, std::string_view) {
    any = any || key.starts_with("lanes") || key.starts_with("turn:lanes");
  });
  return any;
}

/// The key with the direction's suffix, or without on a one-way road; empty when neither is there.
std::string key_of(const OneDirection& road, std::string_view key) {
  const std::string with_suffix = std::string(key).append(road.suffix());
  if (road.tags.has(with_suffix)) return with_suffix;
  return road.one_way.one_way && road.tags.has(key) ? std::string(key) : std::string();
}

std::optional<LaneCount> counted(const OneDirection& road, const std::string& key) {
  const auto count = read_int(road.tags.get(key));
  if (key.empty() || !count || *count < 1) return std::nullopt;
  return LaneCount{*count, true, tag_text(road.tags, key)};
}

std::optional<LaneCount> by_arrows(const OneDirection& road) {
  const std::string key = key_of(road, "turn:lanes");
  if (key.empty()) return std::nullopt;
  const auto parts = split(road.tags.get(key), '|').size();
  return LaneCount{static_cast<int>(parts), true, tag_text(road.tags, key)};
}

std::optional<LaneCount> by_total(const OneDirection& road) {
  const auto total = counted(road, road.tags.has("lanes") ? "lanes" : "");
  if (!total) return std::nullopt;
  if (const auto back = read_int(road.tags.get("lanes" + std::string(road.other())))) {
    const int both = read_int(road.tags.get("lanes:both_ways")).value_or(0);
    const int left = total->count - *back - both;
    return left < 1 ? std::nullopt : std::optional(LaneCount{left, true, total->tag});
  }
  if (total->count % 2 != 0) return std::nullopt;
  return LaneCount{total->count / 2, false, total->tag, true};
}

/// True when the lanes tagged can't be those of the arrows: another number in their direction, or in
/// all too few to leave the other direction its own, one at least.
bool contradicts(const OneDirection& road, const LaneCount& arrows) {
  if (const auto lanes = counted(road, key_of(road, "lanes"))) return lanes->count != arrows.count;
  const auto total = read_int(road.tags.get("lanes"));
  const int back = read_int(road.tags.get("lanes" + std::string(road.other()))).value_or(1);
  return total && !road.one_way.one_way && *total - back < arrows.count;
}

/// Lanes for buses that such a count includes.
int bus_lanes_in(const OneDirection& road, Side side, bool counts_both_ways) {
  const auto ours = road.against ? road::LaneDirection::against : road::LaneDirection::along;
  const auto facts = bus_lanes_of(road.tags, road.one_way, side);
  return static_cast<int>(std::ranges::count_if(facts, [&](const BusLaneFact& fact) {
    return counts_both_ways || fact.direction == ours ||
           fact.direction == road::LaneDirection::unknown;
  }));
}

bool says_busway(const Tags& tags) {
  constexpr std::array<std::string_view, 4> keys = {"busway", "busway:left", "busway:right",
                                                    "busway:both"};
  return std::ranges::any_of(keys, [&](std::string_view key) { return tags.has(key); });
}

bool is_ahead(const std::vector<std::string_view>& arrows) {
  return std::ranges::any_of(arrows, [](std::string_view arrow) {
    return arrow.empty() || arrow == "none" || arrow == "through" || arrow.starts_with("merge_to");
  });
}

}  // namespace

std::string LaneCount::words() const {
  const std::string lanes = half ? "half of " + tag : tag;
  return for_buses == 0 ? lanes : lanes + " less " + std::to_string(for_buses) + " for buses";
}

std::optional<LaneCount> car_lanes(const Draft& draft, StretchId stretch) {
  if (!mentions_lanes(draft.way_tags(stretch.piece()))) return std::nullopt;
  const OneDirection road = direction_of(draft, stretch);
  auto lanes = counted(road, key_of(road, "lanes"));
  const auto arrows = by_arrows(road);
  if (arrows && contradicts(road, *arrows)) return std::nullopt;
  if (!lanes) lanes = arrows;
  if (!lanes) lanes = by_total(road);
  if (!lanes) return std::nullopt;
  const bool counts_both_ways = road.one_way.one_way && lanes->tag.starts_with("lanes=");
  lanes->for_buses = bus_lanes_in(road, draft.side(), counts_both_ways);
  lanes->count -= lanes->for_buses;
  if (says_busway(road.tags)) lanes->certain = false;
  return lanes->count < 1 ? std::nullopt : lanes;
}

int LaneArrows::going_ahead() const {
  return static_cast<int>(std::ranges::count_if(lanes, is_ahead));
}

bool LaneArrows::merges() const {
  return std::ranges::any_of(lanes, [](const auto& arrows) {
    return std::ranges::any_of(arrows,
                               [](std::string_view a) { return a.starts_with("merge_to"); });
  });
}

std::optional<LaneArrows> lane_arrows(const Draft& draft, StretchId stretch) {
  if (!mentions_lanes(draft.way_tags(stretch.piece()))) return std::nullopt;
  const OneDirection road = direction_of(draft, stretch);
  const std::string key = key_of(road, "turn:lanes");
  if (key.empty()) return std::nullopt;
  LaneArrows arrows;
  arrows.tag = tag_text(road.tags, key);
  arrows.source = {draft.tables.pieces[stretch.piece().index()].way, ObjectType::way, {}};
  arrows.contradicted = contradicts(road, *by_arrows(road));
  for (const std::string_view lane : split(road.tags.get(key), '|'))
    arrows.lanes.push_back(split(lane, ';'));
  return arrows;
}

std::optional<LaneArrows> arrows_before_junction(const Draft& draft, const road::Roads& roads,
                                                 const std::vector<StretchId>& path) {
  std::optional<LaneArrows> last;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    if (auto arrows = lane_arrows(draft, path[i])) last = std::move(arrows);
    if (road_ends(roads, roads.to_node(path[i])) != 2) break;
  }
  if (last) return last;
  double metres = roads.piece(path.front()).length_m;
  for (StretchId back = path.front().back(); metres < arrows_within_m;) {
    if (road_ends(roads, roads.to_node(back)) != 2) break;
    back = straight_on(roads, back);
    if (!back.known()) break;
    if (auto arrows = lane_arrows(draft, back.back())) return arrows;
    metres += roads.piece(back).length_m;
  }
  return std::nullopt;
}

}  // namespace loopwright::mark
