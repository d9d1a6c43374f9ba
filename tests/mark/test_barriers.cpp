#include <catch2/catch.hpp>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

TEST_CASE("a point without tags, or with lights, is no barrier", "[mark]") {
  CHECK(barrier_of({}) == Barrier::none);
  CHECK(barrier_of({{"highway", "traffic_signals"}}) == Barrier::none);
  CHECK(barrier_of({{"railway", "level_crossing"}, {"crossing:barrier", "half"}}) == Barrier::none);
  CHECK(barrier_of({{"railway", "level_crossing"}, {"barrier", "lift_gate"}}) == Barrier::none);
}

// OSM wiki, Key:barrier.
TEST_CASE("a cattle grid lets cars through, a bollard doesn't", "[mark]") {
  for (const char* open :
       {"cattle_grid", "entrance", "toll_booth", "height_restrictor", "kerb", "border_control"}) {
    CHECK(barrier_of({{"barrier", open}}) == Barrier::passable);
  }
  for (const char* wall : {"bollard", "block", "chain", "jersey_barrier", "bus_trap", "sump_buster",
                           "cycle_barrier", "gate", "lift_gate", "swing_gate", "yes"}) {
    CHECK(barrier_of({{"barrier", wall}}) == Barrier::wall);
  }
}

TEST_CASE("a bollard with motor_vehicle=yes lets cars through", "[mark]") {
  CHECK(barrier_of({{"barrier", "bollard"}, {"motor_vehicle", "yes"}}) == Barrier::passable);
  CHECK(barrier_of({{"barrier", "bollard"}, {"bicycle", "yes"}}) == Barrier::wall);
  CHECK(barrier_of({{"barrier", "bollard"}, {"bollard", "rising"}}) == Barrier::wall);
}

TEST_CASE("a gate opens by its access tags or by not being locked", "[mark]") {
  CHECK(barrier_of({{"barrier", "gate"}, {"access", "permissive"}}) == Barrier::passable);
  CHECK(barrier_of({{"barrier", "gate"}, {"locked", "no"}}) == Barrier::passable);
  CHECK(barrier_of({{"barrier", "gate"}, {"locked", "no"}, {"access", "private"}}) ==
        Barrier::wall);
  CHECK(barrier_of({{"barrier", "gate"}, {"motor_vehicle", "destination"}}) == Barrier::wall);
  CHECK(barrier_of({{"barrier", "gate"}, {"access", "yes"}, {"locked", "yes"}}) == Barrier::wall);
}

TEST_CASE("a gate that may be shut by the hour is a wall", "[mark]") {
  CHECK(barrier_of({{"barrier", "gate"},
                    {"access", "yes"},
                    {"motor_vehicle:conditional", "no @ (20:00-06:00)"}}) == Barrier::wall);
}

TEST_CASE("a gate that hours only open is a wall", "[mark]") {
  CHECK(barrier_of({{"barrier", "gate"}, {"access:conditional", "yes @ (06:00-20:00)"}}) ==
        Barrier::wall);
  CHECK(barrier_of({{"barrier", "bollard"}, {"motor_vehicle:conditional", "yes @ (PH)"}}) ==
        Barrier::wall);
  CHECK(barrier_of({{"barrier", "gate"}, {"motor_vehicle:conditional", "no @ (weight>7.5)"}}) ==
        Barrier::wall);
  CHECK(barrier_of({{"barrier", "cattle_grid"},
                    {"motor_vehicle:conditional", "no @ (weight>7.5)"}}) == Barrier::passable);
}

TEST_CASE("a point that shuts cars out is a wall, whatever stands there", "[mark]") {
  CHECK(barrier_of({{"access", "no"}}) == Barrier::wall);
  CHECK(barrier_of({{"motor_vehicle", "private"}, {"traffic_sign", "GB:619"}}) == Barrier::wall);
  CHECK(barrier_of({{"motor_vehicle", "yes"}}) == Barrier::none);
  CHECK(barrier_of({{"amenity", "parking_entrance"}, {"access", "private"}}) == Barrier::none);
}

TEST_CASE("a restrictor lower than the car with its roof sign is a wall", "[mark]") {
  CHECK(barrier_of({{"barrier", "height_restrictor"}, {"maxheight", "2.1"}}) == Barrier::passable);
  CHECK(barrier_of({{"barrier", "height_restrictor"}, {"maxheight", "1.6"}}) == Barrier::wall);
  CHECK(barrier_of({{"traffic_calming", "choker"}, {"maxwidth", "1.5"}}) == Barrier::wall);
}

TEST_CASE("a ford on the road is a wall unless built in", "[mark]") {
  CHECK(barrier_of({{"ford", "yes"}}) == Barrier::wall);
  CHECK(barrier_of({{"ford", "yes"}}, {.motorways = true}) == Barrier::wall);
  CHECK(barrier_of({{"ford", "yes"}}, {.fords = true}) == Barrier::none);
  CHECK(barrier_of({{"ford", "no"}}) == Barrier::none);
}

TEST_CASE("a bus gate drawn as a point is a wall", "[mark]") {
  CHECK(barrier_of({{"access", "no"}, {"bus", "yes"}}) == Barrier::wall);
  CHECK(barrier_of({{"motor_vehicle", "no"}, {"psv", "designated"}}) == Barrier::wall);
  CHECK(barrier_of({{"highway", "bus_gate"}}) == Barrier::wall);
  // A point has no hours in the area, so one that is shut at times stays a wall.
  CHECK(barrier_of({{"motor_vehicle:conditional", "no @ (Mo-Sa 07:00-19:00)"}, {"bus", "yes"}}) ==
        Barrier::wall);
  CHECK(barrier_of({{"motor_vehicle", "no"},
                    {"motor_vehicle:conditional", "yes @ (19:00-07:00)"},
                    {"taxi", "yes"}}) == Barrier::wall);
}

TEST_CASE("access tags of a crossing are about the path, not the road", "[mark]") {
  CHECK(barrier_of({{"highway", "crossing"}, {"bicycle", "yes"}, {"motor_vehicle", "no"}}) ==
        Barrier::none);
}

TEST_CASE("a farm's own level crossing is a wall", "[mark]") {
  CHECK(barrier_of({{"railway", "level_crossing"}, {"access", "private"}}) == Barrier::wall);
}

}  // namespace
}  // namespace loopwright::mark
