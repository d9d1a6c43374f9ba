// search_times AREA WISHES: how long the search takes for each wish, and how good its answers are.
//
// WISHES: a line each, tab-separated: lat, lon, minutes, wants with spaces between.
// Prints a line each: candidates; then for each effort milliseconds, value, bound ("-": none) and state; last
// the milliseconds of one plain Dijkstra sweep (Boost.Graph) from the same door over the whole turn graph.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <exception>
#include <fstream>
#include <sstream>
#include <string>

#include "loopwright/find/find.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/store/area.hpp"

namespace {

using namespace loopwright;
using Clock = std::chrono::steady_clock;

double ms_since(Clock::time_point before) {
  return std::chrono::duration<double, std::milli>(Clock::now() - before).count();
}

wish::Wish read_wish(const std::string& line) {
  std::istringstream in(line);
  wish::Wish wish;
  double lat = 0, lon = 0;
  int minutes = 0;
  in >> lat >> lon >> minutes;
  wish.home = point_from_degrees(lat, lon);
  wish.minutes = minutes;
  wish.start = {.unix_s = 1796032800, .offset_s = 0};  // Monday 30 November 2026, ten o'clock
  for (std::string want; in >> want;) wish.wants.push_back(wish::read_want(want));
  return wish;
}

void time_sweep(const road::Roads& roads, const wish::Wish& wish) {
  const auto snap = reach::snap_home(roads, wish.home);
  const pace::Pace pace(roads, {.level = wish.level}, wish.start);
  const reach::Costs costs = reach::costs_of(roads, pace);
  const auto seeds = reach::leaving(roads, pace, *snap);
  reach::Sweep sweep(roads);
  double least_ms = 1e9;
  for (int run = 0; run < 5; ++run) {
    const auto before = Clock::now();
    sweep.run(seeds, costs, std::int64_t{1} << 40);
    least_ms = std::min(least_ms, ms_since(before));
  }
  std::printf("\t%.3f\t%zu\n", least_ms, sweep.settled().size());
}

void time_wish(const road::Roads& roads, const std::string& line) {
  const wish::Wish wish = read_wish(line);
  const hours::Setting setting = hours::Setting{};
  bool first = true;
  for (const find::Effort effort :
       {find::Effort::quick, find::Effort::usual, find::Effort::thorough}) {
    const auto before = Clock::now();
    const find::FindResult result = find::find_loops(roads, wish, setting, effort);
    const double ms = ms_since(before);
    if (result.loops.empty()) {
      std::printf("%s%.1f\t-\t-\tnone", first ? "-\t" : "\t", ms);
    } else {
      const wish::Certificate& c = result.loops.front().certificate;
      if (first) std::printf("%lld\t", static_cast<long long>(c.candidates));
      std::printf("%s%.1f\t%lld\t%s\t%s", first ? "" : "\t", ms, static_cast<long long>(c.value),
                  c.bound ? std::to_string(*c.bound).c_str() : "-", c.state.c_str());
    }
    first = false;
  }
  time_sweep(roads, wish);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  try {
    const store::Area area = store::open_area(argv[1]);
    std::ifstream in(argv[2]);
    for (std::string line; std::getline(in, line);) time_wish(area.roads(), line);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
  return 0;
}
