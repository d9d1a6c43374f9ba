// Spots to stop at and practise. What each needs: TRADE rows 1, 32, 43 to 46 as src/rules/pull_ups.txt
// and manoeuvres.cpp give it (common practice, no source; Highway Code rules 200 to 203, 239 to 252).
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A quiet street of 200 m between two junctions.
BuiltTown street(const std::string& tags, const std::string& lines = "") {
  return built_town("N   X   P\nA   m   B\nS   Y   T\nw1 AmB highway=residential " + tags +
                        "\nw2 NAS highway=tertiary\nw3 PBT highway=tertiary\n" + lines,
                    "GB-ENG");
}

const Texts both{"AB", "BA"};
const std::string quiet = "maxspeed=30_mph";

TEST_CASE("a quiet straight street has a spot of each kind on either side", "[mark][manoeuvres]") {
  const BuiltTown town = street(quiet);
  for (const Kind kind : {Kind::move_off, Kind::parallel_park, Kind::pull_up_right,
                          Kind::turn_in_road, Kind::emergency_stop}) {
    CAPTURE(name(kind));
    CHECK(chances(town, kind) == both);
  }
  CHECK(reasons(town, Kind::parallel_park) == Texts{"inferred quiet street, no ban mapped w1"});
  CHECK(chances(town, Kind::uphill_start).empty());
  CHECK(chances(town, Kind::bay_park).empty());
}

TEST_CASE("a spot lies in the middle of its kerb and knows its length", "[mark][manoeuvres]") {
  const BuiltTown town = street(quiet);
  const road::Roads roads = town.roads();
  for (const road::Chance& chance : roads.chances) {
    if (chance.kind != Kind::parallel_park) continue;
    const road::Place& place = roads.places[chance.place.index()];
    CHECK(place.length_m == Approx(170).margin(0.5));
    CHECK(nearest_on_line(roads.shape_of(chance.entry.piece()), place.at).along_m ==
          Approx(100).margin(0.5));
    CHECK(chance.exit == chance.entry);
  }
}

TEST_CASE("a busier road or a bus route is no place to practise", "[mark][manoeuvres]") {
  const BuiltTown busy = built_town(
      "N       P\nA       B\nS       T\nw1 AB highway=tertiary maxspeed=30_mph\n"
      "w2 NAS highway=tertiary\nw3 PBT highway=tertiary\n",
      "GB-ENG");
  CHECK(chances(busy, Kind::move_off).empty());
  CHECK(chances(street(quiet, "r1 bus_route=w1\n"), Kind::turn_in_road).empty());
}

TEST_CASE("a kerb by the hour, for residents or with a fee is no place to practise",
          "[mark][manoeuvres]") {
  for (const std::string tags :
       {" parking:both:restriction:conditional=\"no_parking @ (Mo-Fr 08:00-18:00)\"",
        " parking:both=lane parking:both:access=permit", " parking:both=lane parking:both:fee=yes"})
    CHECK(chances(street(quiet + tags), Kind::move_off).empty());
}

TEST_CASE("pulling up on the right needs both kerbs, parking beside the near one only its own",
          "[mark][manoeuvres]") {
  const BuiltTown town = street(quiet + " parking:right:restriction=no_stopping");
  CHECK(chances(town, Kind::parallel_park) == Texts{"AB"});
  CHECK(chances(town, Kind::pull_up_right).empty());
}

TEST_CASE("a one-way street is none to turn in or pull up on the right", "[mark][manoeuvres]") {
  const BuiltTown town = street(quiet + " oneway=yes", "w4 NP highway=tertiary\n");
  CHECK(chances(town, Kind::parallel_park) == Texts{"AB"});
  CHECK(chances(town, Kind::turn_in_road).empty());
  CHECK(chances(town, Kind::pull_up_right).empty());
}

TEST_CASE("no emergency stop by shops, stops or schools", "[mark][manoeuvres]") {
  CHECK(chances(street(quiet, "f1 X shop=bakery name=Oven\n"), Kind::emergency_stop).empty());
  CHECK(chances(street(quiet, "f1 m highway=bus_stop\n"), Kind::emergency_stop).empty());
  CHECK(chances(street(quiet, "f1 X amenity=pub name=Bell\n"), Kind::emergency_stop) == both);
}

