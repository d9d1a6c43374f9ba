// Shows: planning that remembers. Eight lessons of a day from one door, each told which quiet streets those before it
// used, so that nobody's street bears all of them; beside it the same day without that memory. Prints for both how
// often the most used quiet street away from the door is driven. Both days are planned at once: the columns of an area
// are const and shared by threads.
//
//   fair_day quillham.area 54.2973 2.5988 2026-11-26
#include <algorithm>
#include <future>
#include <iostream>
#include <map>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/book/drive.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/road/setting_of.hpp"
#include "loopwright/store/area.hpp"

namespace book = loopwright::book;
namespace hours = loopwright::hours;
namespace road = loopwright::road;
namespace wish = loopwright::wish;

namespace {

enum class Memory { kept, none };

/// Stretches of quiet street, and how often the day's lessons drove them.
using Uses = std::map<std::tuple<std::int64_t, std::int64_t, std::int64_t>, int>;

constexpr int lessons = 8, first_hour = 9;

struct DayPlan {
  Uses uses;
  int met = 0;  ///< lessons that have all that was wished
};

struct Door {
  loopwright::Point at;
  loopwright::Date day;
};

/// What the search asks of a ledger: for each way its most driven part, today and in the month that ends with today.
std::vector<wish::StreetUse> street_use_of(const Uses& uses) {
  std::map<std::int64_t, int> most;
  for (const auto& [stretch, times] : uses) {
    int& of_way = most[std::get<0>(stretch)];
    of_way = std::max(of_way, times);
  }
  std::vector<wish::StreetUse> rows;
  rows.reserve(most.size());
  for (const auto& [way, times] : most)
    rows.push_back({.way = way, .today = times, .month = times});
  return rows;
}

wish::Wish wish_at(const road::Roads& roads, const Door& door, int hour) {
  wish::Wish wish;
  wish.home = door.at;
  wish.start = hours::instant_in(roads.info().zone, {door.day, hour, 0, 0});
  wish.minutes = 30;
  wish.wants = {wish::read_want("emerge:right=3"), wish::read_want("turn-off:left=3")};
  return wish;
}

DayPlan plan_day(const road::Roads& roads, const Door& door, Memory memory) {
  DayPlan day;
  for (int k = 0; k < lessons; ++k) {
    wish::Wish wish = wish_at(roads, door, first_hour + k);
    if (memory == Memory::kept) wish.street_use = street_use_of(day.uses);
    const hours::Setting setting = road::setting_of(roads.info(), wish.home);
    const auto found = loopwright::find::find_loops(roads, wish, setting);
    if (found.loops.empty()) throw loopwright::InputError(found.shortfall->why);
    if (!found.shortfall) ++day.met;
    for (const book::StreetDriven& street : book::streets_of(roads, wish, found.loops.front()))
      if (!street.near_door)  // the ledger can't count what every lesson from here must use
        day.uses[{street.way, street.node_a, street.node_b}] += street.times;
  }
  return day;
}

void tell(std::string_view name, const DayPlan& day) {
  int most = 0;
  for (const auto& [stretch, times] : day.uses) most = std::max(most, times);
  std::cout << name << ": " << day.met << " of " << lessons << " lessons met, " << day.uses.size()
            << " stretches of quiet street, the most used one driven " << most << " times\n";
}

int run(int count, char** words) {
  const auto day = count == 5 ? loopwright::read_date(words[4]) : std::nullopt;
  if (!day) throw loopwright::UsageError("usage: fair_day AREA LAT LON DAY");
  const Door door{loopwright::point_from_degrees(std::stod(words[2]), std::stod(words[3])), *day};
  const loopwright::store::Area area = loopwright::store::open_area(words[1]);
  auto without = std::async(std::launch::async, plan_day, area.roads(), door, Memory::none);
  const DayPlan with = plan_day(area.roads(), door, Memory::kept);
  tell("without memory", without.get());
  tell("with memory", with);
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
