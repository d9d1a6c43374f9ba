#include <catch2/catch.hpp>
#include <string>

#include "county/plan.hpp"
#include "loopwright/base/error.hpp"

using namespace loopwright;
using namespace loopwright::county;

namespace {

std::string error_of(const std::string& text) {
  try {
    read_plan(text, "x.plan");
  } catch (const InputError& error) {
    return error.what();
  }
  return "read";
}

}  // namespace

TEST_CASE("an empty plan and one of comments draw nothing", "[county]") {
  CHECK(read_plan("", "x.plan").lines.empty());
  CHECK(read_plan("# only words\n\n   # and more\n", "x.plan").lines.empty());
}

TEST_CASE("a road has its name, class, points and tags, sets laid in order", "[county]") {
  const Plan plan = read_plan(
      "set town lit=yes maxspeed=\"30 mph\"\n"
      "set slow town maxspeed=\"20 mph\"\n"
      "road \"Cooper's Reach\" residential 0,0 -50.5,12 slow width=5 # words\n",
      "x.plan");
  const auto& road = std::get<PlanRoad>(plan.lines.at(0));
  CHECK(road.number == 3);
  CHECK(road.points.at(1).at == spot(-50.5, 12));
  CHECK(road.tags == Tags{{"name", "Cooper's Reach"},
                          {"highway", "residential"},
                          {"lit", "yes"},
                          {"maxspeed", "20 mph"},
                          {"width", "5"}});
}

TEST_CASE("a quote within quotes is written with a backslash", "[county]") {
  const Plan plan = read_plan("road - service 0,0 9,9 width=\"12'6\\\"\"\n", "x.plan");
  CHECK(std::get<PlanRoad>(plan.lines.at(0)).tags.at("width") == "12'6\"");
}

TEST_CASE("ends, rings and forks of a road", "[county]") {
  const Plan plan = read_plan(
      "ring n 0,0 20 highway=primary signals=yes\n"
      "road - primary @n^ 100,0 300,0 last=give_way\n",
      "x.plan");
  CHECK(std::get<PlanRing>(plan.lines.at(0)).signals);
  CHECK(std::get<PlanRing>(plan.lines.at(0)).tags.count("signals") == 0);
  const auto& road = std::get<PlanRoad>(plan.lines.at(1));
  CHECK(road.points.at(0).ring == "n");
  CHECK(road.points.at(0).forked);
  CHECK(road.ends == std::array<End, 2>{End::meets, End::give_way});
  CHECK(road.tags == Tags{{"highway", "primary"}});
}

TEST_CASE("water is a river from five metres on", "[county]") {
  const Plan plan = read_plan("water Osk 12 0,0 9,9\nwater - 3 0,0 9,9\n", "x.plan");
  CHECK(std::get<PlanTrack>(plan.lines.at(0)).tags ==
        Tags{{"name", "Osk"}, {"waterway", "river"}, {"width", "12"}});
  CHECK(std::get<PlanTrack>(plan.lines.at(1)).tags.at("waterway") == "stream");
}

TEST_CASE("what is to grow, hills and traps are kept as they stand", "[county]") {
  const Plan plan = read_plan(
      "quarter Alder crescents 0,0 9,0 9,9 lit=yes\nvillage Osk 5,5 300\nhill 1,2 55 400\n"
      "trap 3 4,5 one ring of two ways\n",
      "x.plan");
  CHECK(plan.growth.at(0).ground.style == Style::crescents);
  CHECK(plan.growth.at(0).ground.outline.size() == 3);
  CHECK(plan.growth.at(1).settlement.reach_m == 300);
  CHECK(plan.hills.at(0).height_m == 55);
  CHECK(plan.traps.at(0).what == "one ring of two ways");
}

TEST_CASE("what can't be read is told with its line, and what to do", "[county]") {
  CHECK(error_of("\nrood - service 0,0 9,9\n") ==
        "x.plan line 2: there is no command 'rood'; tools/county/plan.hpp lists them");
  CHECK(
      error_of("road - service 0,0 9,9 town\n") ==
      "x.plan line 1: there is no set 'town'; write a tag as key=value, or define the set before");
  CHECK(error_of("road - service 0,0\n") == "x.plan line 1: it needs at least 2 points");
  CHECK(error_of("road \"A 0,0\n") == "x.plan line 1: a quote is opened and not closed");
  CHECK(error_of("road - primary @n 9,9\n") ==
        "x.plan line 1: there is no ring 'n' above this line");
  CHECK(error_of("ring n 0,0 9\nring n 5,5 9\n") == "x.plan line 2: there is a ring 'n' already");
  CHECK(error_of("ring n 0,0 -9\n") == "x.plan line 1: the radius must be above 0");
  CHECK(error_of("ring n 0;0 9\n") ==
        "x.plan line 1: '0;0' isn't a point; write metres east,north");
  CHECK(error_of("spot 0,1e300 a=b\n") ==
        "x.plan line 1: '0,1e300' isn't a point; write metres east,north");
  CHECK(error_of("road - service 0,0 9,9 last=wall\n") ==
        "x.plan line 1: no road ends in 'wall'; first= and last= take give_way, stop, signals, "
        "turning_circle, closed or edge");
  CHECK(error_of("rail 3 0,0 9,9\n") == "x.plan line 1: a railway has 1 or 2 tracks, not '3'");
  CHECK(error_of("stop Inn 0,0 left\n") == "x.plan line 1: 'left' must be 'bus' or 'back'");
  CHECK(error_of("origin 54.3\n") == "x.plan line 1: here the longitude is missing");
  CHECK(error_of("origin 54.3 2.6 9\n") == "x.plan line 1: '9' is one word too many");
  CHECK(error_of("quarter A grid 0,0 9,0 9,9\n") ==
        "x.plan line 1: there is no style 'grid'; take terraces, crescents, avenues, works or "
        "centre");
}
