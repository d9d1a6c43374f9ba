// Method: the chances nearest by driving time come from find; each is shown with the minutes there
// and back, what it is, where, how hard and how sure, and the tag and object that say so.
#include <iostream>

#include "command/arguments.hpp"
#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/ground.hpp"
#include "command/loop_summary.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::command {
namespace {

constexpr Between within_allowed{1, 120};
constexpr int there_and_back = 2;
constexpr double anywhere_minutes = 600;  // longer than any lesson

struct NearTexts {
  AreaTexts area;
  std::string home, want, within = "10";
  TripTexts trip;
};

struct NearJob {
  AreaTexts area;
  WrittenPlace home;
  wish::Wish wish;  ///< its home is filled in once the area is open
  wish::Want want;
  int within_minutes = 10;
  std::optional<WrittenTime> start;
};

/// All within the minutes are listed, so a count would ask for nothing.
wish::Want want_of(const std::string& text) {
  const wish::Want want = wish::read_want(text);
  if (text.find('=') == std::string::npos) return want;
  throw UsageError("--want takes no count here, as in '" + text +
                   "': near lists all within the minutes; counts are for 'loopwright loops'");
}

std::optional<NearJob> near_job_of(const Arguments& words) {
  Options app{"Finds the nearest places to practise something, by driving time.",
              "loopwright near"};
  NearTexts texts;
  add_area(app, texts.area);
  app.add_option("--home", texts.home, place_help("the door: "))->required();
  app.add_option("--want", texts.want, "what to practise, such as narrow-road or bus-lane:usable")
      ->required();
  app.add_option("--within", texts.within, "minutes there, 1 to 120 (default: 10)");
  add_trip(app, texts.trip);
  app.footer(kinds_help());
  if (!parse(app, words)) return std::nullopt;
  const Trip trip = trip_of(texts.trip);
  NearJob job{.area = texts.area,
              .home = read_place("--home", texts.home),
              .wish = {},
              .want = want_of(texts.want),
              .within_minutes = whole_number("--within", texts.within, within_allowed),
              .start = trip.start};
  job.wish.level = trip.level_or_usual();
  job.wish.pace = trip.pace;
  return job;
}

/// How far the nearest is when none is within the minutes.
std::string farther_off(const road::Roads& roads, const NearJob& job,
                        const hours::Setting& setting) {
  if (auto without = find::built_without(roads.info(), job.want.kind); !without.empty())
    return without;
  const auto farther = find::chances_near(roads, {job.wish, job.want, anywhere_minutes}, setting);
  if (farther.empty() && job.want.verdict) return "nor is any in this area farther off";
  if (farther.empty()) {
    // Of ways that the clock shuts: none now, not none at all.
    const find::NearAsk anywhere{job.wish, job.want, anywhere_minutes};
    const bool by_the_hour = !find::kept_from_near(roads, anywhere, setting).empty();
    return std::string(by_the_hour ? "at that time " : "") +
           "this area has none that can be driven to and home from";
  }
  const road::Chance& chance = roads.chances[farther.front().chance.index()];
  return "the nearest is " + fixed(farther.front().there_minutes, 1) + " min away, " +
         street_of(roads, chance) + " " + degrees(point_of(roads, chance));
}

/// Of a want with a verdict, what is within the minutes without it: "none of the 3 … is usable then".
std::string at_other_hours(const road::Roads& roads, const NearJob& job,
                           const hours::Setting& setting) {
  if (!job.want.verdict) return "";
  wish::Want any = job.want;
  any.verdict.reset();
  const double within = job.within_minutes;
  const std::size_t count = find::chances_near(roads, {job.wish, any, within}, setting).size();
  if (count == 0) return "";
  return (count == 1 ? "the only one there is not "
                     : "none of the " + std::to_string(count) + " there is ") +
         std::string(wish::name(*job.want.verdict)) + " when you arrive";
}

void print_none(const road::Roads& roads, const NearJob& job, const hours::Setting& setting) {
  std::string none = "none within " + std::to_string(job.within_minutes) + " min";
  if (const auto others = at_other_hours(roads, job, setting); !others.empty())
    none += ": " + others;
  const std::string farther = farther_off(roads, job, setting);
  const find::NearAsk ask{job.wish, job.want, static_cast<double>(job.within_minutes)};
  const std::string shut = find::kept_from_near(roads, ask, setting);
  if (shut.empty()) return print_folded(std::cout, 0, none + "; " + farther);
  print_folded(std::cout, 0, none + " at that time: " + shut);
  wish::Shortfall later;
  later.better_starts = find::better_starts_near(roads, ask, setting);
  if (!job.start)  // now can only be put off
    std::erase_if(later.better_starts,
                  [&](const Instant& at) { return at.unix_s < job.wish.start.unix_s; });
  const std::string better = better_starts_words(later, job.wish.start);
  if (!better.empty()) print_folded(std::cout, 2, better);
  print_folded(std::cout, 0, farther);
}

Exit run(NearJob job) {
  Ground ground(job.area);
  job.wish.home = Places(ground.map(), std::cout).find(job.home);
  job.wish.start = moment(job.start, ground.info());
  const hours::Setting setting = ground.setting_at(job.wish.home);
  const road::Roads& roads = ground.for_lesson(
      road::lesson_time(job.wish.start, there_and_back * job.within_minutes, setting));
  const find::NearAsk ask{job.wish, job.want, static_cast<double>(job.within_minutes)};
  Table table({"there", "back", "what", "where", "hard", "how sure", "because"});
  for (const auto& near : find::chances_near(roads, ask, setting)) {
    const road::Chance& chance = roads.chances[near.chance.index()];
    const std::string then =
        job.want.verdict ? ":" + std::string(wish::want_word(*job.want.verdict)) : "";
    table.add({fixed(near.there_minutes, 1), fixed(near.back_minutes, 1),
               practice_name(chance) + then,
               printable(street_of(roads, chance)) + " " + degrees(point_of(roads, chance)),
               std::to_string(chance.hardness), std::string(road::name(chance.confidence)),
               printable(roads.text(chance.tag)) + " (" + object(chance.source) + ")"});
  }
  if (table.empty()) {
    print_none(roads, job, setting);
    return Exit::wish_not_met;
  }
  table.print(std::cout);
  return Exit::done;
}

}  // namespace

Exit near(const Arguments& words) {
  const std::optional<NearJob> job = near_job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
