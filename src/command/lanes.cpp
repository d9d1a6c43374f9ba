// Method: the verdicts are made anew from the area, not read from the file; for each lane is told
// where, what the plate says by the map, when we pass, and whether a car may use it then.
#include "loopwright/lanes/lanes.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/print.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

std::string hours_in_words(const wish::BusLanePass& lane) {
  return lane.hours ? hours::read_hours(*lane.hours).words() : "hours not mapped";
}

void print_loop(const road::Roads& roads, const wish::Loop& loop) {
  std::cout << "Loop " << loop.id << ", " << write_time(loop.start) << '\n';
  const auto passed = lanes::bus_lanes_on(roads, loop);
  if (passed.empty()) std::cout << "  no bus lane on the way, as far as it is mapped\n";
  for (const wish::BusLanePass& lane : passed) {
    const std::string& street = loop.stretches[lane.first].street;
    std::cout << "  " << (street.empty() ? "unnamed road" : street) << ", " << lane.side
              << " side: " << hours_in_words(lane) << '\n'
              << "    passed " << lane.arrive_from << " to " << lane.arrive_to << ": "
              << wish::name(lane.verdict) << '\n'
              << "    why: " << lane.why << '\n'
              << "    by " << lane.tag << " (" << object(lane.source) << ")\n";
  }
}

struct LanesJob {
  AreaTexts area;
  std::filesystem::path loops;
  std::optional<int> loop;
};

std::optional<LanesJob> job_of(const Arguments& words) {
  CLI::App app{"Tells which bus lanes of a loop a car may use at the minute it is there.",
               "loopwright lanes"};
  AreaTexts area;
  std::string loops, loop;
  add_area(app, area);
  app.add_option("LOOPS", loops, "loop file")->required();
  app.add_option("--loop", loop, "number of the loop (default: all)");
  if (!parse(app, words)) return std::nullopt;
  LanesJob job{area, loops, {}};
  if (!loop.empty()) job.loop = whole_number("--loop", loop, {1, 999});
  return job;
}

Exit run(const LanesJob& job) {
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  if (job.loop) {
    print_loop(tied.roads, loop_numbered(tied.answer, *job.loop, job.loops));
  } else {
    for (const wish::Loop& loop : tied.answer.loops) print_loop(tied.roads, loop);
  }
  std::cout << "The plate decides. One that can't be read means keep out.\n";
  return Exit::done;
}

}  // namespace

Exit lanes(const Arguments& words) {
  const std::optional<LanesJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
