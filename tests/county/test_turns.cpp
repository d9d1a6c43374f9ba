#include <catch2/catch.hpp>
#include <string>

#include "county/draw.hpp"

using namespace loopwright::county;

namespace {

Drawing drawn(const std::string& more) {
  return draw(read_plan("road West residential -200,0 200,0 first=closed last=closed\n"
                        "road North residential 0,-200 0,200 first=closed last=closed\n"
                        "road Far residential 150,0 150,200 last=closed\n" +
                            more,
                        "x.plan"),
              7);
}

/// The line a member of the only relation is, by its two ends.
std::vector<Spot> ends_of(const Drawing& county, std::size_t member) {
  const Line& line =
      county.lines.at(std::get<std::size_t>(county.relations.at(0).members.at(member).what));
  return {line.points.front(), line.points.back()};
}

}  // namespace

TEST_CASE("a ban cuts the roads at its junction and names the parts", "[county]") {
  const Drawing county = drawn("ban no_right_turn -50,0 2,2 0,-60\n");
  CHECK(county.troubles.empty());
  CHECK(county.lines.size() == 5);
  CHECK(county.relations.at(0).tags ==
        Tags{{"restriction", "no_right_turn"}, {"type", "restriction"}});
  CHECK(ends_of(county, 0) == std::vector<Spot>{spot(-200, 0), spot(0, 0)});
  CHECK(std::get<Spot>(county.relations.at(0).members.at(1).what) == spot(0, 0));
  CHECK(ends_of(county, 2) == std::vector<Spot>{spot(0, -200), spot(0, 0)});
}

TEST_CASE("a ban may have hours and exceptions", "[county]") {
  const Drawing county =
      drawn("ban no_left_turn -50,0 0,0 0,60 hours=\"Mo-Fr 07:00-10:00\" except=psv\n");
  CHECK(county.relations.at(0).tags ==
        Tags{{"except", "psv"},
             {"restriction:conditional", "no_left_turn @ (Mo-Fr 07:00-10:00)"},
             {"type", "restriction"}});
}

TEST_CASE("a ban over a road names the part between two junctions", "[county]") {
  const Drawing county = drawn("ban no_u_turn 0,-50 0,0 0,-60\nban no_u_turn 150,60 75,0~ 0,60\n");
  CHECK(county.troubles.empty());
  const Relation& over = county.relations.at(1);
  REQUIRE(std::holds_alternative<std::size_t>(over.members.at(1).what));
  CHECK(over.members.at(1).role == "via");
}

TEST_CASE("a cut road keeps what stands at its outer ends only", "[county]") {
  const Drawing county = drawn("ban no_right_turn -50,0 0,0 0,-60\n");
  CHECK(county.lines.at(0).ends == std::array<End, 2>{End::closed, End::meets});
  CHECK(county.lines.at(1).ends == std::array<End, 2>{End::meets, End::closed});
}

TEST_CASE("a bus runs along all roads of its streets", "[county]") {
  const Drawing county = drawn("bus 7 North West\n");
  CHECK(county.relations.at(0).tags == Tags{{"ref", "7"}, {"route", "bus"}, {"type", "route"}});
  CHECK(std::get<std::size_t>(county.relations.at(0).members.at(0).what) == 1);
  CHECK(std::get<std::size_t>(county.relations.at(0).members.at(1).what) == 0);
}

TEST_CASE("bans and buses of what isn't there are told", "[county]") {
  CHECK(drawn("ban no_right_turn -50,0 90,90 0,-60\nbus 7 Nowhere\n").troubles ==
        std::vector<std::string>{"line 4: there is no junction within 30 m of 90,90",
                                 "line 5: there is no road 'Nowhere' for the bus"});
}

TEST_CASE("a ban over a road may name its first junction too, as a slip of a mapper", "[county]") {
  const Drawing county =
      drawn("ban no_u_turn 0,-50 0,0 0,-60\nban no_u_turn 150,60 75,0~ 0,60 slip=junction\n");
  CHECK(county.troubles.empty());
  const Relation& over = county.relations.at(1);
  REQUIRE(over.members.size() == 4);
  CHECK(std::holds_alternative<std::size_t>(over.members.at(1).what));
  const Line& road = county.lines.at(std::get<std::size_t>(over.members.at(1).what));
  const Spot junction = std::get<Spot>(over.members.at(2).what);
  CHECK((junction == road.points.front() || junction == road.points.back()));
  CHECK(!over.tags.contains("slip"));
}
