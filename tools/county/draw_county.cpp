// The program draw-county: an invented county from its plan, as a map file.
#include <CLI/CLI.hpp>
#include <cmath>
#include <cstdint>
#include <filesystem>
#include <iostream>
#include <string>

#include "county/county_grid.hpp"
#include "county/draw.hpp"
#include "county/draw_other.hpp"
#include "county/files.hpp"
#include "county/heights_tile.hpp"
#include "county/plan.hpp"
#include "county/truth.hpp"
#include "county/write_map.hpp"
#include "loopwright/base/error.hpp"

namespace {

namespace county = loopwright::county;
using loopwright::Exit;

struct Wish {
  std::filesystem::path plan, map, heights, truth;
  std::uint64_t seed = 7;
  std::int64_t counties = 1;
  bool apart = false, quiet = false;
};

void say(const Wish& wish, const county::Written& written) {
  if (wish.quiet) return;
  std::cout << wish.map.string() << ": " << written.car_ways << " ways for cars, "
            << std::lround(written.car_km) << " km; " << written.nodes << " nodes, " << written.ways
            << " ways, " << written.relations << " relations";
  if (wish.counties > 1 && wish.apart)
    std::cout << "; " << wish.counties << " counties without roads between them";
  else if (wish.counties > 1)
    std::cout << "; " << wish.counties << " counties that meet at " << written.joined << " points";
  std::cout << '\n';
}

/// What a build must find of the plan's county; of the others nothing.
void write_truth(const Wish& wish, const county::Plan& plan, const county::Drawing& drawing) {
  county::Truth truth = county::truth_of(drawing);
  truth.traps = county::traps_of(plan);
  county::write_file(wish.truth, county::written(truth));
}

/// Draws and writes; what the plan says that can't be drawn is printed, a line each.
Exit draw(const Wish& wish) {
  county::MapFile file(wish.map);  // first: what can't be written needn't be drawn
  const county::Plan plan = county::read_plan(county::read_file(wish.plan), wish.plan.string());
  const county::Drawing drawing = county::draw(plan, wish.seed);
  for (const std::string& trouble : drawing.troubles)
    std::cerr << "draw-county: " << wish.plan.string() << ' ' << trouble << '\n';
  if (!drawing.troubles.empty()) return Exit::could_not;
  const county::CountyGrid grid(plan.origin_lat, plan.origin_lon, wish.counties);
  const auto place_of = [&](const county::Plot& plot) {
    county::CountyPlace place = plot.place;
    if (wish.apart) place.beyond.clear();
    return place;
  };
  file.add(drawing, place_of(grid.plot(0)));
  for (std::int64_t number = 1; number < wish.counties; ++number) {
    const county::Plot plot = grid.plot(number);
    file.add(county::draw_other(plot, wish.seed), place_of(plot));
  }
  say(wish, file.finish());
  if (!wish.truth.empty()) write_truth(wish, plan, drawing);
  if (!wish.heights.empty()) county::write_heights(drawing, wish.heights);
  return Exit::done;
}

Exit run(int count, char** words) {
  Wish wish;
  CLI::App app("Draws an invented county as a map file from a plan that a person can read.",
               "draw-county");
  app.add_option("PLAN", wish.plan, "the plan; tools/county/plan.hpp lists its commands")
      ->required();
  app.add_option("--map", wish.map, "the map to write, FILE.osm.pbf or FILE.opl")->required();
  app.add_option("--truth", wish.truth, "file for what a build must find in the plan's county");
  app.add_option("--heights", wish.heights, "folder for the elevation tile of the plan's hills");
  app.add_option("--counties", wish.counties,
                 "this many, side by side: the plan's, and others made from the seed")
      ->check(CLI::Range(std::int64_t{1}, std::int64_t{8000}));
  app.add_flag("--apart", wish.apart, "no road leads from one county to the next");
  app.add_option("--seed", wish.seed, "of everything that is left to chance");
  app.add_flag("--quiet", wish.quiet, "print nothing when all is well");
  try {
    app.parse(count, words);
  } catch (const CLI::CallForHelp&) {
    return (std::cout << app.help()), Exit::done;
  } catch (const CLI::ParseError& error) {
    throw loopwright::UsageError(std::string(error.what()) + "; draw-county --help tells how");
  }
  return draw(wish);
}

}  // namespace

int main(int count, char** words) {
  auto code = Exit::could_not;
  try {
    code = run(count, words);
  } catch (const loopwright::Error& error) {
    std::cerr << "draw-county: " << error.what() << '\n';
    code = error.exit_code();
  } catch (const std::exception& error) {
    std::cerr << "draw-county: " << error.what() << '\n';
  }
  return static_cast<int>(code);
}
