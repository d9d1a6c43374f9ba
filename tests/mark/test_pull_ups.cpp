// Where one may stop beside a road, by what lies on it and beside it. Source: Highway Code rules 240
// and 243; the metres are those of src/rules/pull_ups.txt, with the reasons there.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/pull_up_texts.hpp"

namespace loopwright::test {
namespace {

/// A street of 200 m between two junctions; m is its middle, d 25 m north of it, X and Y farther.
BuiltTown street(const std::string& lines, const std::string& tags = "") {
  return built_town(
      "N   X   P\n    d\nA   m   B\n    e\nS   Y   T\n"
      "w1 AmB highway=residential maxspeed=30 " +
          tags + "\nw2 NAS highway=tertiary\nw3 PBT highway=tertiary\n" + lines,
      "GB-ENG");
}

const Texts all{"15-185"};
const Texts none;

TEST_CASE("a pull-up keeps off both junctions and says why", "[mark][pull-ups]") {
  const BuiltTown town = street("");
  CHECK(pull_ups(town, "AB") == all);
  const road::Roads roads = town.roads();
  const road::PullUp& place = roads.pull_ups_of(town.stretch("AB")).front();
  CHECK(roads.text(place.why) == "no ban mapped; 15 m clear of junctions");
  CHECK(place.confidence == road::Confidence::inferred);
}

TEST_CASE("a side road keeps its corner and the kerb opposite clear", "[mark][pull-ups]") {
  const BuiltTown town = street("w4 Xdm highway=residential\n");
  CHECK(pull_ups(town, "Am") == Texts{"15-85"});
  CHECK(pull_ups(town, "mA") == Texts{"15-85"});
}

TEST_CASE("a drive keeps 5 m clear, an aisle 10", "[mark][pull-ups]") {
  CHECK(pull_ups(street("w4 dm highway=service service=driveway\n"), "AB") ==
        Texts{"15-95", "105-185"});
  CHECK(pull_ups(street("w4 dm highway=service service=parking_aisle\n"), "AB") ==
        Texts{"15-90", "110-185"});
}

TEST_CASE("crossings, lights and railways keep clear what they need", "[mark][pull-ups]") {
  CHECK(pull_ups(street("nm highway=crossing crossing=zebra\n"), "Am") == Texts{"15-80"});
  CHECK(pull_ups(street("nm highway=traffic_signals\n"), "Am") == Texts{"15-70"});
  CHECK(pull_ups(street("w5 XmY railway=rail\nnm railway=level_crossing\n"), "Am") ==
        Texts{"15-70"});
  CHECK(pull_ups(street("nm highway=crossing crossing=unmarked\n"), "AB") ==
        Texts{"15-94", "106-185"});
  CHECK(pull_ups(street("nm highway=crossing crossing=unmarked crossing:island=yes\n"), "AB") ==
        Texts{"15-85", "115-185"});
  CHECK(pull_ups(street("nm traffic_calming=choker\n"), "Am") == Texts{"15-85"});
}

TEST_CASE("a bus stop, a taxi rank, a fire station keep the kerb clear", "[mark][pull-ups]") {
  CHECK(pull_ups(street("f1 m highway=bus_stop\n"), "AB") == Texts{"15-80", "120-185"});
  CHECK(pull_ups(street("f1 m amenity=taxi\n"), "AB") == Texts{"15-85", "115-185"});
  CHECK(pull_ups(street("f1 m amenity=fire_station name=Station\n"), "AB") ==
        Texts{"15-75", "125-185"});
}

TEST_CASE("a school keeps the kerb by its fence clear, one behind the houses doesn't",
          "[mark][pull-ups]") {
  const BuiltTown beside = built_town(R"(
N       P
A       B
  a b
  d c
S       T
w1 AB highway=residential maxspeed=30
w2 NAS highway=tertiary
w3 PBT highway=tertiary
f1 abcda amenity=school
)",
                                      "GB-ENG");
  // 25 m south of the road: not nearer than the margin.
  CHECK(pull_ups(beside, "AB") == all);
  const BuiltTown near = built_town(draw_town(R"(
N                   P


A                   B
     a    b
     d    c
S                   T
w1 AB highway=residential maxspeed=30
w2 NAS highway=tertiary
w3 PBT highway=tertiary
f1 abcda amenity=school
)",
                                              10),
                                    "GB-ENG");
  CHECK(pull_ups(near, "AB") == Texts{"15-27", "123-185"});
}

