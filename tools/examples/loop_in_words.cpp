// Shows: a wish, its loop, and the proof of it before a word is printed. Prints three quarters of an hour with two
// roundabouts as the directions an instructor would speak.
//
//   loop_in_words quillham.area 54.2973 2.5988 2026-11-28T15:00
#include <iostream>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/road/setting_of.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/store/area.hpp"

namespace find = loopwright::find;
namespace hours = loopwright::hours;
namespace road = loopwright::road;
namespace say = loopwright::say;
namespace wish = loopwright::wish;

namespace {

wish::Wish wish_of(const road::Roads& roads, char** words) {
  const auto start = loopwright::read_time(words[4]);
  if (!start) throw loopwright::UsageError("the start is a time such as 2026-11-28T15:00");
  wish::Wish wish;
  wish.home = loopwright::point_from_degrees(std::stod(words[2]), std::stod(words[3]));
  // A time as it is written is the clock's at that place; summer time is the zone's affair.
  wish.start = hours::instant_in(roads.info().zone, start->civil);
  wish.minutes = 45;
  wish.wants = {wish::read_want("roundabout=2")};
  return wish;
}

/// The answer as a loop file has it: the proof asks that it speaks of this very area.
wish::Answer answer_to(const road::Roads& roads, const wish::Wish& wish,
                       const hours::Setting& setting) {
  const road::AreaInfo& info = roads.info();
  find::FindResult found = find::find_loops(roads, wish, setting);
  wish::Answer answer;
  answer.area = {.file = "",
                 .id = info.id,
                 .region = info.region.code,
                 .side = std::string(name(info.region.side)),
                 .map_timestamp = info.map_timestamp,
                 .credit = ""};
  answer.wish = wish;
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  return answer;
}

void print(const road::Roads& roads, const wish::Loop& loop) {
  for (const say::Row& row : say::say_loop(roads, loop)) {
    std::cout << row.say;
    if (!row.where.empty()) std::cout << ", " << row.where;
    std::cout << "; next in " << say::say_distance(row.to_next_m, roads.info().region.unit) << '\n';
  }
}

int run(int count, char** words) {
  if (count != 5) throw loopwright::UsageError("usage: loop_in_words AREA LAT LON START");
  const loopwright::store::Area area = loopwright::store::open_area(words[1]);
  const road::Roads& roads = area.roads();
  const wish::Wish wish = wish_of(roads, words);
  // What the area's hours are read by: bank holidays, sunrise and the clock of that place.
  const hours::Setting setting = road::setting_of(roads.info(), wish.home);
  const wish::Answer answer = answer_to(roads, wish, setting);
  const auto proof = loopwright::proof::prove(roads, answer, setting);
  if (proof.false_claim) throw loopwright::InputError(*proof.false_claim);
  if (answer.loops.empty()) throw loopwright::InputError(answer.shortfall->why);
  std::cout << "Plan when parked. Signs, markings, signals and police overrule; you decide.\n";
  print(roads, answer.loops.front());
  std::cout << proof.claims << " claims proved\n";
  return 0;
}

}  // namespace

int main(int count, char** words) try {
  return run(count, words);
} catch (const loopwright::Error& error) {
  std::cerr << error.what() << '\n';
  return static_cast<int>(error.exit_code());
} catch (const std::logic_error&) {  // std::stod
  std::cerr << "LAT and LON are numbers of degrees\n";
  return 2;
}
