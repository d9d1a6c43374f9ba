// Method: the book tells at what the instructor stepped in, and at which places; find holds the others of the area against
// that one. The drive is told as points on the way in and the way out of each, for 'lesson plan --through'.
#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/ground.hpp"
#include "command/lesson.hpp"
#include "command/lesson_of_pupil.hpp"
#include "command/lesson_words_of_pupil.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/progress.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/stepped_in.hpp"
#include "loopwright/find/alike.hpp"
#include "loopwright/find/in_order.hpp"

namespace loopwright::command {
namespace {

constexpr Between within_allowed{1, 120};
constexpr double at_most_off_m = 150;  // of --at, as a door may be off its road

struct LikeItTexts {
  LessonTexts lesson;
  AreaTexts area;
  std::string want, at, home, within = "25";
  TripTexts trip;
};

/// What the words and the book say.
struct LikeItJob {
  AreaTexts area;
  WrittenPlace home;
  std::optional<WrittenPlace> at;
  std::string code;
  std::vector<book::Lesson> lessons;
  std::optional<book::SteppedIn> stepped_in;
  wish::Wish wish;
  std::optional<WrittenTime> start;
  int within_minutes = 0;
};

book::Practice practice_of(const std::string& text) {
  const wish::Want want = wish::read_want(text);
  if (text.find_first_of("=+") != std::string::npos || want.verdict)
    throw UsageError("--want takes a kind and its movement here, such as roundabout:right, not " +
                     as_given(text));
  return {want.kind, want.movement};
}

void need_form(const book::Practice& what) {
  if (road::form_of(what.kind) != road::KindForm::manoeuvre) return;
  const std::string kind(road::name(what.kind));
  throw UsageError(kind +
                   " is a manoeuvre, which any place for it does for: 'loopwright near AREA "
                   "--home PLACE --want " +
                   kind + "' lists them");
}

void find_stepped_in(LikeItJob& job, const LikeItTexts& texts) {
  book::SteppedInAsk ask{lesson_number(texts.lesson), std::nullopt};
  if (ask.lesson) lesson_meant(job.lessons, job.code, ask.lesson);  // throws when there is none
  if (!texts.want.empty()) ask.what = practice_of(texts.want);
  job.stepped_in = book::last_stepped_in(job.lessons, ask);
  const std::string none =
      ask.lesson ? "lesson " + std::to_string(*ask.lesson) + " of " + job.code + " is none"
                 : "the book has no lesson of " + job.code;
  if (!job.stepped_in)
    throw UsageError(none + " in which you stepped in at " +
                     (ask.what ? words_of(*ask.what) : "something it names") +
                     "; 'lesson log' takes it, such as \"roundabout right 2 pedals\"");
  need_form(*job.stepped_in->stepped_in.what);
  if (job.stepped_in->passes.empty() && !job.at)
    throw UsageError("lesson " + std::to_string(job.stepped_in->lesson) +
                     " wasn't planned or recorded, so the book doesn't know where: name the place "
                     "with --at");
}

bool parse_like_it(const Arguments& words, LikeItJob& job) {
  Options app{
      "After you stepped in at something: places of the same form (arms, lanes, angle, what comes "
      "next), the easiest first, then back to the first. Changes nothing in the book.",
      "loopwright lesson like-it"};
  LikeItTexts texts;
  app.add_option("CODE", texts.lesson.code, "the pupil's code")->required();
  add_area(app, texts.area);
  add_book(app, texts.lesson.book);
  app.add_option("--lesson", texts.lesson.lesson,
                 "number of the lesson (default: the latest in which you stepped in)");
  app.add_option("--want", texts.want,
                 "at what, such as roundabout:right (default: the strongest)");
  app.add_option("--at", texts.at, place_help("where it was (default: as the book has it): "));
  app.add_option("--home", texts.home, place_help("the door (default: the book's): "));
  app.add_option("--within", texts.within, "minutes there, 1 to 120 (default: 25)");
  add_trip(app, texts.trip);
  if (!parse(app, words)) return false;
  const Trip trip = trip_of(texts.trip);
  job.within_minutes = whole_number("--within", texts.within, within_allowed);
  if (!texts.at.empty()) job.at = read_place("--at", texts.at);
  const book::Book book = open_book(texts.lesson.book, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, pupil_code("CODE", texts.lesson.code));
  job.code = pupil.code;
  job.area = texts.area;
  job.home = read_place("--home", home_said(texts.home, pupil));
  job.start = trip.start;
  job.lessons = book::lessons_of(book, pupil.code);
  const auto level = book::level_now(scheme_kept(pupil), job.lessons);
  job.wish.level = trip.level.value_or(book::wish_level(level));
  job.wish.pace = trip.pace;
  for (const road::Kind kind : pupil.avoids) job.wish.avoids.push_back({kind});
  find_stepped_in(job, texts);
  return true;
}

/// The ways of passing one place by one kind and movement.
std::vector<ChanceId> ways_through(const road::Roads& roads, const road::Chance& like) {
  std::vector<ChanceId> ways;
  for (std::size_t row = 0; row < roads.chances.size(); ++row) {
    const road::Chance& chance = roads.chances[row];
    if (chance.place == like.place && chance.kind == like.kind && chance.movement == like.movement)
      ways.emplace_back(row);
  }
  return ways;
}

/// The chance whose place is nearest to a point; of a practice without a movement by any.
const road::Chance* chance_at(const road::Roads& roads, Point at, const book::Practice& what) {
  const road::Chance* nearest = nullptr;
  double least_m = at_most_off_m;
  for (const road::Chance& chance : roads.chances) {
    if (!road::meets(chance.kind, what.kind)) continue;
    if (what.movement != road::Movement::none && chance.movement != what.movement) continue;
    const double off_m = distance_m(point_of(roads, chance), at);
    if (off_m > least_m || (nearest != nullptr && off_m == least_m)) continue;
    nearest = &chance;
    least_m = off_m;
  }
  return nearest;
}

const road::Chance* chance_of(const road::Roads& roads, const book::LessonPass& pass) {
  for (const road::Chance& chance : roads.chances)
    if (chance.kind == pass.what.kind && chance.movement == pass.what.movement &&
        object(chance.source) == pass.place)
      return &chance;
  return nullptr;
}

std::vector<ChanceId> firsts_of(const road::Roads& roads, const LikeItJob& job,
                                const std::optional<Point>& at) {
  const book::Practice& what = *job.stepped_in->stepped_in.what;
  const road::Chance* first =
      at ? chance_at(roads, *at, what) : chance_of(roads, job.stepped_in->passes.front());
  if (first != nullptr) return ways_through(roads, *first);
  throw UsageError(at ? "--at: there is no " + words_of(what) + " within 150 m of it"
                      : "this area has no " + words_of(what) + " at " +
                            job.stepped_in->passes.front().place +
                            ", where the book has it: name the place with --at");
}

std::string where(const road::Roads& roads, const road::Chance& chance) {
  return printable(street_of(roads, chance)) + " " + degrees(point_of(roads, chance));
}

/// "92 degrees right", "straight"
std::string angle_words(int angle_deg) {
  constexpr int straight_deg = 5;
  if (std::abs(angle_deg) <= straight_deg) return "straight";
  return std::to_string(std::abs(angle_deg)) + " degrees " + (angle_deg < 0 ? "left" : "right");
}

/// "4 arms, lanes 2, 92 degrees right, then zebra"
std::string form_words(const find::PassForm& form) {
  std::vector<std::string> parts;
  if (form.arms > 0) parts.push_back(std::to_string(form.arms) + " arms");
  if (form.ring_lanes > 0) parts.push_back("lanes on it " + std::to_string(form.ring_lanes));
  if (form.entry_lanes > 0)
    parts.push_back("lanes on the way in " + std::to_string(form.entry_lanes));
  parts.push_back(angle_words(form.angle_deg));
  std::vector<std::string> next;
  for (const road::Kind kind : form.next) next.emplace_back(road::name(kind));
  parts.push_back(next.empty() ? "nothing at once behind it" : "then " + listed(next));
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

std::string differs_words(const find::AlikePlace& place) {
  if (place.differs.empty()) return "the same form";
  std::vector<std::string> all;
  for (const find::Differs one : place.differs)
    all.emplace_back(one == find::Differs::arms    ? "arms"
                     : one == find::Differs::lanes ? "lanes"
                     : one == find::Differs::angle ? "angle"
                                                   : "what follows");
  return "other " + listed(all) + ": " + form_words(place.form);
}

void print_first(const road::Roads& roads, const LikeItJob& job, const find::AlikePlace& first) {
  const book::SteppedIn& last = *job.stepped_in;
  const road::Chance& chance = roads.chances[first.chance.index()];
  const std::string why = last.stepped_in.why.empty() ? "" : ": " + printable(last.stepped_in.why);
  print_folded(std::cout, 0,
               job.code + ", lesson " + std::to_string(last.lesson) + ": you stepped in at " +
                   words_of(*last.stepped_in.what) + " (" + std::string(name(last.stepped_in.how)) +
                   why + ")");
  print_folded(std::cout, 2,
               practice_name(chance) + ", " + where(roads, chance) + ", taken as from " +
                   printable(road_name(roads, roads.piece(chance.entry))) + "; " +
                   form_words(first.form));
  if (!job.at && last.passes.size() > 1)
    print_folded(std::cout, 2,
                 "such places in that lesson: " + std::to_string(last.passes.size()) +
                     "; this is the first of those seen at the lowest level, --at names another");
}

struct NamedDrive {
  std::string of;  ///< pupil and area, as 'lesson plan' takes them
  find::InOrder way;
};

/// The drive by its points, which was tried.
void print_drive(const NamedDrive& drive, std::size_t places) {
  if (drive.way.through.empty()) {
    print_folded(std::cout, 0, "no drive through all of them was found at that time");
    return;
  }
  std::string points;
  for (const Point at : drive.way.through) points += (points.empty() ? "" : ";") + degrees(at);
  print_folded(std::cout, 0,
               "plan it (" + fixed(drive.way.minutes, 0) +
                   " min to drive): loopwright lesson plan " + drive.of + " --through \"" + points +
                   "\"");
  if (drive.way.passed < places)
    print_folded(std::cout, 2,
                 "by these points it passes only " + std::to_string(drive.way.passed) + " of the " +
                     std::to_string(places) + " as meant: look at the plan before you drive it");
}

void print_others(const road::Roads& roads, const find::Alike& alike) {
  Table table({"hard", "there", "where", "beside the first"});
  const auto add = [&](const find::AlikePlace& place, const std::string& beside) {
    const road::Chance& chance = roads.chances[place.chance.index()];
    table.add({std::to_string(chance.hardness), fixed(place.there_minutes, 1), where(roads, chance),
               beside});
  };
  for (const find::AlikePlace& place : alike.others) add(place, differs_words(place));
  add(*alike.first, "back to it");
  table.print(std::cout);
}

/// Through the others and back to the first.
std::vector<ChanceId> in_order(const find::Alike& alike) {
  std::vector<ChanceId> chances;
  for (const find::AlikePlace& place : alike.others) chances.push_back(place.chance);
  chances.push_back(alike.first->chance);
  return chances;
}

}  // namespace

Exit lesson_like_it(const Arguments& words) {
  LikeItJob job;
  if (!parse_like_it(words, job)) return Exit::done;
  Ground ground(job.area);
  Places places(ground.map(), std::cout);
  job.wish.home = places.find(job.home);
  const std::optional<Point> at = job.at ? std::optional(places.find(*job.at)) : std::nullopt;
  job.wish.start = moment(job.start, ground.info());
  const hours::Setting setting = ground.setting_at(job.wish.home);
  constexpr int there_and_back = 2;
  const road::Roads& roads = ground.for_lesson(
      road::lesson_time(job.wish.start, there_and_back * job.within_minutes, setting));
  const find::AlikeAsk ask{firsts_of(roads, job, at), static_cast<double>(job.within_minutes)};
  const find::Alike alike = find::alike_places(roads, job.wish, ask, setting);
  if (!alike.first)
    throw UsageError("that place can't be driven to and home from within " +
                     std::to_string(job.within_minutes) + " min; say --within, --start or --home");
  print_first(roads, job, *alike.first);
  if (!alike.others.empty()) {
    print_others(roads, alike);
    const std::vector<ChanceId> chances = in_order(alike);
    print_drive(
        {job.code + " " + job.area.area, find::drive_in_order(roads, job.wish, chances, setting)},
        chances.size());
    return Exit::done;
  }
  print_folded(std::cout, 0,
               "no other place of this kind and movement within " +
                   std::to_string(job.within_minutes) + " min of home");
  return Exit::wish_not_met;
}

}  // namespace loopwright::command
