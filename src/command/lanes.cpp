// Method:
//   1. A drive comes from a loop file, or as places of the instructor's own route; or it is all of
//      the area, or what lies near a place. The verdicts are made anew from the area, never read
//      from a file.
//   2. Of each drive: its streets, what on it has hours, and advice on the start (lanes_drive.cpp,
//      lanes_advice.cpp), and of an own route what it keeps out of by the clock (lanes_avoided.cpp).
//      When it can't be driven at its start another is looked for.
//   3. With --all or --near everything there that has hours, at one minute (lanes_all.cpp).
//   4. With --day the hours of a whole day instead (lanes_day.cpp); then an own route may begin at
//      any hour of that day, and when there is none at all the streets near its places are told.
#include <cstdlib>
#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/lanes_all.hpp"
#include "command/lanes_along.hpp"
#include "command/lanes_avoided.hpp"
#include "command/lanes_day.hpp"
#include "command/lanes_drive.hpp"
#include "command/lanes_words.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "command/shut_notes.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

struct LanesTexts {
  AreaTexts area;
  std::string loops, loop, along, near, day, at;
  TripTexts trip;
  bool all = false;
};

struct LanesJob {
  AreaTexts area;
  std::filesystem::path loops;
  std::optional<int> loop;
  std::vector<WrittenPlace> along;
  std::optional<WrittenPlace> near;
  std::optional<Date> day;
  Trip trip;
  bool all = false;
  std::optional<WrittenTime> at;
};

void add_options(Options& app, LanesTexts& texts) {
  add_area(app, texts.area);
  auto* loops = app.add_option("LOOPS", texts.loops, "loop file");
  app.add_option("--loop", texts.loop, "number of the loop (default: all)");
  auto* along = app.add_option("--along", texts.along,
                               "\"PLACE;PLACE;…\" instead: your own route, each LAT,LON or a name");
  add_trip(app, texts.trip);
  app.add_option("--day", texts.day, "a date, 2026-11-28: the whole day of each, by the hour");
  auto* all = app.add_flag("--all", texts.all, "instead: all in the area that has hours");
  auto* near = app.add_option("--near", texts.near,
                              "instead: all with hours within 500 m of a place, LAT,LON or a name");
  app.add_option("--at", texts.at,
                 "with --all or --near: date and time, 2026-11-28T15:00 (default: now)");
  along->excludes(loops);
  all->excludes(loops)->excludes(along);
  near->excludes(loops)->excludes(along)->excludes(all);
}

void check(const LanesTexts& texts) {
  const bool area = texts.all || !texts.near.empty();
  if (texts.loops.empty() && texts.along.empty() && !area && texts.day.empty()) {
    throw UsageError("give a loop file, --along with your route, --near with a place, or --all");
  }
  if (texts.loops.empty() && !texts.loop.empty()) {
    throw UsageError("--loop is a number in a loop file");
  }
  if (texts.along.empty() && !(texts.trip.start.empty() && texts.trip.level.empty())) {
    throw UsageError("--start and --level are for --along; a loop file has its own");
  }
  if (!texts.day.empty() && !texts.at.empty()) {
    throw UsageError("--day tells all of a day; give no --at beside it");
  }
  if (!area && !texts.at.empty()) {
    throw UsageError("--at is for --all and --near; a drive has a start");
  }
}

std::vector<WrittenPlace> read_route(const std::string& text) {
  std::vector<WrittenPlace> route;
  if (text.empty()) return route;
  for (const auto point : split(text, ';')) route.push_back(read_place("--along", point));
  if (route.size() < 2) throw UsageError("--along takes at least two places, parted by ';'");
  return route;
}

std::optional<LanesJob> lanes_job_of(const Arguments& words) {
  Options app{
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
               .near = {},
               .day = {},
               .trip = trip_of(texts.trip),
               .all = texts.all,
               .at = {}};
  if (!texts.near.empty()) job.near = read_place("--near", texts.near);
  if (!texts.loop.empty()) job.loop = whole_number("--loop", texts.loop, {1, 999});
  if (!texts.day.empty()) job.day = day_of("--day", texts.day);
  if (!texts.at.empty()) job.at = time_of("--at", texts.at);
  return job;
}

std::vector<DayRow> rows_of(const TimedDrive& drive) {
  std::vector<DayRow> rows;
  for (Met& met : met_on(drive)) {
    std::string name = thing_head(met.thing);
    rows.push_back({std::move(name), std::move(met.thing)});
  }
  return rows;
}

/// Times after the change are by the new clock, and would puzzle without a word.
void print_clocks(const TimedDrive& drive) {
  const Instant from = drive.setting.on_clock(drive.loop.start);
  const Instant to = wish::likely_end(drive.loop, drive.setting);
  if (from.offset_s == to.offset_s) return;
  std::cout << "  the clocks go " << (to.offset_s < from.offset_s ? "back" : "forward")
            << " on the way\n";
}

void print_drive(const LanesJob& job, const TimedDrive& drive, const std::string& name) {
  if (job.day) {
    std::cout << name << '\n';
    print_streets(std::cout, drive);
    print_day(std::cout, rows_of(drive), {*job.day, drive.roads.info().zone, drive.setting});
    return;
  }
  std::cout << name << ", " << spoken_moment(drive.setting.on_clock(drive.loop.start)) << '\n';
  print_clocks(drive);
  print_streets(std::cout, drive);
  print_met(std::cout, drive);
  print_door_kerbs(std::cout, drive);
  print_advice(std::cout, drive);
}

