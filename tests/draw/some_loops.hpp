// Loops to draw: lessons that were searched for and random drives, with the rows that are said of them.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "loopwright/draw/overview.hpp"
#include "loopwright/draw/strip.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/read/build.hpp"
#include "loopwright/say/say.hpp"
#include "say/random_drive.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {

inline std::filesystem::path county_file() {
  return std::filesystem::path(LOOPWRIGHT_ROOT) / "maps/quillham.osm.pbf";
}
/// Only where the shared files are beside the project.
inline std::filesystem::path newport_file() {
  return std::filesystem::path(LOOPWRIGHT_ROOT).parent_path() / "shared/maps/newport-2023.osm.pbf";
}

inline read::Built built_map(const std::filesystem::path& file, std::string_view region) {
  road::Report report;
  read::BuildOptions options;
  options.region = find_region(region).value();
  return read::build_area(file, options, report, {});
}

inline wish::Loop random_loop(const road::Roads& roads, std::uint32_t seed, std::size_t stretches) {
  return honest_answer(roads, RandomDrive(roads, seed).of(stretches)).loops[0];
}

/// A point on a road that a learner may drive, near a place of the map.
inline Point nearest_door(const road::Roads& roads, Point near) {
  Point door;
  double least = 1e9;
  for (const PieceId id : road::pieces_near(roads, near, 1000)) {
    const StretchId stretch{id, false};
    if (!roads.drivable(stretch) || !roads.drivable(stretch.back()) ||
        roads.pieces[id.index()].road_class == road::RoadClass::service)
      continue;
    const auto shape = roads.shape_of(id);
    const Point middle = point_along(shape, length_m(shape) / 2);
    if (distance_m(middle, near) >= least) continue;
    least = distance_m(middle, near);
    door = middle;
  }
  return door;
}

/// The best lesson of an hour from a door, on a Saturday in November at three.
inline wish::Loop lesson_loop(const road::Roads& roads, Point home,
                              std::initializer_list<std::string_view> wants) {
  wish::Wish wish;
  wish.home = home;
  wish.start = {1795878000, 0};
  wish.minutes = 60;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return find::find_loops(roads, wish, setting_of(roads)).loops.at(0);
}

inline draw::OverviewAsked numbered(const road::Roads& roads, const wish::Loop& loop) {
  draw::OverviewAsked asked;
  for (const say::Row& row : say::say_loop(roads, loop))
    asked.numbers.push_back({row.stretch, std::to_string(asked.numbers.size() + 1)});
  return asked;
}

inline draw::StripAsked with_rows(const road::Roads& roads, const wish::Loop& loop) {
  draw::StripAsked asked;
  for (const say::Row& row : say::say_loop(roads, loop)) {
    asked.rows.push_back({row.stretch, row.exit, std::to_string(asked.rows.size() + 1), row.say});
    if (row.new_limit)
      asked.marks.push_back({row.stretch, loop.stretches[row.stretch].metres,
                             std::to_string(row.new_limit->value), draw::StripSign::limit});
  }
  for (const wish::Pass& pass : loop.passes)
    asked.marks.push_back(
        {pass.first, 0, std::string(road::name(pass.kind)), draw::StripSign::hazard});
  return asked;
}

}  // namespace loopwright::test
