// search_times AREA WISHES NAME [quick]: how long the search takes for each wish that the table WISHES
// has for the area of that name, and how good its answers are; with `quick` first answers only.
//
// Prints lines of cells with tabs between, for tests/bench/search_table.py:
//   area    states
//   wish    name, minutes, kind ("counts" or "max"), candidates, sweep ms, states the sweep reached, loops
//   effort  name, ms, value, bound or "-", state or "none"; after its wish, one each
//   memory  kilobytes at most beyond what is mapped of files
// The sweep is a plain one of Boost.Graph (plain_sweep.hpp) from the same door. `loops` is a number
// made from every stretch of the first loop, the same for the same loop. A first answer's time is the
// median of three.
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <exception>
#include <fstream>
#include <string>

#include "bench/plain_sweep.hpp"
#include "bench/wish_lines.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/setting_of.hpp"
#include "loopwright/store/area.hpp"

namespace {

using namespace loopwright;
using Clock = std::chrono::steady_clock;

struct Timed {
  double ms = 0;
  find::FindResult found;
};

Timed time_once(const road::Roads& roads, const wish::Wish& wish, find::Effort effort) {
  const hours::Setting setting = road::setting_of(roads.info(), wish.home);
  const auto before = Clock::now();
  Timed timed;
  timed.found = find::find_loops(roads, wish, setting, effort);
  timed.ms = std::chrono::duration<double, std::milli>(Clock::now() - before).count();
  return timed;
}

Timed time_first_answer(const road::Roads& roads, const wish::Wish& wish) {
  Timed timed;
  std::array<double, 3> ms{};
  for (double& run : ms) {
    timed = time_once(roads, wish, find::Effort::quick);
    run = timed.ms;
  }
  std::sort(ms.begin(), ms.end());
  timed.ms = ms[1];
  return timed;
}

bench::SweepTime sweep_from(const road::Roads& roads, const wish::Wish& wish) {
  const auto snap = reach::snap_home(roads, wish.home);
  const pace::Pace pace(roads, {.level = wish.level}, wish.start);
  const auto seeds = reach::leaving(roads, pace, snap.value());
  return bench::time_plain_sweep(roads, reach::Costs(roads, pace), seeds.front().state);
}

/// FNV-1a over the numbers of the stretches driven.
std::uint64_t number_of(const wish::Loop& loop) {
  std::uint64_t number = 0xcbf29ce484222325U;
  const auto mix = [&](std::int64_t value) {
    number = (number ^ static_cast<std::uint64_t>(value)) * 0x100000001b3U;
  };
  for (const wish::LoopStretch& stretch : loop.stretches)
    for (const std::int64_t value : {stretch.way, stretch.from, stretch.to}) mix(value);
  return number;
}

void print_effort(const char* name, const Timed& timed) {
  std::printf("effort\t%s\t%.2f\t", name, timed.ms);
  if (timed.found.loops.empty()) return void(std::printf("-\t-\tnone\n"));
  const wish::Certificate& known = timed.found.loops.front().certificate;
  std::printf("%lld\t%s\t%s\n", static_cast<long long>(known.value),
              known.bound ? std::to_string(*known.bound).c_str() : "-", known.state.c_str());
}

void time_wish(const road::Roads& roads, const bench::NamedWish& named, bool first_only) {
  const wish::Wish& wish = named.wish;
  const bench::SweepTime sweep = sweep_from(roads, wish);
  const Timed first = time_first_answer(roads, wish);
  const bool most = std::any_of(wish.wants.begin(), wish.wants.end(),
                                [](const wish::Want& want) { return !want.count; });
  const auto& loops = first.found.loops;
  std::printf("wish\t%s\t%d\t%s\t%lld\t%.3f\t%zu\t%llx\n", named.name.c_str(),
              wish.minutes.value_or(0), most ? "max" : "counts",
              loops.empty() ? -1LL : static_cast<long long>(loops[0].certificate.candidates),
              sweep.ms, sweep.reached,
              loops.empty() ? 0ULL : static_cast<unsigned long long>(number_of(loops[0])));
  print_effort("quick", first);
  if (!first_only) {
    print_effort("soon", time_once(roads, wish, find::Effort::soon));
    print_effort("usual", time_once(roads, wish, find::Effort::usual));
    print_effort("thorough", time_once(roads, wish, find::Effort::thorough));
  }
  std::fflush(stdout);
}

/// What /proc/self/status says under a name, in kilobytes.
long status_kb(const std::string& name) {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.starts_with(name + ":")) return std::stol(line.substr(name.size() + 1));
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4 && argc != 5) return 2;
  try {
    const store::Area area = store::open_area(argv[1]);
    std::ifstream table(argv[2]);
    std::printf("area\t%zu\n", static_cast<std::size_t>(area.roads().state_count()));
    for (const bench::NamedWish& named : bench::wishes_of(table, argv[3], area.roads().info()))
      time_wish(area.roads(), named, argc == 5);
    std::printf("memory\t%ld\n", status_kb("VmHWM") - status_kb("RssFile"));
  } catch (const std::exception& error) {
    std::fprintf(stderr, "search_times: %s\n", error.what());
    return 1;
  }
  return 0;
}
