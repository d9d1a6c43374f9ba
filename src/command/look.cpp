// Method:
//   1. The place is a way, a node, degrees or words; a point means the nearest road of any sort.
//   2. Each piece of road there is told with every fact and the tag that says so (look_road.cpp);
//      a node with its signs, the places it belongs to and the turn rules over it (look_node.cpp).
//   3. --roundabouts instead lists all of them with arms and exits (look_rings.cpp).
#include <iostream>

#include "command/arguments.hpp"
#include "command/ground.hpp"
#include "command/look_facts.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

constexpr double look_around_m = 100;

struct LookJob {
  AreaTexts area;
  std::string where;
  std::optional<OsmObject> object;  ///< a way or node; otherwise:
  WrittenPlace place;
  std::optional<WrittenTime> start;
  int level = 3;
  bool verify = false;
  bool roundabouts = false;
};

std::optional<OsmObject> object_of(std::string_view text) {
  const auto parts = split(text, '/');
  if (parts.size() != 2 || (parts[0] != "way" && parts[0] != "node")) return std::nullopt;
  const auto id = read_int64(parts[1]);
  if (!id || *id <= 0) throw UsageError("'" + std::string(text) + "' has no OSM id after the '/'");
  return OsmObject{*id, parts[0] == "way" ? ObjectType::way : ObjectType::node};
}

std::optional<LookJob> job_of(const Arguments& words) {
  CLI::App app{"Tells what the map says at a place, and why.", "loopwright look"};
  LookJob job;
  TripTexts trip_texts;
  add_area(app, job.area);
  auto* where =
      app.add_option("WHERE", job.where, std::string("way/ID or node/ID or ") + place_help);
  app.add_flag("--roundabouts", job.roundabouts, "instead of WHERE: all roundabouts, arm by arm")
      ->excludes(where);
  app.add_flag("--verify", job.verify, "first check every byte of the area file");
  add_trip(app, trip_texts);
  if (!parse(app, words)) return std::nullopt;
  const Trip trip = trip_of(trip_texts);
  job.start = trip.start, job.level = trip.level_or_usual();
  if (job.roundabouts) return job;
  if (job.where.empty())
    throw UsageError("WHERE or --roundabouts is required; see 'loopwright look --help'");
  job.object = object_of(job.where);
  if (!job.object) job.place = read_place("WHERE", job.where);
  return job;
}

void look_at_way(const Here& here, std::int64_t way) {
  const auto pieces = here.roads.pieces_of_way(way);
  if (pieces.empty()) throw UsageError("way/" + std::to_string(way) + ": no road of this area");
  for (const road::Piece& piece : pieces) print_road(std::cout, here, here.roads.id_of(piece));
}

void look_at_node(const Here& here, std::int64_t id) {
  const NodeId node = here.roads.find_node(id);
  if (!node.known()) {
    throw UsageError("node/" + std::to_string(id) +
                     ": no junction, end or sign of this area's roads; look at its way instead");
  }
  print_node(std::cout, here, node);
}

void look_at_point(const Here& here, Point at) {
  PieceId nearest;
  double nearest_m = look_around_m;
  for (const PieceId piece : road::pieces_near(here.roads, at, look_around_m)) {
    const double off_m = nearest_on_line(here.roads.shape_of(piece), at).off_m;
    if (off_m < nearest_m) nearest = piece, nearest_m = off_m;
  }
  if (!nearest.known()) {
    throw UsageError(degrees(at) + ": no road within " + fixed(look_around_m, 0) + " m");
  }
  std::cout << fixed(nearest_m, 0) << " m from " << degrees(at) << ":\n";
  print_road(std::cout, here, nearest);
}

Exit run(const LookJob& job) {
  if (job.verify) store::verify_area(job.area.area);
  Ground ground(job.area);
  if (job.verify) std::cout << job.area.area << ": every byte is as it was written\n";
  const Instant start = moment(job.start, ground.info());
  const hours::Setting setting = ground.setting_somewhere();
  const road::Roads& roads = ground.for_lesson(road::lesson_time(start, 0, setting));
  const Here here{roads, pace::Pace(roads, {.level = job.level}, start), start, setting};
  if (job.roundabouts) {
    print_rings(std::cout, here.roads);
  } else if (!job.object) {
    look_at_point(here, Places(here.roads, std::cout).find(job.place));
  } else if (job.object->type == ObjectType::way) {
    look_at_way(here, job.object->id);
  } else {
    look_at_node(here, job.object->id);
  }
  return Exit::done;
}

}  // namespace

Exit look(const Arguments& words) {
  const std::optional<LookJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