TEST_CASE("a short street has room to move off, not to stop hard", "[mark][manoeuvres]") {
  const BuiltTown town = built_town(
      "N   P\nA   B\nS   T\nw1 AB highway=residential maxspeed=30_mph\n"
      "w2 NAS highway=tertiary\nw3 PBT highway=tertiary\n",
      "GB-ENG");
  CHECK(chances(town, Kind::move_off) == both);
  CHECK(chances(town, Kind::parallel_park) == both);
  CHECK(chances(town, Kind::emergency_stop).empty());
}

TEST_CASE("a curving street has spots to move off from, none for straight work",
          "[mark][manoeuvres]") {
  const BuiltTown town = built_town(R"(
N
A   a
        b
S
            c
.
.
                d
.
.
                    P
                    B
                    T
w1 AabcdB highway=residential maxspeed=30_mph
w2 NAS highway=tertiary
w3 PBT highway=tertiary
)",
                                    "GB-ENG");
  CHECK(chances(town, Kind::move_off) == both);
  for (const Kind kind :
       {Kind::parallel_park, Kind::pull_up_right, Kind::turn_in_road, Kind::emergency_stop})
    CHECK(chances(town, kind).empty());
}

TEST_CASE("a terrace full of cars is for stopping and parking only", "[mark][manoeuvres]") {
  const BuiltTown town = street(quiet + " parking:both=lane width=9.6");
  CHECK(chances(town, Kind::parallel_park) == both);
  for (const Kind kind : {Kind::pull_up_right, Kind::turn_in_road, Kind::emergency_stop})
    CHECK(chances(town, kind).empty());
}

TEST_CASE("an uphill start goes up: 4 % or more, the way it climbs", "[mark][manoeuvres]") {
  CHECK(chances(street(quiet + " incline=8%"), Kind::uphill_start) == Texts{"AB"});
  CHECK(chances(street(quiet + " incline=-8%"), Kind::uphill_start) == Texts{"BA"});
  CHECK(chances(street(quiet + " incline=3%"), Kind::uphill_start).empty());
  CHECK(reasons(street(quiet + " incline=8%"), Kind::uphill_start) ==
        Texts{"inferred incline=8% w1"});
}

/// A car park south of the street, reached by an aisle from m.
BuiltTown car_park(const std::string& tags, const std::string& aisle = "service=parking_aisle") {
  return built_town(
      "N   X   P\nA   m   B\n   a b\n    e\n   d c\nS       T\n"
      "w1 AmB highway=residential maxspeed=30_mph\n"
      "w2 NAS highway=tertiary\nw3 PBT highway=tertiary\n"
      "w4 me highway=service " +
          aisle + "\nf9 abcda amenity=parking " + tags + "\n",
      "GB-ENG");
}

TEST_CASE("a car park open to all is a place for bays, from both directions",
          "[mark][manoeuvres]") {
  const BuiltTown town = car_park("parking=surface");
  CHECK(chances(town, Kind::bay_park) == both);
  CHECK(places(town, Kind::bay_park) == Texts{"w9"});
  CHECK(reasons(town, Kind::bay_park) == Texts{"inferred amenity=parking w9"});
  CHECK(chances(car_park("access=customers"), Kind::bay_park) == both);
}

TEST_CASE("a car park is told by its capacity when it is mapped", "[mark][manoeuvres]") {
  CHECK(chances(car_park("capacity=40", "service=driveway"), Kind::bay_park) == both);
  CHECK(chances(car_park("capacity=8"), Kind::bay_park).empty());
  CHECK(chances(car_park("parking=surface", "service=driveway"), Kind::bay_park).empty());
}

TEST_CASE("no bays in a private, stacked or roadside car park", "[mark][manoeuvres]") {
  for (const std::string tags :
       {"capacity=40 access=private", "capacity=40 parking=multi-storey",
        "capacity=40 parking=underground", "capacity=40 parking=street_side"}) {
    CAPTURE(tags);
    CHECK(chances(car_park(tags), Kind::bay_park).empty());
  }
}

}  // namespace
}  // namespace loopwright::test