TEST_CASE("nobody stops by a bend, a gentle curve is none", "[mark][pull-ups]") {
  const BuiltTown corner = built_town(R"(
N       P
A       c
S
        B
        T
w1 AcB highway=residential maxspeed=30
w2 NAS highway=tertiary
w3 PB highway=tertiary
w4 BT highway=tertiary
)",
                                      "GB-ENG");
  CHECK(pull_ups(corner, "AB").size() == 1);
  CHECK(pull_ups(corner, "AB").front() == "15-170");
  const BuiltTown curve = built_town(R"(
N       P
A   c
        B
S       T
w1 AcB highway=residential maxspeed=30
w2 NAS highway=tertiary
w3 PBT highway=tertiary
)",
                                     "GB-ENG");
  CHECK(pull_ups(curve, "AB") == Texts{"15-188"});
}

TEST_CASE("what lies just behind a change of the road still counts", "[mark][pull-ups]") {
  const BuiltTown town = built_town(draw_town(R"(
N                             P
A                         k   B
S                             T
w1 Ak highway=residential maxspeed=30
w4 kB highway=residential maxspeed=20
w2 NAS highway=tertiary
w3 PBT highway=tertiary
nB highway=traffic_signals
)",
                                              5),
                                    "GB-ENG");
  // k is 20 m before lights that keep 30 m clear.
  CHECK(pull_ups(town, "Ak") == Texts{"15-120"});
  CHECK(pull_ups(town, "kB").empty());
}

TEST_CASE("no pull-up on roads that have no place for one", "[mark][pull-ups]") {
  for (const std::string tags : {"bridge=yes", "tunnel=yes", "maxspeed=50_mph", "width=5",
                                 "lanes=1", "ford=yes", "access=private"}) {
    const BuiltTown town =
        built_town("N   P\nA   B\nS   T\nw1 AB highway=residential " + std::string(tags) +
                       "\nw2 NAS highway=tertiary\nw3 PBT highway=tertiary\n",
                   "GB-ENG");
    CAPTURE(tags);
    CHECK(pull_ups(town, "AB").empty());
  }
  CHECK(pull_ups(street("", "width=8"), "AB") == all);
}

TEST_CASE("a kerb shorter than a car and its way in is none", "[mark][pull-ups]") {
  const BuiltTown town = built_town(draw_town(R"(
N       P
A       B
S       T
w1 AB highway=residential maxspeed=30
w2 NAS highway=tertiary
w3 PBT highway=tertiary
)",
                                              5),
                                    "GB-ENG");
  CHECK(pull_ups(town, "AB") == none);  // 40 m, of which 10 are clear
}

TEST_CASE("a lay-by beside a fast road serves the side it lies on", "[mark][pull-ups]") {
  const auto road = [](const std::string& parking) {
    return built_town(draw_town("N                   P\n"
                                "       ab\n"
                                "       dc\n"
                                "A                   B\n"
                                "S                   T\n"
                                "w1 AB highway=primary maxspeed=60_mph\n"
                                "w2 NAS highway=tertiary\nw3 PBT highway=tertiary\n"
                                "f1 abcda amenity=parking " +
                                    parking + "\n",
                                10),
                      "GB-ENG");
  };
  // 10 to 20 m beside the road: its middle is 15 m off, too far to be a lay-by.
  CHECK(pull_ups(road("parking=layby"), "AB").empty());
  const BuiltTown near = built_town(draw_town(R"(
N                                       P
              a     b
              d     c
A                                       B
S                                       T
w1 AB highway=primary maxspeed=60_mph
w2 NAS highway=tertiary
w3 PBT highway=tertiary
f1 abcda amenity=parking parking=layby
)",
                                              5),
                                    "GB-ENG");
  CHECK(pull_ups(near, "AB") == Texts{"70-100 lay-by"});
  CHECK(pull_ups(near, "BA").empty());
  const auto& places = near.built.tables.pull_ups;
  const auto lay_by = std::ranges::find_if(
      places, [](const road::PullUp& p) { return (p.flags & road::pull_up_flag::lay_by) != 0; });
  REQUIRE(lay_by != places.end());
  CHECK(near.roads().text(lay_by->why) == "a place to park is mapped here: parking=layby");
}

TEST_CASE("a lay-by on the other side of the road serves those who come back", "[mark][pull-ups]") {
  const auto near = [](std::string_view way) {
    return built_town(draw_town(R"(
N                                       P
A                                       B
              a     b
              d     c
S                                       T
w1 )" + std::string(way) + R"( highway=primary maxspeed=60_mph
w2 NAS highway=tertiary
w3 PBT highway=tertiary
f1 abcda amenity=parking parking=layby
)",
                                5),
                      "GB-ENG");
  };
  for (const std::string_view way : {"AB", "BA"}) {
    CHECK(pull_ups(near(way), "BA") == Texts{"100-130 lay-by"});
    CHECK(pull_ups(near(way), "AB").empty());
  }
}

}  // namespace
}  // namespace loopwright::test
