// What the map leaves in doubt, in words. The texts are those room mark writes
// (tests/mark/test_bus_lanes.cpp).
#include <catch2/catch.hpp>

#include "loopwright/lanes/doubt.hpp"

namespace loopwright {

using lanes::doubt_words;

TEST_CASE("no doubt has no words", "[lanes]") {
  CHECK(doubt_words("").empty());
}

TEST_CASE("a doubt is told without a tag in it", "[lanes]") {
  CHECK(
      doubt_words("lanes:psv=1 says always, lanes:psv:conditional says Mo-Fr 07:30-09:30") ==
      "the map says at all times, and also Monday to Friday, half past seven till half past nine");
  CHECK(doubt_words("lanes:bus:conditional says Mo-Fr 07:00-10:00, bus:lanes:conditional says Sa, "
                    "Su 08:00-09:00") ==
        "the map gives two sets of hours: Monday to Friday, seven till ten; and Saturday and "
        "Sunday, eight till nine");
  CHECK(doubt_words("bus:lanes:forward=no;yes|yes can't be read") ==
        "a tag of the map can't be read");
  CHECK(doubt_words("busway:left:conditional=no @ (Su) doesn't say when there is a lane") ==
        "the map doesn't say when there is a lane");
  CHECK(doubt_words("psv=lane alone tells of it") ==
        "the map tells of it in passing only, look for the signs");
  CHECK(doubt_words("bus:lanes=designated|yes shuts nobody else out") ==
        "the map doesn't say that cars are kept out of it");
  CHECK(doubt_words("busway:left=lane says a bus lane, motor_vehicle:lanes=yes|yes lets cars in "
                    "everywhere") == "the map also says that cars may use every lane");
}

TEST_CASE("a doubt of another kind is told in general words", "[lanes]") {
  CHECK(doubt_words("lanes:bus=1 and so on") == "the map's tags contradict each other");
  CHECK(doubt_words("lanes:bus=1 says always, lanes:bus:conditional says whenever") ==
        "the map says at all times, and also hours that can't be read");
}

}  // namespace loopwright
