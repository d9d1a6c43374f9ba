#include "built_map.hpp"

#include "loopwright/place/place.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/read/build.hpp"
#include "loopwright/store/area.hpp"
#include "trial.hpp"

namespace loopwright::fuzz {
namespace {

read::BuildOptions options_of(unsigned bits) {
  constexpr std::string_view regions[] = {"GB-ENG", "LI", "GB-SCT", "GB-NIR"};
  read::BuildOptions options;
  options.region = find_region(regions[bits / 4 % 4]).value();
  options.motorways = (bits & 16U) != 0;
  options.fords = (bits & 32U) != 0;
  return options;
}

void check_area(const std::filesystem::path& file) {
  store::verify_area(file);
  const store::Area area = store::open_area(file);
  const road::Roads& roads = area.roads();
  const place::Finder finder(roads);
  require(finder.find("Mill Street").meant <= roads.named_spots.size() + roads.pieces.size());
  for (const road::Node& node : roads.nodes.first(std::min<std::size_t>(roads.nodes.size(), 3)))
    if (const auto snap = reach::snap_home(roads, node.at)) require(snap->off_m <= 150);
}

}  // namespace

void check_build(const std::filesystem::path& extract, unsigned options) {
  road::Report report;
  read::Built built;
  if (refused([&] { built = read::build_area(extract, options_of(options), report, {}); })) return;
  const std::string names = place::make_index(road::view_of(built.tables, built.info));
  built.tables.place_index.assign(names.begin(), names.end());
  const std::filesystem::path file = scratch_path("map.area");
  store::write_area(file, built.tables, built.info);
  check_area(file);
}

}  // namespace loopwright::fuzz