Exit run_loops(const LanesJob& job) {
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  if (job.loop) loop_numbered(tied.answer, *job.loop, job.loops);
  print_plan_caution(std::cout);
  for (const wish::Loop& loop : tied.answer.loops) {
    if (job.loop && loop.id != *job.loop) continue;
    print_drive(job, {tied.roads, loop, tied.setting}, "Loop " + std::to_string(loop.id));
  }
  return Exit::done;
}

/// The route's places by the words they were typed with.
std::vector<NamedPlace> places_along(const LanesJob& job, const Ground& ground) {
  Places finder(ground.map(), std::cout);
  std::vector<NamedPlace> places;
  for (const WrittenPlace& written : job.along)
    places.push_back({written.text, finder.find(written)});
  return places;
}

/// Of a route that no hour of the day lets through.
void print_day_near(const LanesJob& job, const road::Roads& roads, const wish::Wish& wish,
                    const hours::Setting& setting) {
  constexpr double within_m = 300;
  Around around{wish.through, within_m};
  around.places.push_back(wish.home);
  if (wish.end) around.places.push_back(*wish.end);
  print_folded(std::cout, 0,
               "No start on that day makes this drive; what has hours within 300 m of its places:");
  print_day(std::cout, rows_around(roads, setting, around), {*job.day, roads.info().zone, setting});
}

/// The drive can't be made at its start: why, and at which other it can.
Exit print_no_drive(const TimedRoads& timed, const wish::Wish& wish, const std::string& why) {
  print_folded(std::cout, 0, "No such drive: " + why);
  if (timed.roads.timed_rules.empty() && timed.roads.turn_rules.empty()) return Exit::wish_not_met;
  if (const auto other = other_start(timed, wish)) {
    print_folded(std::cout, 2,
                 "leave " + minutes_words(std::abs(other->minutes)) +
                     (other->minutes < 0 ? " earlier" : " later") + ", at " +
                     write_clock(timed.setting.on_clock(other->loop.start)) + ", and there is one");
  } else {
    print_folded(std::cout, 2, "no start up to two hours earlier or later has one");
  }
  return Exit::wish_not_met;
}

Exit run_along_at_start(const LanesJob& job, const TimedRoads& timed, wish::Wish wish,
                        const std::vector<NamedPlace>& places) {
  find::FindResult found = find::route_through(timed.roads, wish, timed.setting);
  const std::string why = found.shortfall ? with_names(found.shortfall->why, places) : "";
  if (found.loops.empty()) found = drive_beside_shut_streets(std::cout, timed, wish, places);
  if (found.loops.empty()) return print_no_drive(timed, wish, why);
  const wish::Loop& loop = found.loops.front();
  print_drive(job, {timed.roads, loop, timed.setting}, "Your route");
  print_avoided(std::cout, timed, wish, loop);
  return Exit::done;
}

Exit run_along(const LanesJob& job) {
  Ground ground(job.area);
  print_plan_caution(std::cout);
  const std::vector<NamedPlace> places = places_along(job, ground);
  wish::Wish wish = wish_through(places);
  wish.start = moment(job.trip.start, ground.info());
  wish.level = job.trip.level_or_usual();
  wish.pace = job.trip.pace;
  const hours::Setting setting = ground.setting_at(wish.home);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(wish, setting));
  need_roads_at(roads, places);
  tell_moved_places(std::cout, ground, roads, places);
  const TimedRoads timed{roads, setting};
  if (!job.day) return run_along_at_start(job, timed, wish, places);
  const auto loop = drive_on_day(timed, wish, *job.day);
  if (loop) print_drive(job, {roads, *loop, setting}, "Your route");
  if (!loop) print_day_near(job, roads, wish, setting);
  return Exit::done;
}

Exit run_all(const LanesJob& job) {
  Ground ground(job.area);
  print_plan_caution(std::cout);
  const std::string& zone = ground.info().zone;
  const Instant at =
      job.day ? hours::instant_in(zone, {*job.day, 12, 0, 0}) : moment(job.at, ground.info());
  Around around;
  if (job.near) {
    constexpr double within_m = 500;
    around = {{Places(ground.map(), std::cout).find(*job.near)}, within_m};
  }
  const hours::Setting setting =
      job.near ? ground.setting_at(around.places.front()) : ground.setting_somewhere();
  const road::LessonTime lesson = road::lesson_time(at, 0, setting);
  const road::Roads& roads = ground.for_lesson(lesson);
  if (job.day) {
    print_day(std::cout, rows_around(roads, setting, around), {*job.day, zone, setting});
  } else {
    print_all(std::cout, roads, at, setting, around);
  }
  tell_shut_notes(std::cout, ground, job.day ? std::nullopt : std::optional(lesson), around);
  return Exit::done;
}

Exit run(const LanesJob& job) {
  if (!job.loops.empty()) return run_loops(job);
  return job.along.empty() ? run_all(job) : run_along(job);
}

}  // namespace

Exit lanes(const Arguments& words) {
  const std::optional<LanesJob> job = lanes_job_of(words);
  if (!job) return Exit::done;
  const Exit exit = run(*job);
  if (exit == Exit::done) print_plate_caution(std::cout);
  return exit;
}

}  // namespace loopwright::command
