#include "town.hpp"

#include "card/card_town.hpp"
#include "loopwright/place/place.hpp"
#include "loopwright/store/area.hpp"
#include "trial.hpp"

namespace loopwright::fuzz {
namespace {

read::Built made_town() {
  read::Built built = test::built_card_town().built;
  const std::string names = place::make_index(road::view_of(built.tables, built.info));
  built.tables.place_index.assign(names.begin(), names.end());
  return built;
}

const read::Built& town() {
  static const read::Built built = made_town();
  return built;
}

}  // namespace

road::Roads town_roads() {
  return road::view_of(town().tables, town().info);
}

const std::filesystem::path& town_area() {
  static const std::filesystem::path file = [] {
    std::filesystem::path path = scratch_path("town.area");
    store::write_area(path, town().tables, town().info);
    return path;
  }();
  return file;
}

}  // namespace loopwright::fuzz
