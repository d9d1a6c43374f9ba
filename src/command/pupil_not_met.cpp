// Method: what there is around the home comes from find, what the pupil has met from the book; what is left is told by
// sort of thing, the easiest first. Light has no place: it is told by the clock of the day.
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/ground.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "command/pupil.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/marking.hpp"
#include "loopwright/book/met.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/find/around.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr Between within_allowed{1, 120};

struct NotMetTexts {
  std::string code, book, home, within = "25";
  AreaTexts area;
  TripTexts trip;
};

/// What the words and the book say.
struct NotMetJob {
  AreaTexts area;
  WrittenPlace home;
  std::string code;
  wish::Wish wish;  ///< its home and start are filled in once the area is open
  std::optional<WrittenTime> start;
  int within_minutes = 0;
  book::Met met;
};

std::optional<NotMetJob> job_of(const Arguments& words) {
  Options app{
      "Shows what a pupil has not met yet by the record: forms of junction by movement, sorts of "
      "road, speed limits and light, with the nearest place or two of each, the easiest first. How "
      "hard each is says whether it is time for it. Kinds that are kept off are left out, and so "
      "are manoeuvres, which 'pupil show' tells. Changes nothing in the book.",
      "loopwright pupil not-met"};
  NotMetTexts texts;
  app.add_option("CODE", texts.code, "the pupil's code")->required();
  add_area(app, texts.area);
  add_book(app, texts.book);
  app.add_option("--home", texts.home, place_help("the door (default: the book's): "));
  app.add_option("--within", texts.within, "minutes there, 1 to 120 (default: 25)");
  add_trip(app, texts.trip);
  if (!parse(app, words)) return std::nullopt;
  const Trip trip = trip_of(texts.trip);
  const int within = whole_number("--within", texts.within, within_allowed);
  const book::Book book = open_book(texts.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.code));
  const auto lessons = book::lessons_of(book, pupil.code);
  NotMetJob job{.area = texts.area,
                .home = read_place("--home", home_said(texts.home, pupil)),
                .code = pupil.code,
                .wish = {},
                .start = trip.start,
                .within_minutes = within,
                .met = book::met_by(lessons)};
  job.wish.level =
      trip.level.value_or(book::wish_level(book::level_now(scheme_kept(pupil), lessons)));
  for (const road::Kind kind : pupil.avoids) job.wish.avoids.push_back({kind});
  return job;
}

/// A row each of the places; what it is stands in the first.
void add_places(Table& table, const road::Roads& roads, const std::string& what,
                const find::MeetingPlaces& places) {
  for (const find::MeetingPlace& place : places) {
    const bool is_first = &place == &places.front();
    const road::Chance* chance =
        place.chance.known() ? &roads.chances[place.chance.index()] : nullptr;
    const std::string street =
        chance != nullptr ? street_of(roads, *chance) : road_name(roads, roads.piece(place.at));
    const Point at = chance != nullptr ? point_of(roads, *chance)
                                       : roads.nodes[roads.from_node(place.at).index()].at;
    table.add({is_first ? what : "", std::to_string(place.hardness), fixed(place.there_minutes, 1),
               printable(street) + " " + degrees(at)});
  }
}

void print_part(const std::string& title, const Table& table) {
  std::cout << title << (table.empty() ? ": none left\n" : "\n");
  if (!table.empty()) table.print(std::cout);
}

Table new_table() {
  return Table({"not met", "hard", "there", "where"});
}

/// Told as sorts of road, or no form of road at all.
bool is_told_otherwise(road::Kind kind) {
  return kind == road::Kind::country_road || kind == road::Kind::dual_carriageway ||
         kind == road::Kind::motorway || kind == road::Kind::independent_stretch;
}

std::string form_name(const find::FormAround& form) {
  const std::string kind(road::name(form.kind));
  return form.movement == road::Movement::none
             ? kind
             : kind + ":" + std::string(road::name(form.movement));
}

