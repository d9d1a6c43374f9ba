// query_times AREA LAT,LON NAME: what single questions to an open area cost, for tools/bench. A line each: name, milliseconds
// (the median of 21).
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <exception>
#include <numbers>
#include <string>
#include <vector>

#include "loopwright/base/text.hpp"
#include "loopwright/page/tiles.hpp"
#include "loopwright/place/place.hpp"
#include "loopwright/store/area.hpp"
#include "trace/simulated.hpp"

namespace {

using Clock = std::chrono::steady_clock;

template <class F>
void time_it(const char* name, F&& ask) {
  std::vector<double> times_ms;
  for (int run = 0; run < 21; ++run) {
    const auto before = Clock::now();
    ask();
    times_ms.push_back(std::chrono::duration<double, std::milli>(Clock::now() - before).count());
  }
  std::nth_element(times_ms.begin(), times_ms.begin() + 10, times_ms.end());
  std::printf("%s\t%.3f\n", name, times_ms[10]);
}

/// The tile that holds a point. Formula: OSM wiki, Slippy map tilenames.
loopwright::page::TileAddress tile_at(loopwright::Point at, int zoom) {
  const double side = std::exp2(zoom), lat = at.lat() * std::numbers::pi / 180;
  const double row = (1 - std::asinh(std::tan(lat)) / std::numbers::pi) / 2 * side;
  return {zoom, static_cast<std::uint32_t>((at.lon() + 180) / 360 * side),
          static_cast<std::uint32_t>(row)};
}

/// Twenty minutes somewhere on the map, as a telephone records them: 10 m off, every 5 s.
std::vector<loopwright::trace::Fix> recorded_drive(const loopwright::road::Roads& roads) {
  namespace test = loopwright::test;
  return test::recorded(test::simulated(roads, {.seed = 7, .minutes = 20}),
                        {.seed = 7, .sigma_m = 10, .every_s = 5});
}

int ask(const std::string& file, loopwright::Point home, const std::string& name) {
  namespace page = loopwright::page;
  time_it("opening", [&] { (void)loopwright::store::open_area(file); });
  const loopwright::store::Area area = loopwright::store::open_area(file);
  const loopwright::place::Finder finder(area.roads());
  std::size_t found = 0;
  time_it("a place by its name", [&] { found = finder.find(name).candidates.size(); });
  if (found == 0) return std::fprintf(stderr, "%s: not found\n", name.c_str()), 1;
  time_it("tiles made ready", [&] { (void)page::Tiles(area.roads()); });
  const page::Tiles tiles(area.roads());
  const loopwright::hours::Setting setting{};
  for (const int zoom : {12, 15})
    time_it(zoom == 12 ? "a tile of zoom 12" : "a tile of zoom 15",
            [&] { (void)tiles.tile(tile_at(home, zoom), {}, setting); });
  const auto fixes = recorded_drive(area.roads());
  time_it("a recorded drive",
          [&] { (void)loopwright::trace::match_to_roads(area.roads(), fixes); });
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) return 2;
  try {
    const auto corner = loopwright::split(argv[2], ',');
    const auto home = loopwright::point_from_degrees(loopwright::read_number(corner.at(0)).value(),
                                                     loopwright::read_number(corner.at(1)).value());
    return ask(argv[1], home, argv[3]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
}
