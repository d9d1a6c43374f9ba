// What a corner can be shown by: things beside the road that everyone knows when they see them.
//
// 1. Told by amenity, shop or railway, with or without a name. A place of worship is named by its
//    religion; of one whose religion isn't mapped nobody knows what it looks like, so it is none.
// 2. Big grounds have their middle far from any corner: the reach says so, room say judges.
// Rows are ordered by cell of the grid, then place and kind, whatever the order of the map.
// Source: OSM wiki, pages Key:amenity, Tag:amenity=place_of_worship, Key:shop.
#include <algorithm>
#include <array>
#include <optional>
#include <tuple>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::LandmarkKind;

struct Told {
  std::string_view key, value;
  LandmarkKind kind;
};

constexpr std::array<Told, 11> told_by{{{"amenity", "pub", LandmarkKind::pub},
                                        {"amenity", "school", LandmarkKind::school},
                                        {"amenity", "fuel", LandmarkKind::petrol_station},
                                        {"amenity", "hospital", LandmarkKind::hospital},
                                        {"amenity", "fire_station", LandmarkKind::fire_station},
                                        {"amenity", "library", LandmarkKind::library},
                                        {"shop", "supermarket", LandmarkKind::supermarket},
                                        {"shop", "convenience", LandmarkKind::shop},
                                        {"railway", "station", LandmarkKind::station},
                                        {"railway", "halt", LandmarkKind::station},
                                        {"building", "church", LandmarkKind::church}}};

std::optional<LandmarkKind> worship(std::string_view religion) {
  if (religion == "christian") return LandmarkKind::church;
  if (religion == "muslim") return LandmarkKind::mosque;
  if (religion == "jewish") return LandmarkKind::synagogue;
  const bool temple = religion == "hindu" || religion == "sikh" || religion == "buddhist";
  return temple ? std::optional(LandmarkKind::temple) : std::nullopt;
}

std::optional<LandmarkKind> kind_of(const Tags& tags) {
  if (tags.is("amenity", "place_of_worship")) return worship(tags.get("religion"));
  const auto told =
      std::ranges::find_if(told_by, [&](const Told& t) { return tags.is(t.key, t.value); });
  return told == told_by.end() ? std::nullopt : std::optional(told->kind);
}

double reach_of(const RawFeature& feature) {
  double farthest = 0;
  for (const std::vector<Point>& line : feature.lines)
    for (const Point& at : line)
      farthest = std::max(farthest, loopwright::distance_m(feature.at, at));
  return farthest;
}

}  // namespace

void mark_landmarks(Draft& draft) {
  std::vector<road::Landmark>& found = draft.tables.landmarks;
  for (const RawFeature& feature : draft.raw.features) {
    const auto kind = kind_of(feature.tags);
    if (!kind) continue;
    road::Landmark mark;
    mark.cell = road::grid_cell(feature.at);
    mark.at = feature.at, mark.kind = *kind;
    mark.name = draft.text(feature.tags.get("name"));
    mark.reach_m = static_cast<float>(reach_of(feature));
    found.push_back(mark);
  }
  std::ranges::sort(found, {}, [&](const road::Landmark& m) {
    return std::tuple(m.cell, m.at, m.kind, draft.text(m.name), m.reach_m);
  });
  draft.report.count("landmarks", static_cast<std::int64_t>(found.size()));
}

}  // namespace loopwright::mark