/// Also tells how the easiest is planned.
void print_forms(const road::Roads& roads, const find::Around& there, const NotMetJob& job) {
  Table junctions = new_table(), along = new_table();
  const std::string plan =
      "plan one: loopwright lesson plan " + job.code + " " + job.area.area + " --want ";
  std::string easiest;
  for (const find::FormAround& form : there.forms) {
    if (is_told_otherwise(form.kind) || has_met(job.met, {form.kind, form.movement})) continue;
    const bool is_junction = road::form_of(form.kind) == road::KindForm::junction;
    add_places(is_junction ? junctions : along, roads, form_name(form), form.places);
    if (easiest.empty()) easiest = form_name(form);
  }
  print_part("junctions and crossings", junctions);
  print_part("along roads", along);
  if (!easiest.empty()) print_folded(std::cout, 0, plan + easiest);
}

void print_roads(const road::Roads& roads, const find::Around& there, const book::Met& met) {
  Table sorts = new_table(), limits = new_table();
  for (const find::SortAround& sort : there.sorts)
    if (!has_met_road(met, sort.sort))
      add_places(sorts, roads, std::string(sort.sort), sort.places);
  for (const find::LimitAround& one : there.limits)
    if (!has_met_limit(met, one.limit.value, one.limit.unit))
      add_places(limits, roads,
                 limit(one.limit) + (is_sure(one.limit.confidence) ? "" : ", look for the sign"),
                 one.places);
  print_part("sorts of road", sorts);
  print_part("speed limits", limits);
}

std::string clock_text(int minute) {
  constexpr int minutes_of_hour = 60, hours_of_day = 24;
  const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
  return two(minute / minutes_of_hour % hours_of_day) + ":" + two(minute % minutes_of_hour);
}

/// "from 16:37 (end of twilight)". Dusk: from sunset to the end of civil twilight (ours; the book's code has no hours).
std::string hours_of_light(std::string_view light, const hours::SunTimes& sun) {
  const std::string sunset = clock_text(sun.sunset) + " (sunset)";
  if (light == "day") return "from " + clock_text(sun.sunrise) + " (sunrise) to " + sunset;
  if (light == "dusk")
    return "from " + sunset + (sun.dusk ? " to " + clock_text(*sun.dusk) : " all night");
  return sun.dusk ? "from " + clock_text(*sun.dusk) + " (end of twilight)" : "not on that day";
}

void print_light(const NotMetJob& job, const hours::Setting& setting) {
  std::vector<std::string> lines;
  const Date day = setting.on_clock(job.wish.start).civil().date;
  const auto sun = setting.sun(day);
  for (const std::string_view light : book::lights())
    if (!has_met_light(job.met, light))
      lines.push_back(std::string(light) + ": " +
                      (sun ? hours_of_light(light, *sun) : "the sun doesn't rise or set that day"));
  std::cout << "light, on " << road::day_text(day) << (lines.empty() ? ": none left\n" : "\n");
  for (const std::string& line : lines) print_folded(std::cout, 2, line);
}

/// What the record can't know.
void print_silent(const book::Met& met) {
  const auto tell = [&](int lessons, const std::string& what) {
    if (lessons > 0)
      print_folded(std::cout, 0,
                   "lessons that don't say " + what + ": " + std::to_string(lessons) + " of " +
                       std::to_string(met.lessons));
  };
  tell(met.without_roads, "which sorts of road were driven");
  tell(met.without_limits, "under which limits");
  tell(met.without_light, "in what light");
}

}  // namespace

Exit pupil_not_met(const Arguments& words) {
  std::optional<NotMetJob> job = job_of(words);
  if (!job) return Exit::done;
  Ground ground(job->area);
  job->wish.home = Places(ground.map(), std::cout).find(job->home);
  job->wish.start = moment(job->start, ground.info());
  const hours::Setting setting = ground.setting_at(job->wish.home);
  constexpr int there_and_back = 2;
  const road::Roads& roads = ground.for_lesson(
      road::lesson_time(job->wish.start, there_and_back * job->within_minutes, setting));
  const find::Around there = find::around(roads, job->wish, job->within_minutes, setting);
  print_folded(std::cout, 0,
               job->code + ", not met yet within " + std::to_string(job->within_minutes) +
                   " min of home, by lessons driven: " + std::to_string(job->met.lessons) +
                   "; times for level " + std::to_string(job->wish.level));
  print_forms(roads, there, *job);
  print_roads(roads, there, job->met);
  print_light(*job, setting);
  print_silent(job->met);
  return Exit::done;
}

}  // namespace loopwright::command
