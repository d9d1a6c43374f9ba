// Method:
//   1. The place is a way, a node, degrees or words; a point means the nearest road of any sort, an address its street.
//   2. Each piece of road there is told with every fact and the tag that says so (look_road.cpp);
//      a node with its signs, the places it belongs to and the turn rules over it (look_node.cpp).
//   3. --roundabouts instead lists all of them with arms and exits (look_rings.cpp).
#include <functional>
#include <iostream>
#include <optional>

#include "command/arguments.hpp"
#include "command/ground.hpp"
#include "command/look_facts.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "command/shut_notes.hpp"
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
  double pace = wish::usual_pace;
  bool verify = false;
  bool roundabouts = false;
};

std::optional<OsmObject> object_of(std::string_view text) {
  const auto parts = split(text, '/');
  if (parts.size() != 2 || (parts[0] != "way" && parts[0] != "node")) return std::nullopt;
  const auto id = read_int64(parts[1]);
  // Below zero are those of a map that somebody drew and didn't upload.
  if (!id || *id == 0) throw UsageError("'" + std::string(text) + "' has no OSM id after the '/'");
  return OsmObject{*id, parts[0] == "way" ? ObjectType::way : ObjectType::node};
}

std::optional<LookJob> look_job_of(const Arguments& words) {
  Options app{"Tells what the map says at a place, and why.", "loopwright look"};
  LookJob job;
  TripTexts trip_texts;
  add_area(app, job.area);
  auto* where = app.add_option("WHERE", job.where, place_help("way/ID or node/ID or "));
  app.add_flag("--roundabouts", job.roundabouts, "instead of WHERE: all roundabouts, arm by arm")
      ->excludes(where);
  app.add_flag("--verify", job.verify, "check every byte of the area file; first, or alone");
  add_trip(app, trip_texts);
  if (!parse(app, words)) return std::nullopt;
  const Trip trip = trip_of(trip_texts);
  job.start = trip.start, job.level = trip.level_or_usual(), job.pace = trip.pace;
  if (job.roundabouts) return job;
  if (job.where.empty() && job.verify) return job;
  if (job.where.empty())
    throw UsageError("WHERE, --roundabouts or --verify is required; see 'loopwright look --help'");
  job.object = object_of(job.where);
  if (!job.object) job.place = read_place("WHERE", job.where);
  return job;
}

struct NearPiece {
  PieceId piece;
  double off_m = 0;
};

/// A piece of road, and what the instructor's own notes shut of it at that moment.
class Look {
 public:
  Look(const Here& here, const Ground& ground, const road::LessonTime& moment)
      : here_(here), ground_(ground), moment_(moment) {}
  void at_way(std::int64_t way) const;
  void at_node(std::int64_t id) const;
  void at_place(const FoundPlace& place) const;

 private:
  /// Of the pieces of which `fits` is true.
  [[nodiscard]] std::optional<NearPiece> nearest(
      Point at, const std::function<bool(const road::Piece&)>& fits) const;
  void print(PieceId piece) const {
    print_road(std::cout, here_, piece);
    tell_notes_on(std::cout, ground_, moment_, piece);
  }
  const Here& here_;
  const Ground& ground_;
  const road::LessonTime& moment_;
};

void Look::at_way(std::int64_t way) const {
  const auto pieces = here_.roads.pieces_of_way(way);
  if (pieces.empty()) throw UsageError("way/" + std::to_string(way) + ": no road of this area");
  for (const road::Piece& piece : pieces) print(here_.roads.id_of(piece));
}

void Look::at_node(std::int64_t id) const {
  const NodeId node = here_.roads.find_node(id);
  if (!node.known()) {
    throw UsageError("node/" + std::to_string(id) +
                     ": no junction, end or sign of this area's roads; look at its way instead");
  }
  print_node(std::cout, here_, node);
}

std::optional<NearPiece> Look::nearest(Point at,
                                       const std::function<bool(const road::Piece&)>& fits) const {
  std::optional<NearPiece> nearest;
  for (const PieceId piece : road::pieces_near(here_.roads, at, look_around_m)) {
    if (!fits(here_.roads.pieces[piece.index()])) continue;
    const double off_m = nearest_on_line(here_.roads.shape_of(piece), at).off_m;
    if (off_m < (nearest ? nearest->off_m : look_around_m)) nearest = {piece, off_m};
  }
  return nearest;
}

/// A house may stand nearer to the lane behind it than to its own street.
void Look::at_place(const FoundPlace& place) const {
  std::optional<NearPiece> found;
  if (place.sort == place::Sort::house)
    found = nearest(place.at, [&](const road::Piece& piece) {
      const std::string_view street = here_.roads.text(piece.name);
      return !street.empty() && place.name.ends_with(" " + std::string(street));
    });
  if (!found) found = nearest(place.at, [](const road::Piece&) { return true; });
  if (!found)
    throw UsageError(degrees(place.at) + ": no road within " + fixed(look_around_m, 0) + " m");
  std::cout << fixed(found->off_m, 0) << " m from " << degrees(place.at) << ":\n";
  print(found->piece);
}

Exit run(const LookJob& job) {
  if (job.verify) store::verify_area(job.area.area);
  Ground ground(job.area);
  if (job.verify) std::cout << job.area.area << ": every byte is as it was written\n";
  if (job.where.empty() && !job.roundabouts) return Exit::done;
  const Instant start = moment(job.start, ground.info());
  const hours::Setting setting = ground.setting_somewhere();
  const road::LessonTime at_start = road::lesson_time(start, 0, setting);
  const road::Roads& roads = ground.for_lesson(at_start);
  const Here here{roads, pace::Pace(roads, {.level = job.level, .factor = job.pace}, start), start,
                  setting};
  const Look look(here, ground, at_start);
  if (job.roundabouts) {
    print_rings(std::cout, here.roads);
  } else if (!job.object) {
    look.at_place(Places(here.roads, std::cout).look_up(job.place));
  } else if (job.object->type == ObjectType::way) {
    look.at_way(job.object->id);
  } else {
    look.at_node(job.object->id);
  }
  return Exit::done;
}

}  // namespace

Exit look(const Arguments& words) {
  const std::optional<LookJob> job = look_job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
