// Method:
//   1. Words become a wish; nothing is opened before all of them are understood.
//   2. find looks for loops, or routes the instructor's own drive through the points given.
//   3. The answer is written to a text, read back, and proved as it stands there; a false claim is
//      our own fault, and then nothing is written.
//   4. The file is written whole, and a summary printed. Wish not met: exit 4, the file is there.
#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/loop_summary.hpp"
#include "command/places.hpp"
#include "command/shut_notes.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::command {
namespace {

// Shorter is no lesson, longer no day's work; both far inside what the search can bear.
constexpr Between minutes_allowed{10, 600};
constexpr Between alternatives_allowed{1, 10};

struct LoopTexts {
  AreaTexts area;
  std::string home, end, minutes, reserve, alternatives, through, output;
  std::vector<std::string> wants, avoids;
  TripTexts trip;
};

struct LoopJob {
  AreaTexts area;
  std::filesystem::path output;
  std::optional<WrittenTime> start;
  WrittenPlace home;
  std::optional<WrittenPlace> end;
  std::vector<WrittenPlace> through;
  wish::Wish wish;  ///< its places and start are filled in once the area is open
};

void add_options(CLI::App& app, LoopTexts& texts) {
  add_area(app, texts.area);
  app.add_option("--home", texts.home, std::string("the door: ") + place_help)->required();
  app.add_option("--end", texts.end, "where the lesson ends, when it isn't home; as --home");
  app.add_option("--minutes", texts.minutes, "away from the door, 10 to 600");
  app.add_option("--reserve", texts.reserve, "minutes of these to keep free (default: 0)");
  app.add_option(
         "--want", texts.wants,
         "what to practise, such as roundabout:right=3, bus-lane:usable, or emerge=max; may be "
         "repeated")
      ->allow_extra_args(false);
  app.add_option("--avoid", texts.avoids, "a kind to keep off; may be repeated")
      ->allow_extra_args(false);
  app.add_option("--through", texts.through,
                 "PLACE;PLACE;… your own drive instead of a search; each as --home");
  app.add_option("--alternatives", texts.alternatives, "loops to find, 1 to 10 (default: 1)");
  app.add_option("-o,--output", texts.output, "loop file to write")->required();
  add_trip(app, texts.trip);
  app.footer(kinds_help());
}

void read_minutes(wish::Wish& wish, const LoopTexts& texts) {
  if (!texts.minutes.empty()) {
    wish.minutes = whole_number("--minutes", texts.minutes, minutes_allowed);
  } else if (texts.through.empty()) {
    throw UsageError("give --minutes for a search, or --through with the points of your own drive");
  }
  if (texts.reserve.empty()) return;
  if (!wish.minutes) throw UsageError("--reserve is a part of --minutes, which is missing");
  wish.reserve_minutes =
      whole_number("--reserve", texts.reserve, {0, *wish.minutes - minutes_allowed.low});
}

wish::Wish wish_of(const LoopTexts& texts) {
  wish::Wish wish;
  read_minutes(wish, texts);
  if (!texts.alternatives.empty()) {
    wish.alternatives = whole_number("--alternatives", texts.alternatives, alternatives_allowed);
  }
  for (const std::string& want : texts.wants) wish.wants.push_back(wish::read_want(want));
  for (const std::string& avoid : texts.avoids) wish.avoids.push_back(wish::read_avoid(avoid));
  return wish;
}

void read_places(LoopJob& job, const LoopTexts& texts) {
  job.home = read_place("--home", texts.home);
  if (!texts.end.empty()) job.end = read_place("--end", texts.end);
  if (texts.through.empty()) return;
  for (const auto point : split(texts.through, ';')) {
    job.through.push_back(read_place("--through", point));
  }
}

void find_places(LoopJob& job, const road::Roads& roads) {
  Places places(roads, std::cout);
  job.wish.home = places.find(job.home);
  if (job.end) job.wish.end = places.find(*job.end);
  for (const WrittenPlace& point : job.through) job.wish.through.push_back(places.find(point));
}

std::optional<LoopJob> job_of(const Arguments& words) {
  CLI::App app{"Finds loops from the door and back that meet a wish inside the time.",
               "loopwright loops"};
  LoopTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  const Trip trip = trip_of(texts.trip);
  LoopJob job{.area = texts.area,
              .output = texts.output,
              .start = trip.start,
              .home = {},
              .end = {},
              .through = {},
              .wish = {}};
  read_places(job, texts);
  job.wish = wish_of(texts);
  job.wish.level = trip.level_or_usual();
  job.wish.level_given = trip.level.has_value();
  return job;
}

void tell_moved(const Ground& ground, const road::Roads& roads, const wish::Wish& wish) {
  std::vector<NamedPlace> places{{"home", wish.home}};
  for (std::size_t k = 0; k < wish.through.size(); ++k)
    places.push_back({"point " + std::to_string(k + 1), wish.through[k]});
  if (wish.end) places.push_back({"the end", *wish.end});
  tell_moved_places(std::cout, ground, roads, places);
}

wish::Answer answer_to(Ground& ground, const LoopJob& job) {
  const hours::Setting setting = ground.setting_of(job.wish);
  const road::Roads& roads = ground.for_lesson(wish::lesson_time(job.wish, setting));
  tell_moved(ground, roads, job.wish);
  wish::Answer answer;
  answer.area = name_of(roads.info(), job.area.area);
  answer.notes = ground.notes_name();
  answer.wish = job.wish;
  find::FindResult found = job.wish.through.empty() ? find::find_loops(roads, job.wish, setting)
                                                    : find::route_through(roads, job.wish, setting);
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  // A start asked for now can only be put off.
  if (answer.shortfall && !job.start)
    std::erase_if(answer.shortfall->better_starts,
                  [&](const Instant& at) { return at.unix_s < job.wish.start.unix_s; });
  answer.fewer_because = std::move(found.fewer_because);
  return answer;
}

/// Claims checked in the file as it will be written. Throws when one is false.
std::int64_t prove_text(const Ground& ground, std::string_view text, const LoopJob& job) {
  wish::Answer written = file::read_answer(text, job.output.string());
  const proof::Proof proof = proof::prove(ground.noted(), written, ground.setting_of(written.wish));
  if (!proof.false_claim) return proof.claims;
  throw Error(Exit::false_claim,
              "internal fault, nothing is written: what was found doesn't hold (" +
                  *proof.false_claim + "); please report the command");
}

Exit run(LoopJob job) {
  need_folder_of(job.output);
  need_own_file(job.output, {job.area.area, job.area.notes});
  Ground ground(job.area);
  find_places(job, ground.map());
  job.wish.start = moment(job.start, ground.info());
  job.wish.terms = ground.terms();
  const wish::Answer answer = answer_to(ground, job);
  const std::string text = file::write_answer(answer);
  const std::int64_t claims = prove_text(ground, text, job);
  store::write_whole(job.output, text);
  print_summary(std::cout, answer, {ground.info().region.unit, ground.setting_of(answer.wish)});
  std::cout << job.output.string() << ": written; " << claims
            << " claims checked, all agree with the map's rules\n";
  return answer.shortfall ? Exit::wish_not_met : Exit::done;
}

}  // namespace

Exit loops(const Arguments& words) {
  const std::optional<LoopJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
