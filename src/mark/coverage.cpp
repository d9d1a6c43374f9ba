// How much of the road the map tells what a lesson needs to know, sort of street by sort of street.
//
// 1. Only road a learner may drive counts; each piece once, by its length.
// 2. Main roads: trunk to tertiary. Residential streets: residential and living streets. Other
//    roads: unclassified and road (lanes, mostly). Service roads, links and motorways are left out.
// 3. A fact is told when a tag speaks of it, whatever it says: "no parking" tells of parking.
#include <algorithm>
#include <array>
#include <vector>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::RoadClass;

std::string_view sort_of(RoadClass road_class) {
  switch (road_class) {
    case RoadClass::trunk:
    case RoadClass::primary:
    case RoadClass::secondary:
    case RoadClass::tertiary:
      return "main roads";
    case RoadClass::residential:
    case RoadClass::living_street:
      return "residential streets";
    case RoadClass::unclassified:
    case RoadClass::road:
      return "other roads";
    default:
      return {};
  }
}

struct Fact {
  std::string_view name;
  std::array<std::string_view, 3> keys;  ///< any key that is one of these, or starts so with ':'
};

constexpr std::array facts{
    Fact{"a speed limit", {"maxspeed", "maxspeed:type", "zone:maxspeed"}},
    Fact{"a width", {"width", "width:carriageway", "width:effective"}},
    Fact{"parking along it", {"parking", "parking:lane", "parking:condition"}},
    Fact{"street lamps", {"lit", {}, {}}},
    Fact{"a number of lanes", {"lanes", "lanes:forward", "turn:lanes"}},
    Fact{"a surface", {"surface", {}, {}}},
    Fact{"a gradient", {"incline", {}, {}}}};

bool speaks_of(std::string_view key, std::string_view wanted) {
  return !wanted.empty() && key.starts_with(wanted) &&
         (key.size() == wanted.size() || key[wanted.size()] == ':');
}

/// What is known of one sort of street so far.
struct Covered {
  std::string_view streets;
  double all_m = 0;
  std::array<double, facts.size()> told_m{};
};

/// By fact, whether a tag speaks of it.
using Told = std::array<bool, facts.size()>;

Told told_by(const Tags& tags) {
  Told told{};
  tags.each([&](std::string_view key, std::string_view) {
    for (std::size_t f = 0; f < facts.size(); ++f) {
      told[f] = told[f] || std::ranges::any_of(facts[f].keys, [&](std::string_view wanted) {
                  return speaks_of(key, wanted);
                });
    }
  });
  return told;
}

}  // namespace

void count_coverage(Draft& draft) {
  const road::Roads roads = draft.roads();
  std::vector<Covered> sorts;   // as they come up
  const RawWay* way = nullptr;  // the last one that was read
  Told told{};
  for (std::size_t p = 0; p < roads.pieces.size(); ++p) {
    const road::Piece& piece = roads.pieces[p];
    const std::string_view streets = sort_of(piece.road_class);
    const PieceId id{p};
    if (streets.empty() || (!roads.drivable({id, false}) && !roads.drivable({id, true}))) continue;
    if (way != &draft.way(id)) {
      way = &draft.way(id);
      told = told_by(way->tags);
    }
    auto sort = std::ranges::find(sorts, streets, &Covered::streets);
    if (sort == sorts.end()) sort = sorts.insert(sort, {streets});
    sort->all_m += piece.length_m;
    for (std::size_t f = 0; f < facts.size(); ++f)
      if (told[f]) sort->told_m[f] += piece.length_m;
  }
  for (const Covered& sort : sorts)
    for (std::size_t f = 0; f < facts.size(); ++f)
      draft.report.cover(sort.streets, facts[f].name, sort.all_m, sort.told_m[f]);
}

}  // namespace loopwright::mark
