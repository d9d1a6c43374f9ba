// Method:
//   1. A drive comes from a loop file, or as points of the instructor's own route; or it is all of
//      the area. The verdicts are made anew from the area, never read from a file.
//   2. Of each drive: its bus lanes, what else has hours, and advice on the start (lanes_drive.cpp,
//      lanes_advice.cpp); with --day the hours of a whole day instead (lanes_day.cpp).
//   3. With --all everything of the area that has hours, at one minute (lanes_all.cpp).
#include "loopwright/lanes/lanes.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/hours_place.hpp"
#include "command/lanes_all.hpp"
#include "command/lanes_day.hpp"
#include "command/lanes_drive.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

struct LanesTexts {
  AreaTexts area;
  std::string loops, loop, along, day, at;
  TripTexts trip;
  bool all = false;
};

struct LanesJob {
  AreaTexts area;
  std::filesystem::path loops;
  std::optional<int> loop;
  std::vector<WrittenPlace> along;
  std::optional<Date> day;
  Trip trip;
  bool all = false;
  std::optional<WrittenTime> at;
};

void add_options(CLI::App& app, LanesTexts& texts) {
  add_area(app, texts.area);
  auto* loops = app.add_option("LOOPS", texts.loops, "loop file");
  app.add_option("--loop", texts.loop, "number of the loop (default: all)");
  auto* along = app.add_option("--along", texts.along,
                               "\"PLACE;PLACE;…\" instead: your own route, each LAT,LON or a name");
  add_trip(app, texts.trip);
  app.add_option("--day", texts.day, "a date, 2026-11-28: the whole day of each lane, by the hour");
  auto* all = app.add_flag("--all", texts.all, "instead: all in the area that has hours");
  app.add_option("--at", texts.at, "with --all: date and time, 2026-11-28T15:00 (default: now)");
  along->excludes(loops);
  all->excludes(loops)->excludes(along);
}

void check(const LanesTexts& texts) {
  if (texts.loops.empty() && texts.along.empty() && !texts.all) {
    throw UsageError("give a loop file, --along with your route, or --all");
  }
  if (texts.loops.empty() && !texts.loop.empty()) {
    throw UsageError("--loop is a number in a loop file");
  }
  if (texts.along.empty() && !(texts.trip.start.empty() && texts.trip.level.empty())) {
    throw UsageError("--start and --level are for --along; a loop file has its own");
  }
  if (texts.all && !texts.day.empty()) throw UsageError("--day is for a drive, not for --all");
  if (!texts.all && !texts.at.empty()) throw UsageError("--at is for --all; a drive has a start");
}

std::vector<WrittenPlace> read_route(const std::string& text) {
  std::vector<WrittenPlace> route;
  if (text.empty()) return route;
  for (const auto point : split(text, ';')) route.push_back(read_place("--along", point));
  if (route.size() < 2) throw UsageError("--along takes at least two places, parted by ';'");
  return route;
}

std::optional<LanesJob> job_of(const Arguments& words) {
  CLI::App app{
      "Tells which bus lanes a car may use at the minute it is there, and what else has hours.",
      "loopwright lanes"};
  LanesTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  check(texts);
  LanesJob job{.area = texts.area,
               .loops = texts.loops,
               .loop = {},
               .along = read_route(texts.along),
               .day = {},
               .trip = trip_of(texts.trip),
               .all = texts.all,
               .at = {}};
  if (!texts.loop.empty()) job.loop = whole_number("--loop", texts.loop, {1, 999});
  if (!texts.day.empty()) job.day = day_of("--day", texts.day);
  if (!texts.at.empty()) job.at = time_of("--at", texts.at);
  return job;
}

void print_drive(const LanesJob& job, const TimedDrive& drive, std::string_view name) {
  std::cout << name << ", " << spoken_moment(drive.loop.start) << '\n';
  if (job.day) {
    print_day(std::cout, drive, *job.day, drive.roads.info().zone);
    return;
  }
  print_bus_lanes(std::cout, drive);
  print_other_hours(std::cout, drive);
  print_advice(std::cout, drive);
}

void print_caution() {
  std::cout << "The plate decides. One that can't be read means keep out.\n";
}

Exit run_loops(const LanesJob& job) {
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  if (job.loop) loop_numbered(tied.answer, *job.loop, job.loops);
  for (const wish::Loop& loop : tied.answer.loops) {
    if (job.loop && loop.id != *job.loop) continue;
    print_drive(job, {tied.roads, loop, tied.setting}, "Loop " + std::to_string(loop.id));
  }
  print_caution();
  return Exit::done;
}

wish::Wish wish_along(const LanesJob& job, const Ground& ground) {
  Places places(ground.map(), std::cout);
  wish::Wish wish;
  wish.home = places.find(job.along.front());
  for (std::size_t k = 1; k + 1 < job.along.size(); ++k)
    wish.through.push_back(places.find(job.along[k]));
  wish.end = places.find(job.along.back());
  wish.start = moment(job.trip.start, ground.info());
  wish.level = job.trip.level_or_usual();
  return wish;
}

Exit run_along(const LanesJob& job) {
  Ground ground(job.area);
  const wish::Wish wish = wish_along(job, ground);
  const hours::Setting setting = ground.setting_at(wish.home);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(wish, setting));
  const auto found = find::route_through(roads, wish, setting);
  if (found.loops.empty()) {
    std::cout << "No such drive: " << (found.shortfall ? found.shortfall->why : "") << '\n';
    return Exit::wish_not_met;
  }
  print_drive(job, {roads, found.loops.front(), setting}, "Your route");
  print_caution();
  return Exit::done;
}

Exit run_all(const LanesJob& job) {
  Ground ground(job.area);
  const Instant at = moment(job.at, ground.info());
  const hours::Setting setting = ground.setting_somewhere();
  print_all(std::cout, ground.for_lesson(road::lesson_time(at, 0, setting)), at, setting);
  print_caution();
  return Exit::done;
}

}  // namespace

Exit lanes(const Arguments& words) {
  const std::optional<LanesJob> job = job_of(words);
  if (!job) return Exit::done;
  if (job->all) return run_all(*job);
  return job->along.empty() ? run_loops(*job) : run_along(*job);
}

}  // namespace loopwright::command
